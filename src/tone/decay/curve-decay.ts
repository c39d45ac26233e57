import type { Refusal } from '../heard-note.ts';
import { type Beats, beatsOf } from './beats.ts';
import { type LevelBlocks, blocksOf } from './blocks.ts';
import type { Cut, endings } from './ending.ts';
import { type DecayTime, type PowerCurve, bottomOf, decayTimeOf, lineThrough, rangeDbOf } from './energy-decay.ts';
import { type Stages, modelDbOf, stagesOf } from './stages.ts';

/** What one curve of power tells of its decay. Times are for 60 dB. */
export interface CurveDecay {
  /** From the beginning of the decay to the noise, the damper or the end of the recording. */
  readonly rangeDb: number;
  readonly observedS: number;
  readonly ending: (typeof endings)[number];
  /** Early decay time: slope of the energy decay over its first 10 dB. */
  readonly edt10?: DecayTime;
  /** Slope of the energy decay from −5 to −25 dB. */
  readonly t20?: DecayTime;
  readonly stages?: Stages;
  readonly late?: DecayTime;
  readonly beats?: Beats;
  readonly refusals: readonly Refusal[];
}

/** Decibels of decay that must stand above noise and end for each figure: its own range and 10 dB more. @source ISO-3382 */
export const NEEDED_DB = { edt10: 20, t20: 35, late: 10 } as const;

/** The late decay is read down to this far above the noise. */
const ABOVE_NOISE_DB = 5;
const LEAST_STRAIGHT = 0.9;

/** Decay of one curve, to where a damper or a fade cuts it off: times, stages and beats, each only where the curve bears it. */
export function curveDecayOf(whole: PowerCurve, cut?: Cut): CurveDecay {
  const bottom = bottomOf(cut === undefined ? whole : { ...whole, power: whole.power.subarray(0, Math.max(1, Math.ceil(cut.atS / whole.stepS))) });
  const blocks = blocksOf(whole, bottom);
  const rangeDb = rangeDbOf(whole, bottom);
  const stages = stagesOf(blocks);
  const short = (figure: keyof typeof NEEDED_DB): readonly Refusal[] => (rangeDb >= NEEDED_DB[figure] ? [] : [{ figure, reason: 'short-range', found: rangeDb, needed: NEEDED_DB[figure] }]);
  const timed = (figure: 'edt10' | 't20', fromDb: number, toDb: number): Partial<Record<'edt10' | 't20', DecayTime>> => {
    const time = rangeDb >= NEEDED_DB[figure] ? decayTimeOf(whole, bottom, fromDb, toDb) : undefined;
    return time === undefined ? {} : { [figure]: time };
  };
  const late = lateOf(whole, blocks, stages);
  const beats = stages === undefined ? undefined : beatsOf(blocks.levelDb, modelDbOf(stages, blocks.levelDb.length, blocks.stepS), blocks.stepS);
  return {
    rangeDb, observedS: bottom.end * whole.stepS, ending: cut?.by ?? 'open',
    ...timed('edt10', 0, -10), ...timed('t20', -5, -25),
    ...(stages === undefined ? {} : { stages }), ...('time' in late ? { late: late.time } : {}), ...(beats === undefined ? {} : { beats }),
    refusals: [...short('edt10'), ...short('t20'), ...('refusal' in late ? [late.refusal] : [])],
  };
}

/** Time of the late stage, with the standard error of a line through it, or why there is none. */
function lateOf({ noise }: PowerCurve, { levelDb, stepS }: LevelBlocks, stages: Stages | undefined): { readonly time: DecayTime } | { readonly refusal: Refusal } {
  if (stages?.late === undefined) return { refusal: { figure: 'late', reason: 'one-stage' } };
  const from = Math.ceil(stages.late.fromS / stepS);
  const floorDb = noise > 0 ? 10 * Math.log10(noise) + ABOVE_NOISE_DB : -Infinity;
  const below = levelDb.findIndex((level, index) => index >= from && level < floorDb);
  const to = below < 0 ? levelDb.length : below;
  const fallDb = ((to - from) * stepS * 60) / stages.late.seconds;
  if (!(fallDb >= NEEDED_DB.late)) return { refusal: { figure: 'late', reason: 'short-late', found: Math.max(0, fallDb), needed: NEEDED_DB.late } };
  const line = lineThrough(levelDb, from, to);
  if (line.explained < LEAST_STRAIGHT) return { refusal: { figure: 'late', reason: 'not-straight', found: line.explained, needed: LEAST_STRAIGHT } };
  const share = slopeDoubt(line.residual, line.count) / Math.abs(line.slope);
  return { time: { seconds: stages.late.seconds, uncertaintyS: stages.late.seconds * share } };
}

/** Standard error of the slope of n even points: s·√(12/(n³ − n)). */
function slopeDoubt(residual: number, count: number): number {
  return residual * Math.sqrt(12 / (count ** 3 - count));
}
