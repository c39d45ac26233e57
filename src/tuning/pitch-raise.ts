import { type TuningStretch, tuningStretches } from '#instrument';
import { linearFitOf, studentFactorOf } from '#numerics';
import { type Cents, type Ratio, cents, ratio } from '#units';

/** One pass over a section: where it stood, where it was set, where it was found afterwards. Cents off the pitch wanted. */
export interface RaisePass {
  readonly section: TuningStretch;
  readonly fromCents: Cents;
  readonly setCents: Cents;
  readonly settledCents: Cents;
}

/** What a section gives back of what it is raised, as far as the passes tell. */
export interface LearntDrop {
  readonly section: TuningStretch;
  /** Passes that were counted. */
  readonly passes: number;
  /** Absent while there are not enough passes. */
  readonly drop?: {
    /** Share of the amount raised that is lost again. */
    readonly share: Ratio;
    /** Standard uncertainty of the share. */
    readonly shareUncertainty: Ratio;
    /** Standard deviation of what one pass ended off the line. */
    readonly scatterCents: Cents;
    /** Factor for 95 %. */
    readonly coverage: number;
  };
}

/** Passes over one section below which nothing is learnt: two would leave one degree of freedom and a factor of 12.7. */
export const LEAST_PASSES = 4;

/**
 * Learns for each section what share of a raise is lost: drop = k·(set − from), least squares through the origin, since
 * nothing raised loses nothing. drop = set − settled. Cents. Ignores how long the pass settled and how old the wire is; that is
 * in the scatter. The share is not derived from wire and plate: such estimates miss it by several times.
 * @source OWN @source JCGM-100 clause 4.2 and annex H.3
 */
export function learntDropsOf(passes: readonly RaisePass[]): readonly LearntDrop[] {
  return tuningStretches.map((section) => {
    const own = passes.filter((pass) => pass.section === section);
    const fit = own.length < LEAST_PASSES ? undefined : linearFitOf(own.map(({ fromCents, setCents }) => [setCents - fromCents]), own.map(({ setCents, settledCents }) => setCents - settledCents));
    if (fit === undefined) return { section, passes: own.length };
    return {
      section, passes: own.length,
      drop: { share: ratio(fit.coefficients[0] ?? 0), shareUncertainty: ratio(fit.uncertainties[0] ?? 0), scatterCents: cents(fit.residual), coverage: studentFactorOf(fit.freedom) },
    };
  });
}

/** Where to set a section so that it comes down to where it is wanted. */
export interface RaisePlan {
  readonly section: TuningStretch;
  readonly setCents: Cents;
  /** Above the pitch wanted. */
  readonly overshootCents: Cents;
  /** Half-width of the range it should settle in, 95 %. */
  readonly settlesWithinCents: Cents;
}

/**
 * Where to set a section that stands at `fromCents` so that it settles at `targetCents`: x = (t − k·f)/(1 − k), and it then
 * settles within ± factor·√(s² + (u(k)·(x − f))²). Cents.
 *
 * @returns `undefined` while nothing is learnt, or where the section loses all it is raised (k ≥ 1).
 * @source OWN
 */
export function raisePlanOf({ section, drop }: LearntDrop, fromCents: number, targetCents = 0): RaisePlan | undefined {
  if (drop === undefined || drop.share >= 1) return undefined;
  const setCents = (targetCents - drop.share * fromCents) / (1 - drop.share);
  const doubt = drop.coverage * Math.hypot(drop.scatterCents, drop.shareUncertainty * (setCents - fromCents));
  return { section, setCents: cents(setCents), overshootCents: cents(setCents - targetCents), settlesWithinCents: cents(doubt) };
}
