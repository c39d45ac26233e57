import type { KeyColour, KeyNumber } from '#instrument';
import { medianOf } from '#numerics';
import { type Millimetres, millimetres } from '#units';
import { aftertouchOf } from '../regulation.ts';
import type { Register } from '../register.ts';
import { type AskedRegulation, HAIR_MM, type RegulationFigures, type RegulationFloat, type RegulationLevers, type RegulationName, askedRegulationOf, regulationNames } from './asked.ts';
import { type RegulationFinding, regulationFindingsOf } from './findings.ts';

/** One key as it was read; what was not read is absent. */
export interface RegulationKey {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  readonly register: Register['name'];
  readonly read: RegulationFigures;
}

export interface RegulationInput {
  readonly kind: 'grand' | 'upright';
  /** Bass to treble, every key once. */
  readonly keys: readonly RegulationKey[];
  readonly stated: Partial<Readonly<Record<Register['name'], RegulationFigures>>>;
  readonly floats?: RegulationFloat | undefined;
  readonly levers: Partial<Readonly<Record<KeyColour, RegulationLevers>>>;
  readonly tolerances: Readonly<Record<RegulationName, number>>;
}

export interface RegulatedKey extends RegulationKey {
  readonly asked: RegulationFigures;
  /** Aftertouch that blow, let-off and dip of this key give. */
  readonly givenAftertouchMm?: Millimetres;
  readonly findings: readonly RegulationFinding[];
}

/** One figure over the keyboard. `inside` counts only keys of which something is asked. */
export interface RegulationRow {
  readonly name: RegulationName;
  readonly read: number;
  readonly judged: number;
  readonly inside: number;
  readonly medianMm?: Millimetres;
  readonly largestStepMm?: Millimetres;
  readonly stepKeys?: readonly [KeyNumber, KeyNumber];
}

/** What is asked of one register and colour. */
export interface RegulationOfRegister extends AskedRegulation {
  readonly register: Register['name'];
  readonly colour: KeyColour;
}

export interface RegulationAnalysis {
  readonly keys: readonly RegulatedKey[];
  readonly rows: readonly RegulationRow[];
  readonly asked: readonly RegulationOfRegister[];
}

/** Figures that differ between naturals and sharps by their nature: compared within one colour only. */
const BY_COLOUR: ReadonlySet<RegulationName> = new Set(['dipMm', 'aftertouchMm', 'keyLevelMm', 'sharpHeightMm']);

/**
 * Judges the regulation of every key: what is asked of its register, what floats worked out with the ratio by distance of its
 * colour, findings with what to turn, and how even each figure is. Without a stated figure nothing is judged by it.
 * @source OWN
 */
export function analyseRegulation(input: RegulationInput): RegulationAnalysis {
  const { kind, floats, levers, tolerances } = input;
  const asked = askedOf(input);
  const askedOfKey = (key: RegulationKey): RegulationFigures => asked.find(({ register, colour }) => register === key.register && colour === key.colour)?.figures ?? {};
  const isInside = (key: RegulationKey, name: RegulationName): boolean => Math.abs((key.read[name] ?? 0) - (askedOfKey(key)[name] ?? Number.POSITIVE_INFINITY)) <= tolerances[name] + HAIR_MM;
  const keys = input.keys.map((key, index): RegulatedKey => {
    const figures = askedOfKey(key);
    const own = levers[key.colour];
    const findings = regulationFindingsOf({ read: key.read, asked: figures, tolerances, levers: own, neighboursOf: (name) => neighboursOf(input.keys, index, name, isInside), turning: { kind, floats, levers: own } });
    return { ...key, asked: figures, ...givenOf(key.read, own), findings };
  });
  return { keys, asked, rows: regulationNames.flatMap((name) => rowOf(name, keys, tolerances[name]) ?? []) };
}

function askedOf({ stated, floats, levers, tolerances, keys }: RegulationInput): readonly RegulationOfRegister[] {
  return (['bass', 'middle', 'treble'] as const).flatMap((register) => (['natural', 'sharp'] as const).flatMap((colour) => {
    const figures = stated[register];
    if (figures === undefined || !keys.some((key) => key.register === register && key.colour === colour)) return [];
    return [{ register, colour, ...askedRegulationOf(ofColour(figures, colour), { floats, levers: levers[colour], toleranceMm: tolerances.aftertouchMm }) }];
  }));
}

/** The height above the naturals is asked of sharps alone. */
function ofColour({ sharpHeightMm, ...figures }: RegulationFigures, colour: KeyColour): RegulationFigures {
  return colour === 'sharp' && sharpHeightMm !== undefined ? { ...figures, sharpHeightMm } : figures;
}

function givenOf({ blowMm, dipMm, letOffMm }: RegulationFigures, levers: RegulationLevers | undefined): Pick<RegulatedKey, 'givenAftertouchMm'> {
  if (levers === undefined || blowMm === undefined || dipMm === undefined || letOffMm === undefined) return {};
  return { givenAftertouchMm: aftertouchOf({ ...levers, letOffMm }, { blowMm, dipMm }) };
}

/** The next key either side, of the same colour where colours differ, both read, in the same register and inside: a key outside makes no neighbour uneven. */
function neighboursOf(keys: readonly RegulationKey[], index: number, name: RegulationName, isInside: (key: RegulationKey, name: RegulationName) => boolean): readonly [number, number] | undefined {
  const own = keys[index];
  if (own === undefined) return undefined;
  const isLike = (key: RegulationKey): boolean => !BY_COLOUR.has(name) || key.colour === own.colour;
  const [below, above] = [keys.slice(0, index).findLast(isLike), keys.slice(index + 1).find(isLike)];
  if (below?.register !== own.register || above?.register !== own.register || !isInside(below, name) || !isInside(above, name)) return undefined;
  const [low, high] = [below.read[name], above.read[name]];
  return low === undefined || high === undefined ? undefined : [low, high];
}

function rowOf(name: RegulationName, keys: readonly RegulatedKey[], tolerance: number): RegulationRow | undefined {
  const read = keys.flatMap((key) => (key.read[name] === undefined ? [] : [{ ...key, value: key.read[name] }]));
  if (read.length === 0) return undefined;
  const judged = read.flatMap(({ value, asked }) => (asked[name] === undefined ? [] : [Math.abs(value - asked[name]) <= tolerance + HAIR_MM]));
  return { name, read: read.length, judged: judged.length, inside: judged.filter(Boolean).length, medianMm: millimetres(medianOf(read.map(({ value }) => value))), ...largestStepOf(name, read) };
}

function largestStepOf(name: RegulationName, read: readonly (RegulatedKey & { readonly value: number })[]): Pick<RegulationRow, 'largestStepMm' | 'stepKeys'> {
  const colours: readonly (KeyColour | undefined)[] = BY_COLOUR.has(name) ? ['natural', 'sharp'] : [undefined];
  const steps = colours.flatMap((colour) => {
    const row = read.filter((key) => colour === undefined || key.colour === colour);
    return row.slice(1).map((key, index) => ({ step: Math.abs(key.value - (row[index]?.value ?? key.value)), keys: [row[index]?.key ?? key.key, key.key] as const }));
  });
  const largest = steps.reduce<(typeof steps)[number] | undefined>((most, each) => (most === undefined || each.step > most.step ? each : most), undefined);
  return largest === undefined ? {} : { largestStepMm: millimetres(largest.step), stepKeys: largest.keys };
}
