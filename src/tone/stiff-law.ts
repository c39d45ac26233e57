import { inverseOfPositive, medianOf, solvePositive, studentFactorOf } from '#numerics';
import { type Cents, type Hertz, cents, hertz } from '#units';

/** What a standard uncertainty is multiplied with for a 95 % interval of the normal distribution. */
const NORMAL_FACTOR = 1.959964;

/** `one-term`: fₙ = n·f0·√(1 + B·n²); `two-term`: fₙ = n·f0·√(1 + B·n² + C·n⁴), which wound strings need. */
export type StiffLaw = 'one-term' | 'two-term';

/** A partial as the fit takes it. */
export interface PartialFrequency {
  readonly n: number;
  readonly frequencyHz: number;
  readonly frequencyUncertaintyHz: number;
}

/** A stiff string through partials, and how well it goes through them. Every figure belongs to this law and this set of partials. */
export interface StiffFit {
  readonly law: StiffLaw;
  readonly f0Hz: Hertz;
  readonly inharmonicityB: number;
  readonly secondTermC: number;
  /** Standard uncertainties from the scatter of the partials; widened for few of them by Student's t, so that ±1.96 of it covers 95 %. */
  readonly f0UncertaintyHz: Hertz;
  readonly inharmonicityUncertainty: number;
  /** Scatter of the partials about the law beyond their noise. */
  readonly scatterCents: Cents;
  readonly rmsCents: Cents;
  readonly degreesOfFreedom: number;
  readonly partials: readonly { readonly n: number; readonly residualCents: Cents; readonly weight: number }[];
}

/** Ends the influence of a partial this many standard deviations off; 95 % efficient on normal scatter. @source TUKEY-BIWEIGHT */
const TUKEY = 4.685;
const MOST_STEPS = 60;
const MOST_STARTS = 200;
const CENTS = 1200 / Math.LN2;
/** Fewer cannot outvote one that is wrong. */
const ROBUST_FROM = 5;
/** Evidence asked of the second term: twice the log of a Bayes factor of 150, "very strong". @source KASS-RAFTERY-1995 */
const ASKED_BIC = 10;
/** Partials from which a second term may be asked about. */
const TWO_TERM_FROM = 8;

/** Frequency of partial n under a law. fₙ = n·f0·√(1 + B·n² + C·n⁴) @source FLETCHER-1964; the second term OWN */
export function partialHzOf({ f0Hz, inharmonicityB, secondTermC }: Pick<StiffFit, 'f0Hz' | 'inharmonicityB' | 'secondTermC'>, n: number): Hertz {
  return hertz(n * f0Hz * Math.sqrt(Math.max(1e-9, 1 + inharmonicityB * n ** 2 + secondTermC * n ** 4)));
}

interface Row {
  readonly n: number;
  /** ln(fₙ/n). */
  readonly value: number;
  readonly variance: number;
}

/** ln f0, B, C. */
type Unknowns = readonly [number, number, number];

const stretchAt = ([, b, c]: Unknowns, n: number): number => Math.max(1e-9, 1 + b * n ** 2 + c * n ** 4);
const residualsOf = (rows: readonly Row[], at: Unknowns): readonly number[] => rows.map(({ n, value }) => value - at[0] - 0.5 * Math.log(stretchAt(at, n)));

/**
 * Fits ln(fₙ/n) = ln f0 + ½·ln(1 + B·n² [+ C·n⁴]) to two or more partials, with weights from noise and scatter together and Tukey's
 * biweight against partials that belong to something else. The scatter τ beyond the noise is the one that makes the residuals as large
 * as they ought to be. Without a law given, two terms are taken where BIC asks for them by 10. `undefined` for fewer than two partials,
 * or for partials no stiff string has. @source PAULE-MANDEL-1982 for τ; HUBER-1981 for the covariance
 */
export function stiffFitOf(partials: readonly PartialFrequency[], law?: StiffLaw): StiffFit | undefined {
  const rows = partials.map(({ n, frequencyHz, frequencyUncertaintyHz }): Row => ({ n, value: Math.log(frequencyHz / n), variance: (frequencyUncertaintyHz / frequencyHz) ** 2 }));
  if (law !== undefined) return fitted(rows, law);
  const one = fitted(rows, 'one-term');
  if (one === undefined || rows.length < TWO_TERM_FROM) return one;
  const two = fitted(rows, 'two-term');
  return two !== undefined && two.deviance + Math.log(rows.length) + ASKED_BIC < one.deviance ? two : one;
}

/** The same law through the partials named, for states compared on the partials they share. */
export function refitOn(partials: readonly PartialFrequency[], numbers: readonly number[], law: StiffLaw): StiffFit | undefined {
  const wanted = new Set(numbers);
  return stiffFitOf(partials.filter(({ n }) => wanted.has(n)), law);
}

interface Weighed {
  readonly at: Unknowns;
  readonly scatter: number;
  readonly weights: readonly number[];
}

function fitted(rows: readonly Row[], law: StiffLaw): (StiffFit & { readonly deviance: number }) | undefined {
  const terms = law === 'one-term' ? 2 : 3;
  if (rows.length < terms) return undefined;
  let state: Weighed | undefined = startOf(rows);
  for (let step = 0; step < MOST_STEPS && state !== undefined; step++) {
    const next = bettered(rows, state, terms);
    const settled = next !== undefined && Math.abs(next.at[0] - state.at[0]) < 1e-13 && Math.abs(next.at[1] - state.at[1]) < 1e-11 * (1e-3 + Math.abs(next.at[1]));
    state = next;
    if (settled) break;
  }
  return state === undefined ? undefined : reported(rows, state, law, terms);
}

/** Of the laws through two partials each, the one that most others lie close to: no single wild partial tilts it. @source ROUSSEEUW-1984 */
function startOf(rows: readonly Row[]): Weighed {
  const pairs = rows.flatMap((low, at) => rows.slice(at + Math.max(1, Math.floor(rows.length / 3))).map((high) => throughPair(low, high)));
  const starts = pairs.filter((_, at) => at % Math.ceil(pairs.length / MOST_STARTS) === 0);
  const middling = (at: Unknowns): number => medianOf(residualsOf(rows, at).map(Math.abs));
  const best = starts.map((at) => ({ at, off: middling(at) })).reduce((least, start) => (start.off < least.off ? start : least));
  return { at: best.at, scatter: spreadOf(residualsOf(rows, best.at), 2), weights: rows.map(() => 1) };
}

/** f0 and B of the law through two partials: (fₙ/n)² is a straight line over n². */
function throughPair(low: Row, high: Row): Unknowns {
  const [y0, y1] = [Math.exp(2 * low.value), Math.exp(2 * high.value)];
  const slope = (y1 - y0) / (high.n ** 2 - low.n ** 2);
  const square = y0 - slope * low.n ** 2;
  return square > 0 ? [0.5 * Math.log(square), slope / square, 0] : [low.value, 0, 0];
}

const NORMAL_CONSISTENCY = 1.482602218505602;

/** Standard deviation of residuals of which some may be wild: from their median, or, of few, their mean square. */
function spreadOf(residuals: readonly number[], terms: number): number {
  const free = Math.sqrt(residuals.length / Math.max(1, residuals.length - terms));
  if (residuals.length < ROBUST_FROM + terms) return free * Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / residuals.length);
  return free * NORMAL_CONSISTENCY * medianOf(residuals.map(Math.abs));
}

/** τ ≥ 0 at which the residuals, each over √(noise² + τ²), have the spread 1; by halving. */
function scatterOf(rows: readonly Row[], residuals: readonly number[], terms: number): number {
  const spreadAt = (scatter: number): number => spreadOf(residuals.map((r, at) => r / Math.sqrt((rows[at]?.variance ?? 0) + scatter ** 2 + 1e-30)), terms);
  if (spreadAt(0) <= 1) return 0;
  let [low, high] = [0, 2 * Math.max(...residuals.map(Math.abs)) * Math.sqrt(rows.length)];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (spreadAt(middle) > 1) low = middle;
    else high = middle;
  }
  return high;
}

/** One step: weights from the residuals, then Gauss and Newton's step with those weights. */
function bettered(rows: readonly Row[], { at }: Weighed, terms: number): Weighed | undefined {
  const residuals = residualsOf(rows, at);
  const scatter = scatterOf(rows, residuals, terms);
  const deviations = rows.map(({ variance }) => Math.sqrt(variance + scatter ** 2 + 1e-30));
  const robust = rows.length >= ROBUST_FROM + terms;
  const weights = residuals.map((r, index) => (robust ? Math.max(0, 1 - (r / (TUKEY * (deviations[index] ?? 1))) ** 2) ** 2 : 1));
  const { normal, gradient } = normalOf(rows, at, residuals, weights.map((u, index) => u / (deviations[index] ?? 1) ** 2), terms);
  const step = solvePositive(normal, gradient);
  if (step === undefined) return undefined;
  const scales = scalesOf(rows);
  const moved = [0, 1, 2].map((k) => (at[k] ?? 0) + (step[k] ?? 0) / (scales[k] ?? 1));
  return { at: [moved[0] ?? 0, moved[1] ?? 0, moved[2] ?? 0], scatter, weights };
}

/** Unknowns are solved for as what they do at the highest partial, so that the normal matrix is well scaled. */
function scalesOf(rows: readonly Row[]): readonly number[] {
  const highest = Math.max(...rows.map(({ n }) => n));
  return [1, highest ** 2, highest ** 4];
}

function normalOf(rows: readonly Row[], at: Unknowns, residuals: readonly number[], weights: readonly number[], terms: number): { readonly normal: Float64Array; readonly gradient: Float64Array } {
  const scales = scalesOf(rows);
  const normal = new Float64Array(terms * terms);
  const gradient = new Float64Array(terms);
  for (const [index, { n }] of rows.entries()) {
    const half = 0.5 / stretchAt(at, n);
    const slopes = [1, half * n ** 2, half * n ** 4].map((slope, k) => slope / (scales[k] ?? 1));
    const weight = weights[index] ?? 0;
    for (let j = 0; j < terms; j++) {
      gradient[j] = (gradient[j] ?? 0) + weight * (slopes[j] ?? 0) * (residuals[index] ?? 0);
      for (let k = 0; k < terms; k++) normal[j * terms + k] = (normal[j * terms + k] ?? 0) + weight * (slopes[j] ?? 0) * (slopes[k] ?? 0);
    }
  }
  return { normal, gradient };
}

function reported(rows: readonly Row[], { at, scatter, weights }: Weighed, law: StiffLaw, terms: number): (StiffFit & { readonly deviance: number }) | undefined {
  const residuals = residualsOf(rows, at);
  const variances = rows.map(({ variance }) => variance + scatter ** 2 + 1e-30);
  const { normal } = normalOf(rows, at, residuals, variances.map((variance) => 1 / variance), terms);
  const inverse = inverseOfPositive(normal);
  if (inverse === undefined) return undefined;
  const degreesOfFreedom = rows.length - terms;
  const factor = psiFactor(residuals.map((r, index) => r / Math.sqrt(variances[index] ?? 1)), weights, degreesOfFreedom);
  const widen = Math.sqrt(scatter > 0 ? factor : Math.max(1, factor)) * (degreesOfFreedom > 0 ? studentFactorOf(degreesOfFreedom) / NORMAL_FACTOR : 1);
  const f0Hz = Math.exp(at[0]);
  const scales = scalesOf(rows);
  return {
    law, f0Hz: hertz(f0Hz), inharmonicityB: at[1], secondTermC: terms === 3 ? at[2] : 0,
    f0UncertaintyHz: hertz(f0Hz * Math.sqrt(inverse[0] ?? 0) * widen),
    inharmonicityUncertainty: (Math.sqrt(inverse[terms + 1] ?? 0) / (scales[1] ?? 1)) * widen,
    scatterCents: cents(scatter * CENTS),
    rmsCents: cents(CENTS * Math.sqrt(residuals.reduce((sum, r, index) => sum + (weights[index] ?? 0) * r * r, 0) / weights.reduce((sum, u) => sum + u, 0))),
    degreesOfFreedom,
    partials: rows.map(({ n }, index) => ({ n, residualCents: cents(CENTS * (residuals[index] ?? 0)), weight: weights[index] ?? 0 })),
    deviance: devianceOf(residuals, variances),
  };
}

/** Variance of an M-estimate over that of least squares: N²·Σψ² / ((N−p)·(Σψ′)²). */
function psiFactor(scaled: readonly number[], weights: readonly number[], degreesOfFreedom: number): number {
  if (degreesOfFreedom <= 0) return 1;
  const squares = scaled.reduce((sum, z, index) => sum + ((weights[index] ?? 0) * z) ** 2, 0);
  const slopes = scaled.reduce((sum, z, index) => {
    const u = weights[index] ?? 0;
    return sum + (u === 1 ? 1 : u - 4 * (z / TUKEY) ** 2 * Math.sqrt(u));
  }, 0);
  return (scaled.length ** 2 * squares) / (degreesOfFreedom * slopes ** 2);
}

/** −2·ln of the likelihood of normal residuals, each bounded where Tukey's weight ends. */
function devianceOf(residuals: readonly number[], variances: readonly number[]): number {
  return residuals.reduce((sum, r, index) => sum + Math.log(variances[index] ?? 1) + Math.min(TUKEY ** 2, r ** 2 / (variances[index] ?? 1)), 0);
}
