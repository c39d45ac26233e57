import { type Issue, type Result, ok, refuse } from '#result';
import type { Refusal } from '../heard-note.ts';
import { brightnessAt, levelLineOf } from './soft-to-loud.ts';

/** A strike as two states are compared by it. */
export interface ComparedStrike {
  readonly key: number;
  readonly levelDb: number;
  readonly partials: readonly { readonly n: number; readonly levelDb: number }[];
  readonly decayS?: number | undefined;
}

/** One state: where the microphone stood, what recorded and how it was set, and the strikes. */
export interface ToneState {
  readonly microphonePlace: string;
  readonly recordedWith: string;
  readonly strikes: readonly ComparedStrike[];
}

/** What changed at one key. Brightness is the harmonic centroid of the partials both states have, at one level. */
export interface KeyChange {
  readonly key: number;
  readonly partials: readonly number[];
  readonly atLevelDb?: number;
  readonly before?: number;
  readonly after?: number;
  readonly change?: number;
  readonly changeUncertainty?: number;
  /** After over before. */
  readonly decayRatio?: number;
  readonly refusals: readonly Refusal[];
}

const FEWEST_PARTIALS = 3;
/** Single strikes are compared only when they were as loud as each other to this. */
const ALIKE_DB = 1;

/**
 * Two states of a piano beside each other, only as it may be done: microphone and gain where they were, the partials both have, the levels
 * both hold. Decay is compared by its median, at such levels too: the early decay of some strings hangs on how hard they are struck. Refuses the whole where the microphone was moved or not told.
 * @source OWN
 */
export function toneChangeOf(before: ToneState, after: ToneState): Result<readonly KeyChange[]> {
  const issues = (['microphonePlace', 'recordedWith'] as const).flatMap((field): readonly Issue[] => {
    if (same(before[field], after[field])) return [];
    return [{ code: 'conflict', path: `after.${field}`, given: after[field], allowed: `the same as before (${before[field]}): another place or setting changes every figure`, params: { reason: 'microphoneMoved', before: before[field] } }];
  });
  if (issues.length > 0) return refuse(...issues);
  const keys = [...new Set(before.strikes.map(({ key }) => key))].filter((key) => after.strikes.some((strike) => strike.key === key)).sort((a, b) => a - b);
  return ok(keys.map((key) => changeAt(key, before.strikes.filter((strike) => strike.key === key), after.strikes.filter((strike) => strike.key === key))));
}

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

function changeAt(key: number, before: readonly ComparedStrike[], after: readonly ComparedStrike[]): KeyChange {
  const partials = commonPartials([...before, ...after]);
  const atLevelDb = sharedLevel(before, after);
  const base = { key, partials, ...(atLevelDb === undefined ? {} : { atLevelDb, ...decayRatioOf(before, after) }) };
  if (atLevelDb === undefined) return { ...base, refusals: [{ figure: 'change', reason: 'levels-apart' }] };
  if (partials.length < FEWEST_PARTIALS) return { ...base, refusals: [{ figure: 'change', reason: 'few-partials', found: partials.length, needed: FEWEST_PARTIALS }] };
  const [first, second] = [before, after].map((strikes) => strikes.map((strike) => ({ levelDb: strike.levelDb, brightness: centroidOf(strike, partials) })));
  if (first === undefined || second === undefined) return { ...base, refusals: [] };
  const [a, b] = [first, second].map((strikes) => brightnessAt(levelLineOf(strikes), atLevelDb));
  if (a === undefined || b === undefined) return { ...base, refusals: [] };
  const known = first.length > 2 && second.length > 2 ? { changeUncertainty: Math.hypot(a.uncertainty, b.uncertainty) } : {};
  return { ...base, before: a.brightness, after: b.brightness, change: b.brightness - a.brightness, ...known, refusals: [] };
}

function decayRatioOf(...states: readonly (readonly ComparedStrike[])[]): { readonly decayRatio?: number } {
  const [was, is] = states.map((strikes) => middle(strikes.flatMap(({ decayS }) => decayS ?? [])));
  return was === undefined || is === undefined ? {} : { decayRatio: is / was };
}

function commonPartials(strikes: readonly ComparedStrike[]): readonly number[] {
  const [first, ...rest] = strikes.map(({ partials }) => new Set(partials.map(({ n }) => n)));
  return [...(first ?? [])].filter((n) => rest.every((set) => set.has(n))).sort((a, b) => a - b);
}

/** Σ n·A / Σ A over the partials asked for. @source PEETERS-2011 */
function centroidOf({ partials }: ComparedStrike, numbers: readonly number[]): number {
  const wanted = new Set(numbers);
  const own = partials.filter(({ n }) => wanted.has(n)).map(({ n, levelDb }) => ({ n, amplitude: 10 ** (levelDb / 20) }));
  return own.reduce((sum, { n, amplitude }) => sum + n * amplitude, 0) / own.reduce((sum, { amplitude }) => sum + amplitude, 0);
}

type Levelled = readonly { readonly levelDb: number }[];

/** Middle of the levels both hold; of single strikes, their mean if they are alike. */
function sharedLevel(before: Levelled, after: Levelled): number | undefined {
  const ends = [before, after].map((strikes) => strikes.map(({ levelDb }) => levelDb)).map((levels) => ({ low: Math.min(...levels), high: Math.max(...levels), count: levels.length }));
  const [low, high] = [Math.max(...ends.map((end) => end.low)), Math.min(...ends.map((end) => end.high))];
  const slack = ends.some(({ count }) => count < 3) ? ALIKE_DB : 0;
  return low - high <= slack ? (low + high) / 2 : undefined;
}

function middle(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1];
}
