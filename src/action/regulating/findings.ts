import { type Millimetres, millimetres } from '#units';
import { aftertouchOf } from '../regulation.ts';
import { HAIR_MM, type RegulationFigures, type RegulationLevers, type RegulationName, misfitOf, regulationNames } from './asked.ts';
import { type Turn, type TurnsOf, turnsFor } from './turns.ts';

/** What can be found of the regulation of a key. */
export const regulationFindingCodes = ['blocks', 'noEscape', 'noDrop', 'outside', 'uneven', 'aftertouchNotGiven', 'aftertouchDiffers'] as const;
export type RegulationFindingCode = (typeof regulationFindingCodes)[number];

export interface RegulationFinding {
  readonly code: RegulationFindingCode;
  readonly name: RegulationName;
  /** As read; of an uneven key, the mean of its neighbours is `limitMm`. */
  readonly figureMm: Millimetres;
  /** What it should be: asked, nought, the mean of the neighbours, or what the geometry gives. */
  readonly limitMm: Millimetres;
  readonly toleranceMm?: Millimetres;
  /** What would give the aftertouch asked: this dip, or this blow. */
  readonly reach?: { readonly dipMm: Millimetres; readonly blowMm: Millimetres };
  readonly turns: readonly Turn[];
}

/** One key with what it is judged by. */
export interface JudgedKey {
  readonly read: RegulationFigures;
  readonly asked: RegulationFigures;
  readonly tolerances: Readonly<Record<RegulationName, number>>;
  readonly levers: RegulationLevers | undefined;
  /** The nearest keys either side that may be compared in a figure, where both were read. */
  readonly neighboursOf: (name: RegulationName) => readonly [number, number] | undefined;
  readonly turning: TurnsOf;
}

/** Every finding of one key: what blocks first, then what is outside, uneven, or does not add up. @source OWN, PRACTICE the turns */
export function regulationFindingsOf(key: JudgedKey): readonly RegulationFinding[] {
  return [...stopsOf(key), ...regulationNames.flatMap((name) => outsideOf(key, name) ?? unevenOf(key, name) ?? []), ...aftertouchFindingsOf(key)];
}

/** Facts, whatever was asked: the hammer meets the string before it is let go, is never let go, or does not fall back. */
function stopsOf({ read: { letOffMm, aftertouchMm, dropMm }, turning }: JudgedKey): readonly RegulationFinding[] {
  const stop = (code: RegulationFindingCode, name: RegulationName, figureMm: Millimetres): RegulationFinding =>
    ({ code, name, figureMm, limitMm: millimetres(0), turns: turnsFor(name, -1, { ...turning, levers: undefined }) });
  return [
    ...(letOffMm !== undefined && letOffMm <= 0 ? [stop('blocks', 'letOffMm', letOffMm)] : []),
    ...(aftertouchMm !== undefined && aftertouchMm < 0 ? [stop('noEscape', 'aftertouchMm', aftertouchMm)] : []),
    ...(turning.kind === 'grand' && dropMm !== undefined && dropMm <= 0 ? [stop('noDrop', 'dropMm', dropMm)] : []),
  ];
}

function outsideOf({ read, asked, tolerances, turning }: JudgedKey, name: RegulationName): RegulationFinding | undefined {
  const [figureMm, limitMm, tolerance] = [read[name], asked[name], tolerances[name]];
  if (figureMm === undefined || limitMm === undefined || Math.abs(figureMm - limitMm) <= tolerance + HAIR_MM) return undefined;
  return { code: 'outside', name, figureMm, limitMm, toleranceMm: millimetres(tolerance), turns: turnsFor(name, figureMm - limitMm, turning) };
}

/** Further from the mean of its two neighbours than the tolerance, though not outside what is asked; where nothing is asked nothing is judged. */
function unevenOf({ read, asked, tolerances, neighboursOf, turning }: JudgedKey, name: RegulationName): RegulationFinding | undefined {
  const [figureMm, sides] = [read[name], neighboursOf(name)];
  if (figureMm === undefined || sides === undefined || asked[name] === undefined) return undefined;
  const mean = (sides[0] + sides[1]) / 2;
  if (Math.abs(figureMm - mean) <= tolerances[name] + HAIR_MM) return undefined;
  return { code: 'uneven', name, figureMm, limitMm: millimetres(mean), toleranceMm: millimetres(tolerances[name]), turns: turnsFor(name, figureMm - mean, turning) };
}

function aftertouchFindingsOf({ read, asked, tolerances, levers, turning }: JudgedKey): readonly RegulationFinding[] {
  const { blowMm, dipMm, letOffMm, aftertouchMm } = read;
  if (levers === undefined || blowMm === undefined || dipMm === undefined || letOffMm === undefined) return [];
  const toleranceMm = millimetres(tolerances.aftertouchMm);
  const given = aftertouchOf({ ...levers, letOffMm }, { blowMm, dipMm });
  const { misfit } = misfitOf({ blowMm, dipMm, letOffMm, ...(asked.aftertouchMm === undefined ? {} : { aftertouchMm: asked.aftertouchMm }) }, levers, toleranceMm);
  const off = aftertouchMm === undefined ? 0 : aftertouchMm - given;
  const lost: readonly Turn[] = off < 0 ? [{ code: 'lostMotion', amountMm: millimetres(-off) }] : [];
  return [
    ...(misfit === undefined || asked.aftertouchMm === undefined ? [] : [{
      code: 'aftertouchNotGiven', name: 'aftertouchMm', figureMm: given, limitMm: asked.aftertouchMm, toleranceMm,
      reach: { dipMm: misfit.dipMm, blowMm: misfit.blowMm }, turns: turnsFor('aftertouchMm', given - asked.aftertouchMm, turning),
    } as const]),
    ...(aftertouchMm === undefined || Math.abs(off) <= toleranceMm + HAIR_MM ? [] : [{
      code: 'aftertouchDiffers', name: 'aftertouchMm', figureMm: aftertouchMm, limitMm: given, toleranceMm, turns: lost,
    } as const]),
  ];
}
