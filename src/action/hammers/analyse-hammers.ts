import type { KeyNumber } from '#instrument';
import { medianOf } from '#numerics';
import type { Degrees, Millimetres } from '#units';
import { type Strike, leastBoreOf, levelBoreOf, strikeOf } from '../hammer-bore.ts';
import type { Register } from '../register.ts';
import { strikeRatioOf } from './strike-line.ts';

/** One hammer as it was read; what is not known is absent. */
export interface HammerKey {
  readonly key: KeyNumber;
  readonly register: Register['name'];
  readonly strikeDistanceMm?: Millimetres;
  readonly speakingLengthMm?: Millimetres;
  readonly feltOverWoodMm?: Millimetres;
  readonly boreMm?: Millimetres;
  readonly rakeDeg?: Degrees;
  readonly stringHeightMm?: Millimetres;
}

export interface HammerInput {
  /** Bass to treble, every key once. */
  readonly keys: readonly HammerKey[];
  readonly sections: readonly { readonly name: string; readonly firstKey: KeyNumber; readonly lastKey: KeyNumber }[];
  readonly centreHeightMm?: Millimetres | undefined;
  /** Hammer centre to the middle of the head; absent for uprights, whose strings stand. */
  readonly hammerMm?: Millimetres | undefined;
  /** Least felt over the wood by register. */
  readonly leastFeltMm: Readonly<Record<Register['name'], number>>;
}

/** What is found of a hammer: felt below the least, a strike point beyond its string, or a head too short to reach. */
export type HammerFinding =
  | { readonly code: 'feltThin'; readonly figureMm: Millimetres; readonly limitMm: number }
  | { readonly code: 'strikeBeyond'; readonly figureMm: Millimetres; readonly limitMm: Millimetres }
  | { readonly code: 'boreShort'; readonly figureMm: Millimetres; readonly limitMm: Millimetres };

export interface AnalysedHammer extends HammerKey {
  readonly strikeRatio?: number;
  readonly strike?: Strike;
  readonly levelBoreMm?: Millimetres;
  readonly findings: readonly HammerFinding[];
}

/** The hammers of one section: medians of those that were read, and how many that is. */
export interface HammerSection {
  readonly name: string;
  readonly firstKey: KeyNumber;
  readonly lastKey: KeyNumber;
  readonly bored: number;
  readonly boreMm?: number;
  readonly levelBoreMm?: number;
  readonly stringHeightMm?: number;
  readonly shankDeg?: number;
  readonly squarenessDeg?: number;
  readonly strikeShiftMm?: number;
}

export interface HammerAnalysis {
  readonly keys: readonly AnalysedHammer[];
  readonly sections: readonly HammerSection[];
  readonly felt: { readonly read: number; readonly thin: number; readonly leastMm?: number; readonly leastKey?: KeyNumber };
}

/** Strike ratio, felt left and how each hammer meets its string, with medians by section. @source OWN; PRACTICE the least felt where the shop states none */
export function analyseHammers(input: HammerInput): HammerAnalysis {
  const keys = input.keys.map((key) => hammerOf(key, input));
  return { keys, sections: input.sections.map((section) => sectionOf(section, keys)), felt: feltOf(keys) };
}

function hammerOf(key: HammerKey, { leastFeltMm, centreHeightMm, hammerMm }: HammerInput): AnalysedHammer {
  const { strikeDistanceMm: d, speakingLengthMm: length, feltOverWoodMm: felt } = key;
  const least = leastFeltMm[key.register];
  const bored = boredOf(key, centreHeightMm, hammerMm);
  const strike = bored === undefined ? undefined : strikeOf(bored);
  return {
    ...key,
    ...(d === undefined || length === undefined || d >= length ? {} : { strikeRatio: strikeRatioOf({ strikeDistanceMm: d, speakingLengthMm: length }) }),
    ...(bored === undefined ? {} : { levelBoreMm: levelBoreOf(bored) }), ...(strike === undefined ? {} : { strike }),
    findings: [
      ...(felt !== undefined && felt < least ? [{ code: 'feltThin', figureMm: felt, limitMm: least } as const] : []),
      ...(d !== undefined && length !== undefined && d >= length ? [{ code: 'strikeBeyond', figureMm: d, limitMm: length } as const] : []),
      ...(bored !== undefined && strike === undefined ? [{ code: 'boreShort', figureMm: bored.boreMm, limitMm: leastBoreOf(bored) } as const] : []),
    ],
  };
}

function boredOf({ boreMm, rakeDeg, stringHeightMm }: HammerKey, centreHeightMm: Millimetres | undefined, hammerMm: Millimetres | undefined) {
  if (boreMm === undefined || rakeDeg === undefined || stringHeightMm === undefined || centreHeightMm === undefined || hammerMm === undefined || centreHeightMm >= stringHeightMm) return undefined;
  return { boreMm, rakeDeg, stringHeightMm, centreHeightMm, hammerMm };
}

function sectionOf({ name, firstKey, lastKey }: HammerInput['sections'][number], keys: readonly AnalysedHammer[]): HammerSection {
  const bored = keys.filter(({ key, strike }) => strike !== undefined && key >= firstKey && key <= lastKey);
  const place = { name, firstKey, lastKey, bored: bored.length };
  if (bored.length === 0) return place;
  const median = (of: (hammer: AnalysedHammer) => number | undefined): number => medianOf(bored.flatMap((hammer) => of(hammer) ?? []));
  return {
    ...place,
    boreMm: median(({ boreMm }) => boreMm), levelBoreMm: median(({ levelBoreMm }) => levelBoreMm), stringHeightMm: median(({ stringHeightMm }) => stringHeightMm),
    shankDeg: median(({ strike }) => strike?.shankDeg), squarenessDeg: median(({ strike }) => strike?.squarenessDeg), strikeShiftMm: median(({ strike }) => strike?.strikeShiftMm),
  };
}

function feltOf(keys: readonly AnalysedHammer[]): HammerAnalysis['felt'] {
  const read = keys.flatMap(({ key, feltOverWoodMm: felt }) => (felt === undefined ? [] : [{ key, felt }]));
  const thin = keys.filter(({ findings }) => findings.some(({ code }) => code === 'feltThin')).length;
  const least = read.reduce<(typeof read)[number] | undefined>((thinnest, each) => (thinnest === undefined || each.felt < thinnest.felt ? each : thinnest), undefined);
  return { read: read.length, thin, ...(least === undefined ? {} : { leastMm: least.felt, leastKey: least.key }) };
}
