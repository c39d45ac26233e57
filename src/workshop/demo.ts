import { type InstrumentDraft, type KeyNumber, type Outcome, type QuantityName, type State, type TouchIntent, quantityOf } from '#instrument';
import { demoAction } from './demo-action.ts';
import { demoBelly } from './demo-belly.ts';
import { DEMO_ARMS, type DemoKey, demoAsFinished, demoAsFound, demoDownWeightOf } from './demo-story.ts';
import type { DemoPiano, DemoStep } from './demo-step.ts';
import { demoRooms } from './room/demo-rooms.ts';
import { demoStrings } from './demo-strings.ts';
import { demoPapers } from './demo-papers.ts';
import { demoSurvey } from './demo-survey.ts';
import { demoTuning } from './demo-tuning.ts';
import { demoWorth } from './demo-worth.ts';
import { demoWork } from './demo-work.ts';
import type { ReadingEntry, WorkItemDraft } from './records.ts';

/**
 * The invented grand of the demo: worn as found, put right as finished, every weight consistent with levers, parts and
 * friction, every string with its length and pitch, its bearing lost in the treble and
 * recapped.
 * Deterministic; nothing in it was measured on a real instrument.
 * @source OWN
 */
export function demoShop(): readonly DemoPiano[] {
  const worn = demoAsFound();
  const belly = demoBelly();
  const tuning = demoTuning();
  const found = foundSteps(worn);
  const items = demoWork(found, INTENT);
  const measured = readingsOf('found', 'found-touch', frictionEntries(worn, keysAskedAlone(items, true)));
  const finished = finishedSteps(demoAsFinished(), keysAskedAlone(items, false));
  return [{ draft: GRAND, intent: INTENT, steps: [...found, ...demoStrings(), ...demoAction(), ...demoSurvey(), ...demoPapers(), ...belly.found, ...tuning.found, { kind: 'intent', cycle: 1, intent: INTENT }, ...demoWorth(), { kind: 'work', items, done: true }, measured, ...finished, ...belly.finished, ...tuning.finished, ...demoRooms()] }];
}

/** Keys whose own friction the done jobs ask for: those that only measure it, as found, or those that change it, as finished. */
function keysAskedAlone(items: readonly WorkItemDraft[], isMeasuring: boolean): ReadonlySet<KeyNumber> {
  const asking = items.filter(({ remedy, remeasure = [] }) => remeasure.includes('keyFrictionG') && (remedy === 'measureKeyFriction') === isMeasuring);
  return new Set(asking.flatMap(({ key }) => key ?? []));
}

const GRAND: InstrumentDraft = {
  name: 'Demo grand, invented',
  kind: 'grand',
  maker: null,
  serial: null,
  year: 1926,
  lengthMm: 1830,
  firstMidi: 21,
  lastMidi: 108,
  a4Hz: 440,
  sections: [{ name: 'Bass', firstKey: 1, lastKey: 26 }, { name: 'Tenor', firstKey: 27, lastKey: 50 }, { name: 'Treble', firstKey: 51, lastKey: 88 }],
  remark: 'Invented for demonstration. Not a real instrument, not a real shop.',
};

const INTENT: TouchIntent = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 };

const TOUCH_SESSION = {
  cycle: 1, placeOnKeyMm: 13, stepG: 1, weightClass: 'M3', repeatabilityG: 0.5, rule: 'firstMovesLastLifts', dampers: 'lifted', helperSprings: 'none', repeats: 1,
  equipment: 'Invented set of brass weights in 1 g steps',
} as const;
const PARTS_SESSION = {
  cycle: 1, placeOnKeyMm: 13, stepG: 0.1, repeatabilityG: 0.05, dampers: 'none', helperSprings: 'none', repeats: 1, equipment: 'Invented scale reading 0.1 g',
} as const;
const DAMP = { weighedOn: '2026-02-09', temperatureC: 17, humidityPct: 68 } as const;
const SETTLED = { weighedOn: '2026-04-17', temperatureC: 20, humidityPct: 46 } as const;

/** Keys that gave no number as found. The others at these keys were read. */
const OUTCOMES: Readonly<Record<number, Partial<Record<'downWeightG' | 'upWeightG', Outcome>>>> = {
  45: { downWeightG: 'sticks', upWeightG: 'sticks' },
  66: { upWeightG: 'noReturn' },
};

const REMARKS: Readonly<Record<number, string>> = {
  9: 'White powder on the middle lead, rubs its neighbour',
  26: 'Hammer of another set',
  45: 'Will not go down by its own weights',
  58: 'Roller glued out of line',
  63: 'Extra lead near the front, newer than the others',
  66: 'Stays down until helped',
};

/** Keys whose friction was weighed without the action: those that looked suspicious. */
const KEY_FRICTION_WEIGHED: ReadonlySet<KeyNumber> = new Set([9, 12, 20, 37, 42, 48, 63, 66, 73]);

function foundSteps(keys: readonly DemoKey[]): readonly DemoStep[] {
  const touch = keys.flatMap((key) => touchEntries(key, OUTCOMES[key.key] ?? {}, REMARKS[key.key]));
  return [
    { kind: 'session', ref: 'found-touch', draft: { ...TOUCH_SESSION, ...DAMP, state: 'found', regulated: false, remark: 'Weighed on arrival, in a damp room' } },
    readingsOf('found', 'found-touch', [...touch, ...frictionEntries(keys, KEY_FRICTION_WEIGHED)]),
    { kind: 'session', ref: 'found-parts', draft: { ...PARTS_SESSION, ...DAMP, state: 'found', regulated: false } },
    readingsOf('found', 'found-parts', partsEntries(keys)),
    readingsOf('found', null, armEntries()),
  ];
}

function finishedSteps(keys: readonly DemoKey[], weighedAlone: ReadonlySet<KeyNumber>): readonly DemoStep[] {
  return [
    { kind: 'session', ref: 'finished-parts', draft: { ...PARTS_SESSION, ...SETTLED, state: 'finished', regulated: true } },
    readingsOf('finished', 'finished-parts', partsEntries(keys)),
    readingsOf('finished', null, armEntries()),
    { kind: 'session', ref: 'finished-touch', draft: { ...TOUCH_SESSION, ...SETTLED, state: 'finished', regulated: true } },
    readingsOf('finished', 'finished-touch', [...keys.flatMap((key) => touchEntries(key, {}, undefined)), ...frictionEntries(keys, weighedAlone)]),
  ];
}

function readingsOf(state: State, sessionRef: string | null, entries: readonly ReadingEntry[]): DemoStep {
  return { kind: 'readings', sessionRef, batch: { cycle: 1, state, entries: [...entries] } };
}

/** Down weight the first whole gram that moves the key, up weight the last it lifts. */
function touchEntries(key: DemoKey, outcomes: Partial<Record<'downWeightG' | 'upWeightG', Outcome>>, remark: string | undefined): readonly ReadingEntry[] {
  const downWeightG = demoDownWeightOf(key);
  const whole = { downWeightG: Math.ceil(downWeightG), upWeightG: Math.floor(downWeightG - 2 * key.frictionG) };
  return (['downWeightG', 'upWeightG'] as const).map((quantity) => {
    const outcome = outcomes[quantity];
    const figure = outcome === undefined ? { typed: String(whole[quantity]) } : { outcome };
    return { quantity, scope: 'key', index: key.key, ...figure, ...(remark === undefined || quantity === 'upWeightG' ? {} : { remark }) };
  });
}

/** Friction of some keys alone: half the difference of two whole-gram weights, so to half a gram. */
function frictionEntries(keys: readonly DemoKey[], weighedAlone: ReadonlySet<KeyNumber>): readonly ReadingEntry[] {
  return keys.filter(({ key }) => weighedAlone.has(key))
    .map(({ key, keyFrictionG }) => ({ quantity: 'keyFrictionG', scope: 'key', index: key, typed: (Math.round(keyFrictionG * 2) / 2).toFixed(1) }));
}

function partsEntries(keys: readonly DemoKey[]): readonly ReadingEntry[] {
  return (['frontWeightG', 'hammerWeightG', 'wippenWeightG'] as const).flatMap((quantity) => keys.map((key) => entryOf(quantity, key.key, key[quantity])));
}

function armEntries(): readonly ReadingEntry[] {
  return (['natural', 'sharp'] as const).flatMap((colour, index) =>
    Object.entries(DEMO_ARMS[colour]).map(([quantity, value]): ReadingEntry => ({ quantity, scope: 'colour', index, typed: String(value) })));
}

/** A figure as the scale shows it, to a tenth of a gram. */
function entryOf(quantity: QuantityName, index: number, value: number): ReadingEntry {
  return { quantity, scope: quantityOf(quantity).scope, index, typed: value.toFixed(1) };
}
