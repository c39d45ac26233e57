import { type KeyNumber, type QuantityName, type ScaleTermsDraft, type State, compass88, equalTemperedHzOf, keysOf } from '#instrument';
import { copperWire, steelWire, wireSizesOf } from '#materials';
import type { DemoStep } from './demo-step.ts';
import { swaysFrom } from './demo-sway.ts';
import type { ReadingEntry } from './records.ts';

/** Last wound note, last note with a single string, last note wound twice, of the invented grand. */
const LAST_WOUND = 26;
const LAST_SINGLE = 10;
const LAST_DOUBLE_WOUND = 6;
/** Lowest notes of the tenor that the plan winds, because plain wire hangs slack at their length. */
const LAST_REWOUND = 29;

/** What the invented shop states and asks of the strings. */
export const DEMO_TERMS: ScaleTermsDraft = {
  strengthModel: 'astm-a228-min', wrapMetal: 'copper', wrapPacking: 0.8, wireSeries: 'inch', lengthUncertaintyMm: 0.5, diameterUncertaintyMm: 0.004,
  leastBreakingPct: 30, mostBreakingPct: 65,
  wires: [
    { name: 'Invented coil A', use: 'plain', metal: 'steel', diameterMm: 0.7874, certificateMPa: 2480 },
    { name: 'Invented coil B', use: 'plain', metal: 'steel', diameterMm: 1.0414, certificateMPa: 2290, testBreakN: 1985 },
  ],
  remark: 'Invented for demonstration.',
};

/** Speaking lengths: a smooth curve in bass and treble, drawn in at the foot of the tenor as a short grand must; millimetres. */
export function demoLengthOf(key: KeyNumber): number {
  if (key <= LAST_WOUND) return 1340 * (940 / 1340) ** ((key - 1) / (LAST_WOUND - 1));
  return 52 * 1.86 ** ((88 - key) / 12) * Math.exp(-0.0006 * Math.max(0, 40 - key) ** 2);
}

const countOf = (key: KeyNumber): number => (key <= LAST_SINGLE ? 1 : key <= LAST_WOUND ? 2 : 3);

/** Plain wire in half sizes, stouter towards the bass; millimetres. */
function plainOf(key: KeyNumber): number {
  const gauge = Math.round(2 * (12.5 + ((88 - key) * 6.5) / 61)) / 2;
  return wireSizesOf('inch').find((size) => size.gauge === gauge)?.diameterMm ?? 1;
}

/** A wound string of the plan: core, and wraps of stock wire in twentieths of a millimetre that come nearest the tension aimed at. */
interface DemoWound {
  readonly coreMm: number;
  readonly wrapsMm: readonly number[];
  readonly bareFrontMm: number;
  readonly bareRearMm: number;
}

/** N aimed at in one string. */
const aimOf = (key: KeyNumber): number => (key <= LAST_SINGLE ? 1150 - 12 * key : 900 - 7 * (key - LAST_SINGLE));

/** Wrap wire that makes up the mass: ρ·π²·d·(D + d)/4 = m. */
function wrapFor(massGPerM: number, insideMm: number): number {
  const product = (4 * massGPerM) / (copperWire.densityKgM3.value * 1e-3 * Math.PI ** 2);
  const exact = (-insideMm + Math.sqrt(insideMm ** 2 + 4 * product)) / 2;
  return Math.max(0.15, Math.round(exact * 20) / 20);
}

const wrapMassOf = (wireMm: number, insideMm: number): number => (copperWire.densityKgM3.value * 1e-3 * Math.PI ** 2 * wireMm * (insideMm + wireMm)) / 4;

function woundOf(key: KeyNumber): DemoWound {
  const coreMm = key <= LAST_WOUND ? Math.round((1.5 - (0.55 * (key - 1)) / (LAST_WOUND - 1)) * 40) / 40 : 0.9;
  const metresPerSecond = 2 * demoLengthOf(key) * 1e-3 * equalTemperedHzOf(compass88, key);
  const massGPerM = (aimOf(key) / metresPerSecond ** 2) * 1e3 - (steelWire.densityKgM3.value * 1e-3 * Math.PI * coreMm ** 2) / 4;
  const ends = key <= LAST_DOUBLE_WOUND ? [22, 20] : key <= LAST_SINGLE ? [18, 16] : [15, 14];
  const [bareFrontMm = 0, bareRearMm = 0] = ends;
  if (key > LAST_DOUBLE_WOUND) return { coreMm, wrapsMm: [wrapFor(massGPerM, coreMm)], bareFrontMm, bareRearMm };
  const inner = 0.6;
  return { coreMm, wrapsMm: [inner, wrapFor(massGPerM - wrapMassOf(inner, coreMm), coreMm + 2 * inner)], bareFrontMm, bareRearMm };
}

/** What callipers read over a wrap that was pulled flat: the same mass at the packing the shop states. */
function overallOf({ coreMm, wrapsMm }: DemoWound): number {
  let [mass, inside] = [0, coreMm];
  for (const wire of wrapsMm) {
    mass += wrapMassOf(wire, inside);
    inside += 2 * wire;
  }
  return Math.sqrt(coreMm ** 2 + mass / ((copperWire.densityKgM3.value * 1e-3 * 0.8 * Math.PI) / 4));
}

/** Wrong wires a former hand left, as found; millimetres. */
const DEMO_WRONG_WIRES: Readonly<Record<number, number>> = { 45: 1.0922, 46: 1.0922, 61: 0.8382, 77: 0.8636 };
const REMARKS: Readonly<Record<number, string>> = { 45: 'Newer wire than its neighbours', 61: 'Spliced', 9: 'Wrap loose, buzzes' };

/** Keys whose lengths were measured as found: every fifth, and those beside the breaks. */
const isMeasured = (key: KeyNumber): boolean => key <= LAST_WOUND || key % 5 === 0 || [27, 28, 50, 51, 88].includes(key);

/** The strings of the invented grand: as they were found, the terms, and the plan for new ones. */
export function demoStrings(): readonly DemoStep[] {
  return [
    step('found', keysOf(compass88).flatMap(foundEntries())),
    { kind: 'scale', cycle: 1, terms: DEMO_TERMS },
    step('planned', keysOf(compass88).flatMap(plannedEntries)),
  ];
}

const step = (state: State, entries: readonly ReadingEntry[]): DemoStep => ({ kind: 'readings', sessionRef: null, batch: { cycle: 1, state, entries: [...entries] } });

/** Lengths to half a millimetre, diameters as a micrometer and callipers show them. */
function foundEntries(): (key: KeyNumber) => readonly ReadingEntry[] {
  const sway = swaysFrom(1926);
  return (key) => {
    const [length, wire] = [demoLengthOf(key) + 0.4 * sway(), 0.003 * sway()];
    const remark = REMARKS[key] === undefined ? {} : { remark: REMARKS[key] };
    const sized = isMeasured(key) ? [entry(key, 'speakingLengthMm', (Math.round(length * 2) / 2).toFixed(1))] : [];
    const noted = [...sized, entry(key, 'stringCount', String(countOf(key)))];
    if (key > LAST_WOUND) return [...noted, { ...entry(key, 'wireDiameterMm', ((DEMO_WRONG_WIRES[key] ?? plainOf(key)) + wire).toFixed(3)), ...remark }];
    const wound = woundOf(key);
    return [
      ...noted, entry(key, 'wireDiameterMm', (wound.coreMm + wire).toFixed(3)), { ...entry(key, 'overallDiameterMm', overallOf(wound).toFixed(2)), ...remark },
      entry(key, 'bareFrontMm', String(wound.bareFrontMm)), entry(key, 'bareRearMm', String(wound.bareRearMm)),
    ];
  };
}

/** New wire throughout: wound by stock wire, plain in sizes that step evenly; what stays as found is not planned again. */
function plannedEntries(key: KeyNumber): readonly ReadingEntry[] {
  if (key > LAST_REWOUND) return [entry(key, 'wireDiameterMm', String(plainOf(key)))];
  const { coreMm, wrapsMm, bareFrontMm, bareRearMm } = woundOf(key);
  const [outer = 0, inner] = wrapsMm.toReversed();
  return [
    ...(key > LAST_WOUND ? [entry(key, 'stringCount', '2')] : []), entry(key, 'wireDiameterMm', String(coreMm)),
    ...(inner === undefined ? [] : [entry(key, 'innerWrapMm', String(inner)), entry(key, 'stepFrontMm', '12'), entry(key, 'stepRearMm', '12')]),
    entry(key, 'outerWrapMm', String(outer)), entry(key, 'bareFrontMm', String(bareFrontMm)), entry(key, 'bareRearMm', String(bareRearMm)),
  ];
}

const entry = (key: KeyNumber, quantity: QuantityName, typed: string): ReadingEntry => ({ quantity, scope: 'key', index: key, typed });
