import { type KeyTouch, analyseTouch } from '#action';
import { actionTermsSchema, compassOf, instrumentDraftSchema, keysOf, observationDraftSchema, scaleTermsSchema, sessionDraftSchema, touchIntentSchema, tuningPassDraftSchema, tuningTermsSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { DEMO_ARMS, DEMO_FAULTS } from './demo-story.ts';
import { standingOf } from './demo-work.ts';
import { estimateSchema } from './estimate.ts';
import { paperDraftSchema } from './papers/records.ts';
import { quoteDraftSchema } from './quote.ts';
import type { DemoPiano } from './demo-step.ts';
import { demoShop } from './demo.ts';
import { readingBatchSchema, workItemDraftSchema } from './records.ts';
import { roomDraftSchema } from './room/record.ts';
import { roomIssues } from './room/room-input.ts';
import { touchInputOf } from './touch-input.ts';

const [grand] = demoShop();
if (grand === undefined) throw new Error('the demo has no grand');
const instrument = instrumentDraftSchema.parse(grand.draft);

const analysisOf = (piano: DemoPiano, state: 'found' | 'finished') =>
  analyseTouch(touchInputOf({ instrument, ...standingOf(piano.steps), cycle: 1, state, intent: piano.intent }));
const found = analysisOf(grand, 'found');
const finished = analysisOf(grand, 'finished');
const causesAt = (key: number): readonly string[] => found.keys[key - 1]?.findings.map(({ cause }) => cause) ?? [];

/** Balance weight that levers and typed parts give, and how far the typed weights may stand from it: half a gram for whole-gram weights, half a tenth for each part. */
function balanceByParts({ colour, figures }: KeyTouch, rollerMm: number): { readonly expectedG: number; readonly resolutionG: number } {
  const arms = DEMO_ARMS[colour];
  const keyRatio = arms.keyBackMm / arms.keyFrontMm;
  const ratio = (keyRatio * (arms.wippenJackMm / arms.wippenHeelMm) * arms.hammerMm) / rollerMm;
  const [hammer, wippen, front] = [figures.hammerWeightG, figures.wippenWeightG, figures.frontWeightG].map((part) => part?.value ?? Number.NaN);
  return { expectedG: ratio * (hammer ?? 0) + keyRatio * (wippen ?? 0) - (front ?? 0), resolutionG: 0.5 + 0.05 * (ratio + keyRatio + 1) };
}

describe('demo grand', () => {
  it('says that it is invented, and names no maker', () => {
    expect(grand.draft.name).toMatch(/invented/u);
    expect(grand.draft.remark).toMatch(/[Ii]nvented/u);
    expect(grand.draft.maker).toBeNull();
  });

  it('is the same every time', () => {
    expect(demoShop()).toEqual(demoShop());
  });

  it('writes only what the store takes, readings after the session they belong to', () => {
    const refs = new Set<string>();
    touchIntentSchema.parse(grand.intent);
    for (const step of grand.steps) {
      if (step.kind === 'session') {
        sessionDraftSchema.parse(step.draft);
        refs.add(step.ref);
      } else if (step.kind === 'readings') {
        readingBatchSchema.parse(step.batch);
        expect(step.sessionRef === null || refs.has(step.sessionRef)).toBe(true);
      } else if (step.kind === 'intent') touchIntentSchema.parse(step.intent);
      else if (step.kind === 'scale') scaleTermsSchema.parse(step.terms);
      else if (step.kind === 'action') actionTermsSchema.parse(step.terms);
      else if (step.kind === 'tuning') tuningTermsSchema.parse(step.terms);
      else if (step.kind === 'pass') tuningPassDraftSchema.parse(step.draft);
      else if (step.kind === 'observation') observationDraftSchema.parse(step.draft);
      else if (step.kind === 'estimate') estimateSchema.parse(step.draft);
      else if (step.kind === 'room') expect(roomIssues(roomDraftSchema.parse(step.draft))).toEqual([]);
      else if (step.kind === 'quote') quoteDraftSchema.parse(step.draft);
      else if (step.kind === 'paper') paperDraftSchema.parse(step.draft);
      else step.items.forEach((item) => workItemDraftSchema.parse(item));
    }
    expect(refs).toEqual(new Set(['found-touch', 'found-parts', 'finished-parts', 'finished-touch']));
  });

  it.each([['found', found], ['finished', finished]] as const)('balances on every key as %s, within what can be read', (state, analysis) => {
    for (const touch of analysis.keys) {
      if (touch.balanceWeightG === undefined) continue;
      const rollerMm = (state === 'found' ? DEMO_FAULTS[touch.key]?.rollerMm : undefined) ?? DEMO_ARMS[touch.colour].rollerMm;
      const { expectedG, resolutionG } = balanceByParts(touch, rollerMm);
      expect(Math.abs(touch.balanceWeightG - expectedG), `key ${String(touch.key)}`).toBeLessThanOrEqual(resolutionG);
    }
    expect(analysis.keys.filter(({ balanceWeightG }) => balanceWeightG !== undefined).length).toBeGreaterThanOrEqual(86);
  });

  it('has every key weighed or told why not, in both states', () => {
    expect(found.keys.map(({ key }) => key)).toEqual(keysOf(compassOf(instrument)));
    expect(found.summary).toMatchObject({ measured: 86, outcomes: 2 });
    expect(finished.summary).toMatchObject({ measured: 88, outcomes: 0 });
  });

  it('came in worn: a third outside, many slow to return, one that sticks, one that stays down', () => {
    expect(found.summary.inside).toBeLessThan(60);
    expect(found.summary.upWeightLow).toBeGreaterThan(15);
    expect(found.keys[44]?.figures.outcome).toBe('sticks');
    expect(found.keys[65]?.figures.outcome).toBe('noReturn');
  });

  it.each([
    [9, 'keyFrictionHigh'], [20, 'keyFrictionHigh'], [26, 'hammerHeavy'], [31, 'frontLight'], [36, 'frictionHigh'], [44, 'cancelling'], [58, 'ratioHigh'],
    [63, 'cancelling'], [63, 'frictionHigh'], [63, 'frontHeavy'], [74, 'frictionLow'], [80, 'wippenHeavy'], [85, 'hammerLight'],
  ])('has the fault planted at key %i found: %s', (key, cause) => {
    expect(causesAt(key)).toContain(cause);
  });

  it('left put right: all inside 49 ± 2 g, every up weight 20 g or more, nothing found', () => {
    expect(finished.summary).toMatchObject({ inside: 88, upWeightLow: 0 });
    expect(finished.keys.flatMap(({ findings }) => findings)).toEqual([]);
    expect(Math.min(...finished.keys.map(({ figures }) => figures.upWeightG?.value ?? 0))).toBeGreaterThanOrEqual(20);
  });

  it('weighed the key alone wherever a done job asks for it, and never more than rubs in all', () => {
    const items = grand.steps.flatMap((step) => (step.kind === 'work' ? step.items : []));
    const asking = items.filter(({ remeasure = [] }) => remeasure.includes('keyFrictionG'));
    expect(new Set(asking.map(({ remedy }) => remedy))).toEqual(new Set(['measureKeyFriction', 'cleanKeyPins']));
    for (const { key, remedy } of asking) {
      const { figures, frictionG } = (remedy === 'measureKeyFriction' ? found : finished).keys[(key ?? 0) - 1] ?? { figures: undefined };
      expect(figures?.keyFrictionG?.value, `key ${String(key)}`).toBeGreaterThanOrEqual(0);
      expect(figures?.keyFrictionG?.value, `key ${String(key)}`).toBeLessThan(frictionG ?? Number.POSITIVE_INFINITY);
    }
  });

  it('lists the work in the order friction, ratio, hammer, lead, with the jobs its faults ask for', () => {
    const items = grand.steps.flatMap((step) => (step.kind === 'work' ? step.items : []));
    expect(items.map(({ stage }) => stage)).toEqual(items.map(({ stage }) => stage).toSorted((a, b) => a - b));
    expect(items).toEqual(expect.arrayContaining([
      expect.objectContaining({ key: 45, remedy: 'freeKey' }),
      expect.objectContaining({ key: 58, remedy: 'checkLevers' }),
      expect.objectContaining({ key: 26, remedy: 'lightenHammer' }),
      expect.objectContaining({ key: 31, remedy: 'addLead' }),
    ]));
  });
});
