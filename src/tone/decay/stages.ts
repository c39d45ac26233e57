import { meanOf, sumOf } from '#numerics';
import type { LevelBlocks } from './blocks.ts';
import { lineThrough } from './energy-decay.ts';
import { leastOf } from './simplex.ts';

/** Decay as one or two exponentials. Times are for 60 dB. */
export interface Stages {
  readonly count: 1 | 2;
  readonly earlyS: number;
  /** Level at the beginning. */
  readonly beginDb: number;
  /** Of the second stage: its time, how far below the first it starts, when the two are alike, and whether powers (1) or amplitudes (2) add. */
  readonly late?: { readonly seconds: number; readonly levelDb: number; readonly fromS: number; readonly adds: 1 | 2 };
}

const dB = (ratio: number): number => 10 * Math.log10(ratio);
const LN_MILLION = 6 * Math.LN10;

/** Difference of BIC that counts as strong evidence. @source KASS-RAFTERY-1995 */
const STRONG = 6;

/** Levels of a decay are not told apart below this. */
const FINEST_DB = 0.1;

/** Two stages whose times are nearer than this are one. */
const LEAST_RATIO = 1.5;

/** Fewest blocks that bear four parameters. */
const FEWEST_BLOCKS = 12;

/** Four parameters need no more points than this; the fit is spared the rest. */
const FIT_BLOCKS = 64;

/** Level of the model at so many even times from the beginning on. */
export function modelDbOf({ earlyS, beginDb, late }: Stages, count: number, stepS: number): readonly number[] {
  if (late === undefined) return Array.from({ length: count }, (_, at) => beginDb - (60 * at * stepS) / earlyS);
  const shape = shapeOf({ fast: LN_MILLION / earlyS, slow: LN_MILLION / late.seconds, share: 10 ** (late.levelDb / 10), adds: late.adds }, new Float64Array(count), stepS);
  return Array.from(shape, (value) => value + beginDb - (shape[0] ?? 0));
}

/**
 * One exponential, L = a − 60·t/T, or two, L = a + m·10·lg(e^(−k₁t/m) + r^(1/m)·e^(−k₂t/m)), whichever BIC prefers; m = 1 adds the powers
 * of the two, as of different strings or partials, m = 2 their amplitudes, as of one frequency, whichever fits. The blocks count for as many
 * as they are worth after the correlation of neighbours, n·(1 − ρ)/(1 + ρ), since beats run through many of them.
 * Undefined where the level does not fall.
 * @source SCHWARZ-1978
 */
export function stagesOf(blocks: LevelBlocks): Stages | undefined {
  const { levelDb, stepS } = coarsened(blocks);
  if (levelDb.length < 4) return undefined;
  const line = lineThrough(levelDb, 0, levelDb.length);
  if (line.slope >= 0) return undefined;
  const single: Stages = { count: 1, earlyS: (-60 / line.slope) * stepS, beginDb: line.mean - (line.slope * (levelDb.length - 1)) / 2 };
  if (levelDb.length < FEWEST_BLOCKS) return single;
  const rate = (-line.slope / stepS) * (Math.LN10 / 10);
  const [one, other] = [bestPair(levelDb, stepS, rate, 1), bestPair(levelDb, stepS, rate, 2)];
  const two = one.cost <= other.cost ? one : other;
  const worth = effectiveCount(residualsOf(levelDb, two.modelDb));
  const gain = worth * Math.log(weighty(squares(residualsOf(levelDb, modelDbOf(single, levelDb.length, stepS))), levelDb.length) / weighty(two.cost, levelDb.length)) - 2 * Math.log(worth);
  const { fast, slow, share, adds } = two.pair;
  if (!(gain > STRONG) || fast / slow < LEAST_RATIO) return single;
  return {
    count: 2, earlyS: LN_MILLION / fast, beginDb: two.modelDb[0] ?? 0,
    late: { seconds: LN_MILLION / slow, levelDb: dB(share), fromS: Math.max(0, Math.log(1 / share) / (fast - slow)), adds },
  };
}

/** Neighbours put together until few enough are left. */
function coarsened({ levelDb, stepS }: LevelBlocks): LevelBlocks {
  const span = Math.max(1, Math.floor(levelDb.length / FIT_BLOCKS));
  const count = Math.floor(levelDb.length / span);
  return { levelDb: Array.from({ length: count }, (_, at) => dB(meanOf(levelDb.slice(at * span, (at + 1) * span).map((level) => 10 ** (level / 10))))), stepS: span * stepS };
}

const residualsOf = (values: readonly number[], model: readonly number[]): readonly number[] => values.map((value, index) => value - (model[index] ?? 0));
const LEAST_SQUARES = 1e-12;
const squares = (values: readonly number[]): number => Math.max(sumOf(values.map((value) => value * value)), LEAST_SQUARES);
/** Sum of squares as evidence: never less than a tenth of a decibel each, since finer differences are none. */
const weighty = (sum: number, count: number): number => Math.max(sum, count * FINEST_DB ** 2);

/** How many independent values a row of neighbours is worth. */
function effectiveCount(residuals: readonly number[]): number {
  const product = sumOf(residuals.slice(1).map((value, index) => value * (residuals[index] ?? 0)));
  const correlation = Math.min(Math.max(product / squares(residuals), 0), 0.99);
  return Math.max(5, (residuals.length * (1 - correlation)) / (1 + correlation));
}

interface Pair {
  readonly fast: number;
  readonly slow: number;
  readonly share: number;
  readonly adds: 1 | 2;
}

/** Writes the level of two stages at even times from 0 on: each exponential is its last value times a constant. */
function shapeOf({ fast, slow, share, adds }: Pair, out: Float64Array, stepS: number): Float64Array {
  const [fastTurn, slowTurn, scale] = [Math.exp((-fast * stepS) / adds), Math.exp((-slow * stepS) / adds), (10 * adds) / Math.LN10];
  let [first, second] = [1, share ** (1 / adds)];
  for (let at = 0; at < out.length; at++) {
    out[at] = scale * Math.log(first + second);
    first *= fastTurn;
    second *= slowTurn;
  }
  return out;
}

const pairOf = (at: readonly number[], adds: 1 | 2): Pair => ({ fast: Math.exp((at[0] ?? 0) + Math.exp(at[1] ?? 0)), slow: Math.exp(at[0] ?? 0), share: Math.exp(Math.min(at[2] ?? 0, 0)), adds });

/** The two exponentials nearest to the levels in decibels; the common level comes out as a mean. */
function bestPair(levels: readonly number[], stepS: number, rate: number, adds: 1 | 2): { readonly pair: Pair; readonly cost: number; readonly modelDb: readonly number[] } {
  const shape = new Float64Array(levels.length);
  const costOf = (at: readonly number[]): number => {
    shapeOf(pairOf(at, adds), shape, stepS);
    const shift = shiftOf(levels, shape);
    let cost = 0;
    for (let index = 0; index < shape.length; index++) cost += ((levels[index] ?? 0) - (shape[index] ?? 0) - shift) ** 2;
    return Math.max(cost, LEAST_SQUARES);
  };
  const starts = [-1.5, -5].map((share) => [Math.log(rate / 2), 0.3, share]);
  const best = starts.map((start) => leastOf(costOf, start, 0.4)).reduce((a, b) => (b.cost < a.cost ? b : a));
  const pair = pairOf(best.at, adds);
  shapeOf(pair, shape, stepS);
  const shift = shiftOf(levels, shape);
  return { pair, cost: best.cost, modelDb: Array.from(shape, (value) => value + shift) };
}

/** How far the levels lie over a shape in the mean. */
function shiftOf(levels: readonly number[], shape: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < shape.length; index++) sum += (levels[index] ?? 0) - (shape[index] ?? 0);
  return sum / shape.length;
}
