import type { Evidence, Finding, Cause, Remedy, TouchInput } from './analysis.ts';
import type { ExpectedFigures } from './analyse-expected.ts';
import type { DerivedFigures } from './analyse-figures.ts';
import type { JudgedFigure } from './analyse-target.ts';
import type { Expected } from './baseline.ts';
import type { Register } from './register.ts';
import { stageOf } from './remedy.ts';

/** Everything the findings of one key are drawn from. */
export interface KeyContext {
  readonly input: TouchInput;
  readonly derived: DerivedFigures;
  readonly expected: ExpectedFigures;
  /** Absent where the usual ranges do not hold: uprights, resting dampers. */
  readonly register?: Register;
  /** Absent without an intent. */
  readonly judged?: JudgedFigure;
}

/** A departure is told from 2 g, and from 3.5 times the scatter of the neighbours. @source OWN trial on planted faults */
const LEAST_TOLD_G = 2;
const FENCE = 3.5;
/** Coverage factor of expanded uncertainties. @source JCGM-100 */
const COVERAGE = 2;
/** Standard error of a median against that of a mean, for a normal sample: √(π/2). */
const MEDIAN_PENALTY = Math.sqrt(Math.PI / 2);

/** Expanded uncertainty U = 2u; undefined where u is. @source JCGM-100 */
export function expandedOf(standardUncertainty: number | undefined): number | undefined {
  return standardUncertainty === undefined ? undefined : COVERAGE * standardUncertainty;
}

/** A departure from what the neighbours lead one to expect, in grams at the key front. */
export interface Departure {
  readonly amountG: number;
  readonly uncertaintyG?: number;
  /** Beyond the fence: worth telling. */
  readonly told: boolean;
}

/** Compares a figure with its neighbours; `gramsPerUnit` turns the figure into grams of down weight, sign included. */
export function departureOf(actual: number, expected: Expected, gramsPerUnit: number, standardUncertainty: number | undefined): Departure {
  const amountG = (actual - expected.value) * gramsPerUnit;
  const told = Math.abs(amountG) > Math.max(LEAST_TOLD_G, FENCE * expected.scatter * Math.abs(gramsPerUnit));
  return { amountG, told, uncertaintyG: standardUncertainty === undefined ? undefined : Math.abs(gramsPerUnit) * expandedAgainst(expected, standardUncertainty) };
}

/** Expanded uncertainty of a difference from the neighbours: the figure's own and that of their median. */
function expandedAgainst({ scatter, neighbours }: Expected, standardUncertainty: number): number {
  return COVERAGE * Math.hypot(standardUncertainty, (MEDIAN_PENALTY * scatter) / Math.sqrt(neighbours));
}

/** A finding with its stage, and whether it drowns in its own uncertainty. */
export function findingOf(
  cause: Exclude<Cause, 'cancelling'>,
  { amountG, uncertaintyG }: { readonly amountG?: number; readonly uncertaintyG?: number },
  evidence: readonly [Evidence, ...Evidence[]],
  remedies: readonly Remedy[],
): Finding {
  const [strongest, ...supportedBy] = evidence;
  return {
    cause,
    amountG,
    uncertaintyG,
    evidence: strongest,
    supportedBy,
    withinUncertainty: amountG !== undefined && uncertaintyG !== undefined && Math.abs(amountG) < uncertaintyG,
    remedies,
    stage: stageOf(cause),
  };
}
