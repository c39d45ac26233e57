import { type Result, map } from '#result';
import { type KeyOffset, alongKeysOf, middleOf } from './along-keys.ts';

/** Sustain of a key, beside its bearing where that was measured. */
export interface SustainNote {
  readonly key: number;
  /** Any one decay time: that of the sum, early or T20, the same for all keys. */
  readonly decayS: number;
  readonly uncertaintyS?: number | undefined;
  readonly bearingDeg?: number | undefined;
}

/** What to look at where a stretch of keys rings short. */
export const sustainLooks = ['bearing-low', 'measure-bearing', 'bearing-as-elsewhere', 'bridge', 'dry-air', 'damp-air', 'note-climate'] as const;
export type SustainLook = (typeof sustainLooks)[number];

/** A stretch of neighbours that ring short. */
export interface ShortStretch {
  readonly fromKey: number;
  readonly toKey: number;
  readonly medianRatio: number;
  readonly lookAt: readonly SustainLook[];
  readonly bearingDeg?: number;
  readonly bearingElsewhereDeg?: number;
}

/** Sustain along the keys. */
export interface SustainMap {
  readonly keys: readonly (KeyOffset & { readonly ratio: number })[];
  /** Robust standard deviation of the ratio’s logarithm. */
  readonly scatter: number;
  readonly short: readonly ShortStretch[];
}

/** Air the sounding board was listened to in. */
export interface Climate {
  readonly humidityPct?: number | undefined;
}

/** Stiff, so that a stretch of a dozen keys does not bend the curve to itself. */
export const SUSTAIN_LAMBDA = 1e5;
const FEWEST_TOGETHER = 3;
/** Bearing under this share of what the other keys have counts as low. */
const LOW_BEARING = 0.5;
/** Common practice, no source: drier than this a board has sunk, damper it has risen. */
const DRY_PCT = 35;
const DAMP_PCT = 65;

/**
 * Sustain beside a smooth curve through its logarithm; stretches of three keys and more whose ratio is below `shortRatio`, with what to
 * look at there. It names things to look at and claims nothing: a short tone has many causes.
 * @source PRACTICE
 */
export function sustainMapOf(notes: readonly SustainNote[], { climate, shortRatio, lambda = SUSTAIN_LAMBDA }: { readonly climate?: Climate | undefined; readonly shortRatio: number; readonly lambda?: number | undefined }): Result<SustainMap> {
  const logs = notes.map(({ key, decayS, uncertaintyS }) => ({ key, value: Math.log(decayS), uncertainty: uncertaintyS === undefined ? undefined : uncertaintyS / decayS }));
  return map(alongKeysOf(logs, lambda), ({ keys, scatter }) => {
    const rows = keys.map(({ key, value, curve, offset }) => ({ key, value: Math.exp(value), curve: Math.exp(curve), offset: Math.exp(value) - Math.exp(curve), ratio: Math.exp(offset) }));
    return { keys: rows, scatter, short: stretchesOf(rows, shortRatio).map((stretch) => suspected(stretch, notes, climate)) };
  });
}

type Row = SustainMap['keys'][number];

/** Runs of neighbours in the list that all ring short. */
function stretchesOf(rows: readonly Row[], shortRatio: number): readonly (readonly Row[])[] {
  const runs: Row[][] = [];
  for (const [index, row] of rows.entries()) {
    if (row.ratio >= shortRatio) continue;
    const last = runs.at(-1);
    if (last !== undefined && last.at(-1) === rows[index - 1]) last.push(row);
    else runs.push([row]);
  }
  return runs.filter((run) => run.length >= FEWEST_TOGETHER);
}

function suspected(stretch: readonly Row[], notes: readonly SustainNote[], climate: Climate | undefined): ShortStretch {
  const [fromKey, toKey] = [stretch[0]?.key ?? 0, stretch.at(-1)?.key ?? 0];
  const inside = notes.flatMap(({ key, bearingDeg }) => (key >= fromKey && key <= toKey && bearingDeg !== undefined ? [bearingDeg] : []));
  const outside = notes.flatMap(({ key, bearingDeg }) => ((key < fromKey || key > toKey) && bearingDeg !== undefined ? [bearingDeg] : []));
  return {
    fromKey, toKey, medianRatio: middleOf(stretch.map(({ ratio }) => ratio)), lookAt: [bearingLook(inside, outside), 'bridge', ...airLook(climate)],
    ...(inside.length === 0 ? {} : { bearingDeg: middleOf(inside) }), ...(outside.length === 0 ? {} : { bearingElsewhereDeg: middleOf(outside) }),
  };
}

function bearingLook(inside: readonly number[], outside: readonly number[]): SustainLook {
  if (inside.length === 0) return 'measure-bearing';
  const own = middleOf(inside);
  return own <= 0 || (outside.length > 0 && own < LOW_BEARING * middleOf(outside)) ? 'bearing-low' : 'bearing-as-elsewhere';
}

function airLook(climate: Climate | undefined): readonly SustainLook[] {
  if (climate?.humidityPct === undefined) return ['note-climate'];
  return climate.humidityPct < DRY_PCT ? ['dry-air'] : climate.humidityPct > DAMP_PCT ? ['damp-air'] : [];
}
