import { middleOf } from './along-keys.ts';
import type { Refusal } from '../heard-note.ts';

/** One strike of a key, from soft to loud. */
export interface Strike {
  readonly key: number;
  readonly levelDb: number;
  readonly brightness: number;
}

/** A line through brightness against level. */
export interface LevelLine {
  readonly count: number;
  readonly meanLevelDb: number;
  readonly meanBrightness: number;
  readonly slopePer10Db: number;
  readonly slopeUncertaintyPer10Db: number;
  readonly residual: number;
  readonly spread: number;
}

/** A key from soft to loud. */
export interface SoftToLoudKey {
  readonly key: number;
  readonly strikes: number;
  readonly softestDb: number;
  readonly loudestDb: number;
  readonly slopePer10Db?: number;
  readonly slopeUncertaintyPer10Db?: number;
  readonly brightness?: number;
  readonly brightnessUncertainty?: number;
  readonly refusals: readonly Refusal[];
}

/** All keys, the level they are compared at, and the levels that all of them hold. */
export interface SoftToLoud {
  readonly atLevelDb?: number;
  readonly overlapDb?: readonly [number, number];
  readonly keys: readonly SoftToLoudKey[];
  readonly medianSlopePer10Db?: number;
  /** Standard deviation of the brightness of a strike about the line of its key, all lines together, and its degrees of freedom. */
  readonly repeatability?: number;
  readonly degreesOfFreedom?: number;
}

const FEWEST_STRIKES = 3;
const LEAST_RANGE_DB = 6;

/** Least squares of brightness on level, with standard errors. */
export function levelLineOf(strikes: readonly Pick<Strike, 'levelDb' | 'brightness'>[]): LevelLine {
  const count = strikes.length;
  const mean = (pick: (strike: Pick<Strike, 'levelDb' | 'brightness'>) => number): number => strikes.reduce((sum, strike) => sum + pick(strike), 0) / count;
  const [meanLevelDb, meanBrightness] = [mean(({ levelDb }) => levelDb), mean(({ brightness }) => brightness)];
  const spread = strikes.reduce((sum, { levelDb }) => sum + (levelDb - meanLevelDb) ** 2, 0);
  const slope = spread === 0 ? 0 : strikes.reduce((sum, { levelDb, brightness }) => sum + (levelDb - meanLevelDb) * (brightness - meanBrightness), 0) / spread;
  const squares = strikes.reduce((sum, { levelDb, brightness }) => sum + (brightness - meanBrightness - slope * (levelDb - meanLevelDb)) ** 2, 0);
  const residual = Math.sqrt(squares / Math.max(1, count - 2));
  return { count, meanLevelDb, meanBrightness, slopePer10Db: 10 * slope, slopeUncertaintyPer10Db: spread === 0 ? 0 : (10 * residual) / Math.sqrt(spread), residual, spread };
}

/** Brightness of a line at a level, and its standard error. */
export function brightnessAt(line: LevelLine, levelDb: number): { readonly brightness: number; readonly uncertainty: number } {
  const off = levelDb - line.meanLevelDb;
  return { brightness: line.meanBrightness + (line.slopePer10Db / 10) * off, uncertainty: line.residual * Math.sqrt(1 / line.count + (line.spread === 0 ? 0 : off ** 2 / line.spread)) };
}

/**
 * Brightness against level, key by key: slope per 10 dB, brightness at one level inside what every key holds (the middle of it unless
 * said), the softest strike that sounded, and how well a strike repeats: s² = Σ(m − 2)·s_line²/Σ(m − 2) over the lines, for which three degrees of freedom are needed. A key of fewer than three strikes, or of less than 6 dB of range, gets no slope; one that does not hold the level no
 * brightness: nothing is read outside what was played.
 */
export function softToLoudOf(strikes: readonly Strike[], wantedDb?: number): SoftToLoud {
  const numbers = [...new Set(strikes.map(({ key }) => key))].sort((a, b) => a - b);
  const rows = numbers.map((key) => ({ key, own: strikes.filter((strike) => strike.key === key) }));
  const ends = rows.map(({ own }) => ({ low: Math.min(...own.map(({ levelDb }) => levelDb)), high: Math.max(...own.map(({ levelDb }) => levelDb)) }));
  const [low, high] = [Math.max(...ends.map((end) => end.low)), Math.min(...ends.map((end) => end.high))];
  const atLevelDb = wantedDb ?? (low <= high ? (low + high) / 2 : undefined);
  const keys = rows.map(({ key, own }) => keyOf(key, own, atLevelDb));
  const slopes = keys.flatMap(({ slopePer10Db }) => slopePer10Db ?? []);
  const lines = rows.flatMap(({ own }, index) => (keys[index]?.slopePer10Db === undefined ? [] : [levelLineOf(own)]));
  return { keys, ...repeatabilityOf(lines), ...(atLevelDb === undefined ? {} : { atLevelDb }), ...(low <= high ? { overlapDb: [low, high] as const } : {}), ...(slopes.length === 0 ? {} : { medianSlopePer10Db: middleOf(slopes) }) };
}

/** Fewer say nothing of a standard deviation. @source OWN */
const FEWEST_FREEDOM = 3;

function repeatabilityOf(lines: readonly LevelLine[]): Pick<SoftToLoud, 'repeatability' | 'degreesOfFreedom'> {
  const degreesOfFreedom = lines.reduce((sum, { count }) => sum + count - 2, 0);
  if (degreesOfFreedom < FEWEST_FREEDOM) return {};
  return { degreesOfFreedom, repeatability: Math.sqrt(lines.reduce((sum, { count, residual }) => sum + (count - 2) * residual ** 2, 0) / degreesOfFreedom) };
}

function keyOf(key: number, own: readonly Strike[], atLevelDb: number | undefined): SoftToLoudKey {
  const levels = own.map(({ levelDb }) => levelDb);
  const [softestDb, loudestDb] = [Math.min(...levels), Math.max(...levels)];
  const base = { key, strikes: own.length, softestDb, loudestDb };
  if (own.length < FEWEST_STRIKES) return { ...base, refusals: [{ figure: 'slopePer10Db', reason: 'few-strikes', found: own.length, needed: FEWEST_STRIKES }] };
  if (loudestDb - softestDb < LEAST_RANGE_DB) return { ...base, refusals: [{ figure: 'slopePer10Db', reason: 'short-levels', found: loudestDb - softestDb, needed: LEAST_RANGE_DB }] };
  const line = levelLineOf(own);
  const slope = { slopePer10Db: line.slopePer10Db, slopeUncertaintyPer10Db: line.slopeUncertaintyPer10Db };
  if (atLevelDb === undefined || atLevelDb < softestDb || atLevelDb > loudestDb) return { ...base, ...slope, refusals: [{ figure: 'brightness', reason: 'levels-apart', ...(atLevelDb === undefined ? {} : { found: atLevelDb }) }] };
  const at = brightnessAt(line, atLevelDb);
  return { ...base, ...slope, brightness: at.brightness, brightnessUncertainty: at.uncertainty, refusals: [] };
}
