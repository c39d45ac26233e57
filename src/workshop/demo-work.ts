import { analyseTouch } from '#action';
import { type Reading, type TouchIntent, type WeighingSession, isQuantityName, sessionDraftSchema, understandFigure } from '#instrument';
import { mustBe } from '#result';
import type { DemoStep } from './demo-step.ts';
import type { ReadingEntry, WorkItemDraft } from './records.ts';
import { remedyPlan } from './remedy-plan.ts';
import { touchInputOf } from './touch-input.ts';

/** Where the invented readings stand in time; the store sets its own. */
const EPOCH = '1970-01-01T00:00:00.000Z';

/** Jobs of the whole action that no finding of one key names. */
const WHOLE: readonly WorkItemDraft[] = [
  { cycle: 1, key: null, remedy: 'repinCentres', cause: 'frictionHigh', stage: 1, remeasure: ['downWeightG', 'upWeightG'], remark: 'Tenor, keys 34 to 51: centres eased after a fortnight at 46 %' },
  { cycle: 1, key: null, remedy: 'replaceHammer', cause: null, stage: 3, remeasure: ['hammerWeightG', 'downWeightG', 'upWeightG'], remark: 'New set throughout; the old one was filed flat' },
];

/** The jobs the readings as found ask for, in bench order: those of single keys, then the two of the whole action. */
export function demoWork(found: readonly DemoStep[], intent: TouchIntent): readonly WorkItemDraft[] {
  const analysis = analyseTouch(touchInputOf({
    instrument: { kind: 'grand', firstMidi: 21, lastMidi: 108 },
    ...standingOf(found),
    cycle: 1,
    state: 'found',
    intent,
  }));
  return [...remedyPlan(analysis, 1), ...WHOLE].sort((a, b) => a.stage - b.stage);
}

/** Sessions and readings as a store would hold them once the steps are written. */
export function standingOf(steps: readonly DemoStep[]): { readonly sessions: readonly WeighingSession[]; readonly readings: readonly Reading[] } {
  const sessions = steps.flatMap((step) => (step.kind === 'session' ? [{ ...sessionDraftSchema.parse(step.draft), id: step.ref, startedAt: EPOCH }] : []));
  const readings = steps.flatMap((step, place) =>
    step.kind === 'readings' ? step.batch.entries.map((entry, at) => readingOf(entry, step.batch.state, step.sessionRef, `${String(place)}-${step.batch.state}-${String(at)}`)) : []);
  return { sessions, readings };
}

function readingOf(entry: ReadingEntry, state: Reading['state'], sessionId: string | null, id: string): Reading {
  const { quantity, typed } = entry;
  if (!isQuantityName(quantity)) throw new Error(`the demo names a quantity that is none: ${quantity}`);
  const value = typed === undefined ? null : mustBe(understandFigure(quantity, typed, { path: quantity })).value;
  return {
    id, cycle: 1, state, quantity, scope: entry.scope, index: entry.index, repeat: entry.repeat ?? 1,
    typed: typed ?? null, value, outcome: entry.outcome ?? null, uncertainty: null, basis: 'measured',
    remark: entry.remark ?? '', sessionId, at: EPOCH, by: 'demo',
  };
}
