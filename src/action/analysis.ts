import type { Compass, KeyNumber, Outcome, TouchIntent } from '#instrument';
import type { Grams } from '#units';
import type { DeviationShares, TouchTarget } from './deviation.ts';

/** A figure with what is known of its doubt. */
export interface Measured {
  /** Mean of the repeats. */
  readonly value: Grams;
  /** Combined standard uncertainty (JCGM 100), or undefined when neither step nor repeatability was stated. */
  readonly standardUncertaintyG?: Grams;
  /** How many weighings the value is the mean of. */
  readonly count: number;
}

/** Quantities of one key that the touch is worked out from. What was not measured is absent. */
export interface KeyFigures {
  readonly key: KeyNumber;
  readonly downWeightG?: Measured;
  readonly upWeightG?: Measured;
  readonly frontWeightG?: Measured;
  readonly hammerWeightG?: Measured;
  readonly wippenWeightG?: Measured;
  readonly keyFrictionG?: Measured;
  readonly helperSpringG?: Measured;
  /** What the weight steps add to the friction of this key: half a step, 0 when read between steps; absent when not stated. */
  readonly frictionBiasG?: number;
  /** The worst outcome read at this key: then the key is outside tolerance without a number. */
  readonly outcome?: Outcome;
}

/** Lever arms of one colour of key, as far as measured. */
export interface LeverArms {
  readonly keyFrontMm?: number;
  readonly keyBackMm?: number;
  readonly wippenHeelMm?: number;
  readonly wippenJackMm?: number;
  readonly rollerMm?: number;
  readonly hammerMm?: number;
}

/** Everything the touch of one state of an instrument is worked out from. */
export interface TouchInput {
  readonly kind: 'grand' | 'upright';
  readonly compass: Compass;
  readonly keys: readonly KeyFigures[];
  readonly arms: Readonly<Record<'natural' | 'sharp', LeverArms>>;
  /** Weight step of the session; absent when not stated: then friction is not corrected and no uncertainty is claimed. */
  readonly stepG?: number;
  /** `interpolated` weighings carry no threshold bias. */
  readonly rule?: 'firstMovesLastLifts' | 'interpolated';
  /** `resting`: the weights hold the dampers too, so that ratio and usual friction are not worked out. */
  readonly dampers?: 'lifted' | 'resting' | 'none';
  /** `engaged` without a weighed helper spring leaves the ratio unknown. */
  readonly helperSprings?: 'none' | 'engaged' | 'unhooked';
  /** What is to be even; null when the restorer has not said yet: then nothing is judged inside or outside. */
  readonly intent: TouchIntent | null;
}

/** Causes a key's touch can depart for; words under `cause.<name>`. */
export const causes = [
  'frictionHigh', 'frictionLow', 'keyFrictionHigh',
  'ratioHigh', 'ratioLow',
  'hammerHeavy', 'hammerLight',
  'wippenHeavy', 'wippenLight',
  'frontLight', 'frontHeavy',
  'upWeightLow', 'upWeightSlow', 'cancelling', 'upAboveDown', 'outcome', 'balanceHigh', 'balanceLow',
] as const;
export type Cause = (typeof causes)[number];

/** Remedies; words under `remedy.<name>`. */
export const remedies = [
  'measureKeyFriction', 'easeKeyBushing', 'cleanKeyPins', 'repinCentres', 'treatRoller', 'checkSwollenLeads', 'tightenCentres', 'rebushKey',
  'checkLevers', 'moveCapstanOrRoller', 'checkWippen', 'checkHelperSpring',
  'lightenHammer', 'replaceHammer', 'addLead', 'removeLead',
  'freeKey', 'fitMissingPart', 'weighAgain', 'weighParts', 'checkSpringsAndDampers',
  'repinWippen', 'repinHammer', 'replaceRoller', 'moveCapstan', 'moveRoller', 'moveLead',
] as const;
export type Remedy = (typeof remedies)[number];

/** What limits what can be said of the whole; words under `caveat.<name>`. */
export const caveats = ['upright', 'noIntent', 'stepNotStated', 'ruleNotStated', 'dampersNotStated', 'dampersResting', 'helperSpringsUnweighed'] as const;
export type Caveat = (typeof caveats)[number];

/** Lines of evidence; words under `evidence.<name>`. `target`: against what the restorer asked for. */
export const evidences = ['measured', 'register', 'neighbours', 'target', 'outcome'] as const;
export type Evidence = (typeof evidences)[number];

/**
 * Measurements worth taking next, in the order in which they tell most for their trouble: weights on the key, then what comes
 * off with the key, then the stack; last the same again. Words under `next.<name>`. @source PRACTICE
 */
export const nextMeasurements = [
  'downUp', 'dampersLifted', 'step', 'keyFriction', 'frontWeight', 'hammerWeight', 'levers', 'wippenWeight', 'helperSpring', 'repeat',
] as const;
export type NextMeasurement = (typeof nextMeasurements)[number];

/** How a key stands to what was asked for; words under `verdict.<name>`. */
export const verdicts = ['inside', 'outside', 'outcome', 'unmeasured', 'noTarget'] as const;
export type Verdict = (typeof verdicts)[number];

export interface Finding {
  readonly cause: Cause;
  /**
   * Grams of down weight this cause accounts for; signed, positive makes the key heavier. Absent for outcomes.
   * For `upWeightLow` the up weight less the least asked, for `upWeightSlow` less the least usual; for `cancelling` the grams that cancel.
   */
  readonly amountG?: number;
  /** Expanded uncertainty (k = 2) of `amountG`, when known. */
  readonly uncertaintyG?: number;
  /** `measured`: the parts were weighed. `register`: against the usual range of the register. `neighbours`: against its neighbours. */
  readonly evidence: Evidence;
  /** Further lines of evidence that say the same. */
  readonly supportedBy: readonly Evidence[];
  /** True when the amount is smaller than its own expanded uncertainty: said, not acted on. */
  readonly withinUncertainty: boolean;
  readonly remedies: readonly Remedy[];
  /** 1 friction, 2 ratio, 3 hammer, 4 lead, 0 to be cleared first (outcomes, contradictions). */
  readonly stage: 0 | 1 | 2 | 3 | 4;
}

/** True for a finding that advises and judges nothing: no work follows from it unasked. */
export function isAdvice({ cause }: Pick<Finding, 'cause'>): boolean {
  return cause === 'upWeightSlow';
}

/** What is said of one key. */
export interface KeyTouch {
  readonly key: KeyNumber;
  readonly colour: 'natural' | 'sharp';
  readonly figures: KeyFigures;
  readonly balanceWeightG?: number;
  /** (DW − UW)/2 as the trade reckons it. */
  readonly frictionG?: number;
  /** Friction less half a weight step, when the step and the rule are known. */
  readonly correctedFrictionG?: number;
  /** Standard uncertainty of balance weight and of friction, when known. */
  readonly standardUncertaintyG?: number;
  readonly keyRatio?: number;
  /** Grams of down weight by part against this keyboard's own parts; present when all parts are known. The sum is exact. */
  readonly shares?: DeviationShares;
  /** What the shares are told against: the parts its neighbours of the same colour have here, and the friction usual here, step bias included. */
  readonly reference?: TouchTarget;
  /** Friction taken as usual here: of its neighbours, held to the usual range of the register. */
  readonly usualFrictionG?: number;
  /** Action ratio by weights of this one note. */
  readonly weightRatio?: number;
  /** What the intent asks of this key: down weight or balance weight, in grams; absent without an intent. */
  readonly targetG?: number;
  /** Actual less target, of the quantity the intent names. */
  readonly deviationG?: number;
  /** `inside` and `outside` are simple acceptance; `insideGuarded` in the summary needs the uncertainty. */
  readonly verdict: Verdict;
  /** Deviation so close to the tolerance limit that the uncertainty cannot tell the side. */
  readonly doubtful: boolean;
  /** The up weight lies under the least asked for; never true where none was asked. */
  readonly upWeightLow: boolean;
  /** Up weight read above down weight: both stand as typed, balance and friction are left open. */
  readonly upAboveDown: boolean;
  readonly findings: readonly Finding[];
  /** What would tell more, most telling first. */
  readonly next: readonly NextMeasurement[];
}

/** One quantity over the compass, summed up. */
export interface TouchSummary {
  /** Smallest difference the row can tell: the stated step of the weights, else the finest that occurs; absent where nothing was measured. */
  readonly stepG?: number;
  readonly measured: number;
  readonly keys: number;
  /** Keys the count inside is out of: those measured and those that gave no number, which are outside. */
  readonly judged: number;
  readonly inside: number;
  /** Absent when no uncertainty is known. */
  readonly insideGuarded?: number;
  readonly outcomes: number;
  readonly medianG?: number;
  readonly largestStepG?: number;
  readonly largestStepKeys?: readonly [KeyNumber, KeyNumber];
  readonly outliers: readonly KeyNumber[];
  /** Ppk-style figure of the fenced set; only to be shown beside the count. */
  readonly capability?: number;
  readonly upWeightLow: number;
  /** Keys whose side of the limit the uncertainty cannot tell. */
  readonly doubtful: number;
}

export interface TouchAnalysis {
  readonly keys: readonly KeyTouch[];
  readonly summary: TouchSummary;
  /** Section ratios by colour: median of the notes with all parts weighed. */
  readonly weightRatio: Readonly<Record<'natural' | 'sharp', { readonly value?: number; readonly notes: number }>>;
  /** Ratio from the lever arms, by colour, when all six are known; never mixed with the ratio by weights. */
  readonly leverRatio: Readonly<Record<'natural' | 'sharp', number | undefined>>;
  /** The measurements that would tell most about the whole, most telling first. */
  readonly next: readonly NextMeasurement[];
  /** True for uprights: friction and balance only. */
  readonly partial: boolean;
  readonly caveats: readonly Caveat[];
}
