import { meanOf, sumOf } from '#numerics';
import type { LevelBlocks } from './blocks.ts';
import { lineThrough } from './energy-decay.ts';
import { leastOf } from './simplex.ts';

/** Decay as one or two exponentials. Times are for 60 dB. */
export interface Stages {
  readonly count: 1 | 2;
  readonly earlyS: number;
  /** Of the second stage: its time, how far below the first it starts, and when the two are alike. */
  readonly late?: { readonly seconds: number; readonly levelDb: number; readonly fromS: number };
  /** Level of the model at each block. */
  readonly modelDb: readonly number[];
}

const dB = (ratio: number): number => 10 * Math.log10(ratio);
const LN_MILLION = 6 * Math.LN10;

/** Difference of BIC that counts as strong evidence. @source KASS-RAFTERY-1995 */
const STRONG = 6;

/** Two stages whose times are nearer than this are one. */
const LEAST_RATIO = 1.5;

/** Fewest blocks that bear four parameters. */
const FEWEST_BLOCKS = 12;

/**
 * One exponential, L = a − 60·t/T, or two, L = a + m·10·lg(e^(−k₁t/m) + r^(1/m)·e^(−k₂t/m)), whichever BIC prefers; m = 1 adds the powers
 * of the two, as of different strings or partials, m = 2 their amplitudes, as of one frequency, whichever fits. The blocks count for as many
 * as they are worth after the correlation of neighbours, n·(1 − ρ)/(1 + ρ), since beats run through many of them.
 * Undefined where the level does not fall.
 * @source SCHWARZ-1978
 */
export function stagesOf({ levelDb, stepS }: LevelBlocks): Stages | undefined {
  if (levelDb.length < 4) return undefined;
  const line = lineThrough(levelDb, 0, levelDb.length);
  const one = straightOf(levelDb, line.slope);
  if (line.slope >= 0) return undefined;
  const single: Stages = { count: 1, earlyS: (-60 / line.slope) * stepS, modelDb: one };
  if (levelDb.length < FEWEST_BLOCKS) return single;
  const times = levelDb.map((_, index) => index * stepS);
  const rate = (-line.slope / stepS) * (Math.LN10 / 10);
  const [two, other] = [bestPair(levelDb, times, rate, 1), bestPair(levelDb, times, rate, 2)].sort((a, b) => squares(residualsOf(levelDb, a.modelDb)) - squares(residualsOf(levelDb, b.modelDb)));
  if (two === undefined || other === undefined) return single;
  const worth = effectiveCount(residualsOf(levelDb, two.modelDb));
  const gain = worth * Math.log(squares(residualsOf(levelDb, one)) / squares(residualsOf(levelDb, two.modelDb))) - 2 * Math.log(worth);
  const [fast, slow, share] = two.pair;
  if (!(gain > STRONG) || fast / slow < LEAST_RATIO) return single;
  return {
    count: 2, earlyS: LN_MILLION / fast, modelDb: two.modelDb,
    late: { seconds: LN_MILLION / slow, levelDb: dB(share), fromS: Math.max(0, Math.log(1 / share) / (fast - slow)) },
  };
}

const residualsOf = (values: readonly number[], model: readonly number[]): readonly number[] => values.map((value, index) => value - (model[index] ?? 0));
const squares = (values: readonly number[]): number => Math.max(sumOf(values.map((value) => value * value)), 1e-12);

function straightOf(levels: readonly number[], slope: number): readonly number[] {
  const middle = (levels.length - 1) / 2;
  const mean = meanOf(levels);
  return levels.map((_, index) => mean + slope * (index - middle));
}

/** How many independent values a row of neighbours is worth. */
function effectiveCount(residuals: readonly number[]): number {
  const product = sumOf(residuals.slice(1).map((value, index) => value * (residuals[index] ?? 0)));
  const correlation = Math.min(Math.max(product / squares(residuals), 0), 0.99);
  return Math.max(5, (residuals.length * (1 - correlation)) / (1 + correlation));
}

type Pair = readonly [fast: number, slow: number, share: number];

/** The two exponentials nearest to the levels in decibels; the common level comes out as a mean. */
function bestPair(levels: readonly number[], times: readonly number[], rate: number, root: 1 | 2): { readonly pair: Pair; readonly modelDb: readonly number[] } {
  const pairOf = ([a = 0, b = 0, c = 0]: readonly number[]): Pair => [Math.exp(a + Math.exp(b)), Math.exp(a), Math.exp(Math.min(c, 0))];
  const shapeOf = ([fast, slow, share]: Pair): readonly number[] => times.map((t) => root * dB(Math.exp((-fast * t) / root) + share ** (1 / root) * Math.exp((-slow * t) / root)));
  const fitted = (pair: Pair): readonly number[] => {
    const shape = shapeOf(pair);
    const shift = meanOf(residualsOf(levels, shape));
    return shape.map((value) => value + shift);
  };
  const costOf = (at: readonly number[]): number => squares(residualsOf(levels, fitted(pairOf(at))));
  const starts = [-1.5, -5].map((share) => [Math.log(rate / 2), 0.3, share]);
  const best = starts.map((start) => leastOf(costOf, start, 0.4)).reduce((a, b) => (b.cost < a.cost ? b : a));
  const pair = pairOf(best.at);
  return { pair, modelDb: fitted(pair) };
}
