import { medianOf, scaledMadOf } from '#numerics';
import { type SoftToLoud, type Strike, softToLoudOf } from './soft-to-loud.ts';

/** A strike with the standard uncertainty of its brightness, where that is known. */
export interface DoubtedStrike extends Strike {
  readonly uncertainty?: number | undefined;
}

/** Brightness of a key at the level all are looked at; read off its own line, or moved there by the slope the others have. */
export interface LevelledKey {
  readonly key: number;
  readonly brightness: number;
  readonly uncertainty: number;
  readonly basis: 'line' | 'moved' | 'as-struck';
}

/** Keys at one level, how well a strike repeats there, and the keys that could not be brought to it. */
export interface AtOneLevel {
  readonly atLevelDb: number;
  readonly repeatability: number;
  readonly keys: readonly LevelledKey[];
  readonly left: readonly number[];
  readonly softToLoud: SoftToLoud;
}

/** Why no level is shared: no key was struck from soft to loud, or those that were hold none together. */
export type NoLevel = 'no-ladder' | 'levels-apart';

/** Strikes as loud as the level to this are taken as they are. @source PRACTICE */
const ALIKE_DB = 1;
/** Farther than this no slope is trusted. @source OWN */
const REACH_DB = 10;
/** Slopes of fewer keys say nothing of the others. @source OWN */
const FEWEST_SLOPES = 3;

/** The strikes of the keys that have a line of their own: three strikes and more over 6 dB. */
export function laddersIn<T extends Strike>(strikes: readonly T[]): readonly T[] {
  const withLine = new Set(softToLoudOf(strikes).keys.flatMap(({ key, slopePer10Db }) => (slopePer10Db === undefined ? [] : [key])));
  return strikes.filter(({ key }) => withLine.has(key));
}

/**
 * Brings the brightness of all keys to one level: the middle of what the keys struck from soft to loud all hold. Those are read off their own
 * lines; a key struck otherwise counts by its strike nearest to that level, moved by the median slope of the lines, u² = u₀² + (s·ΔL/10)², s the robust
 * scatter of the slopes, where three lines and more are known and ΔL is 10 dB at the most, and as it is within 1 dB.
 * @source OWN
 */
export function atOneLevel(strikes: readonly DoubtedStrike[]): AtOneLevel | NoLevel {
  const ladders = laddersIn(strikes);
  if (ladders.length === 0) return 'no-ladder';
  const softToLoud = softToLoudOf(ladders);
  const { atLevelDb, repeatability } = softToLoud;
  if (atLevelDb === undefined || repeatability === undefined) return 'levels-apart';
  const lines = softToLoud.keys.flatMap(({ key, brightness, brightnessUncertainty = 0 }): readonly LevelledKey[] => (brightness === undefined ? [] : [{ key, brightness, uncertainty: brightnessUncertainty, basis: 'line' }]));
  const own = new Set(lines.map(({ key }) => key));
  const slopes = softToLoud.keys.flatMap(({ slopePer10Db }) => slopePer10Db ?? []);
  const others = [...new Set(strikes.map(({ key }) => key))].filter((key) => !own.has(key));
  const moved = others.flatMap((key) => broughtTo(atLevelDb, strikes.filter((strike) => strike.key === key), slopes) ?? []);
  const placed = new Set([...own, ...moved.map(({ key }) => key)]);
  return { atLevelDb, repeatability, softToLoud, keys: [...lines, ...moved].toSorted((a, b) => a.key - b.key), left: others.filter((key) => !placed.has(key)).toSorted((a, b) => a - b) };
}

function broughtTo(atLevelDb: number, strikes: readonly DoubtedStrike[], slopes: readonly number[]): LevelledKey | undefined {
  const [nearest] = strikes.toSorted((a, b) => Math.abs(a.levelDb - atLevelDb) - Math.abs(b.levelDb - atLevelDb));
  if (nearest === undefined) return undefined;
  const { key, brightness, uncertainty = 0 } = nearest;
  const far = atLevelDb - nearest.levelDb;
  if (Math.abs(far) <= ALIKE_DB) return { key, brightness, uncertainty, basis: 'as-struck' };
  if (Math.abs(far) > REACH_DB || slopes.length < FEWEST_SLOPES) return undefined;
  return { key, brightness: brightness + (medianOf(slopes) * far) / 10, uncertainty: Math.hypot(uncertainty, (scaledMadOf(slopes) * far) / 10), basis: 'moved' };
}
