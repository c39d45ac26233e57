import type { KeyColour, KeyNumber } from '#instrument';
import type { GramSquareMillimetres, Grams, Millimetres, Ratio } from '#units';
import type { KeyBar } from '../effective-mass.ts';
import type { BoredHammer } from '../hammer-bore.ts';
import type { Levers } from '../levers.ts';
import type { Regulation, RegulationBase } from '../regulation.ts';

/** What was weighed of a key as found, as far as it was. */
export interface FoundKey {
  readonly downWeightG?: Grams;
  readonly upWeightG?: Grams;
  readonly balanceWeightG?: Grams;
  readonly frictionG?: Grams;
  readonly frontWeightG?: Grams;
  readonly hammerWeightG?: Grams;
}

/** What the inertia of a key and its action is reckoned from. */
export interface PlanInertia {
  readonly keyGMm2: GramSquareMillimetres;
  /** The key it was worked out from. */
  readonly bar?: KeyBar;
  readonly wippenGMm2: GramSquareMillimetres;
  readonly shankG: Grams;
  readonly shankLengthMm: Millimetres;
}

/** Front weights a key can be leaded to: all leads out, and as many as are allowed as far forward as they go. */
export interface FrontReach {
  readonly leastG: Grams;
  readonly mostG: Grams;
}

/** One key with everything its touch is planned from; what is not known of the optional parts is left out of the answer. */
export interface PlanKey {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  /** What is to be even, and its value at this key. */
  readonly asked: { readonly even: 'downWeight' | 'balanceWeight'; readonly targetG: Grams; readonly upWeightMinG: Grams };
  readonly found: FoundKey;
  readonly hammerWeightG: Grams;
  readonly wippenWeightG: Grams;
  readonly springG: Grams;
  /** Expected once the work is done. */
  readonly frictionG: Grams;
  readonly levers: Levers;
  /** By weights, before any shift. */
  readonly weightRatio: Ratio;
  /** By distance, before any shift; never made of the one by weights. */
  readonly distanceRatio: Ratio;
  readonly reach?: FrontReach;
  readonly mostFrontWeightG?: Grams;
  readonly inertia?: PlanInertia;
  readonly regulation?: Pick<RegulationBase, 'letOffMm' | 'lossMm' | 'keyEdgeMm'> & Regulation & { readonly frontPinMm?: Millimetres };
  readonly bored?: Omit<BoredHammer, 'hammerMm'>;
}
