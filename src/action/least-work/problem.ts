import type { KeyNumber } from '#instrument';
import type { Grams, Ratio } from '#units';
import type { KeyParts } from '../parts.ts';

/** What an operation changes at a key, in the order of the work: friction first, ratio second, hammer third, lead last. */
export const changeKinds = ['friction', 'ratio', 'hammer', 'front'] as const;
export type ChangeKind = (typeof changeKinds)[number];

/** A known change of friction, as the diagnosis estimates it; negative frees the key. */
export interface FrictionAmount {
  readonly changeG: Grams;
  /** How far it may turn out either way. */
  readonly uncertaintyG?: Grams | undefined;
}

/** A change of hammer weight or front weight, to be chosen between two ends; in steps from the first end where a step is given. */
export interface WeightAmount {
  readonly fromG: Grams;
  readonly toG: Grams;
  readonly stepG?: Grams | undefined;
}

/** A change of the ratio by weights, to be chosen between two ends. */
export interface RatioAmount {
  readonly fromRatio: Ratio;
  readonly toRatio: Ratio;
}

export type WorkAmount = FrictionAmount | WeightAmount | RatioAmount;

/** Something the shop does at a key. */
export interface WorkOperation {
  readonly name: string;
  readonly changes: ChangeKind;
  /** At one key, set-ups not counted. */
  readonly minutes: number;
  /** Parts for one key, in the smallest unit of the shop's money. */
  readonly partsMinor?: number | undefined;
  /** Names of the set-ups it needs. */
  readonly setups?: readonly string[] | undefined;
  /** Of operations with one group, a key gets one at most: they do the same thing in different ways. */
  readonly group?: string | undefined;
  /** Whether it belongs to the plan that replaces everything. Where no operation says so, those of friction and hammer do. */
  readonly renews?: boolean | undefined;
  /** At every key that states none of its own; without either it is not offered there. */
  readonly amount?: WorkAmount | undefined;
}

/** Work done once for all keys that need it, such as taking the stack off. */
export interface WorkSetup {
  readonly name: string;
  readonly minutes: number;
}

/** What every key must come to. A key's own figures win. */
export interface WorkTarget {
  readonly quantity: 'downWeight' | 'balanceWeight';
  readonly toleranceG: Grams;
  readonly targetG?: Grams | undefined;
  readonly minUpWeightG?: Grams | undefined;
  readonly frictionFromG?: Grams | undefined;
  readonly frictionToG?: Grams | undefined;
  /** Room left inside every limit for the doubt of the weighings. */
  readonly guardG?: Grams | undefined;
}

/** One key as found, with what is known of its parts and of what may be done to it. */
export interface WorkKey extends Partial<Pick<WorkTarget, 'targetG' | 'minUpWeightG' | 'frictionFromG' | 'frictionToG' | 'guardG'>> {
  readonly key: KeyNumber;
  readonly downWeightG: Grams;
  readonly upWeightG: Grams;
  /** Needed where a hammer or a ratio may be changed. */
  readonly parts?: KeyParts | undefined;
  readonly amounts?: readonly (WorkAmount & { readonly operation: string })[] | undefined;
  /** Operations that are not to be done at this key. */
  readonly without?: readonly string[] | undefined;
}

export interface LeastWorkProblem {
  readonly keys: readonly WorkKey[];
  readonly operations: readonly WorkOperation[];
  readonly setups?: readonly WorkSetup[] | undefined;
  readonly target: WorkTarget;
}

/** One operation at one key, with its amount. */
export interface WorkDone {
  readonly operation: string;
  readonly changes: ChangeKind;
  /** Of friction, hammer weight or front weight. */
  readonly changeG?: Grams;
  readonly ratioChange?: Ratio;
  readonly minutes: number;
  readonly partsMinor: number;
}

/** The touch a key has or is to have. The parts only where they are known. */
export interface TouchState {
  readonly downWeightG: Grams;
  readonly upWeightG: Grams;
  readonly balanceWeightG: Grams;
  readonly frictionG: Grams;
  readonly frontWeightG?: Grams;
  readonly hammerWeightG?: Grams;
  readonly weightRatio?: Ratio;
}

/** A change of one kind, of whatever amount, that would bring a key inside: by itself, or on top of the nearest work. */
export interface SingleChange {
  readonly changes: ChangeKind;
  readonly changeG?: Grams;
  readonly ratioChange?: Ratio;
  readonly alone: boolean;
}

/** The plan of one key. A key that no offered work brings inside gets none; what would come nearest stands under `outOfReach`. */
export interface KeyPlan {
  readonly key: KeyNumber;
  readonly verdict: 'already' | 'planned' | 'outOfReach';
  readonly work: readonly WorkDone[];
  readonly minutes: number;
  readonly partsMinor: number;
  readonly after: TouchState;
  /** To the nearest limit, guard and doubt of the effects already taken off; negative outside. */
  readonly marginG: Grams;
  readonly outOfReach?: {
    readonly missG: Grams;
    readonly nearest: readonly WorkDone[];
    readonly after: TouchState;
    readonly wouldReach: readonly SingleChange[];
  };
}

/** The work of one stage of the bench. */
export interface StagePlan {
  readonly changes: ChangeKind;
  readonly minutes: number;
  readonly partsMinor: number;
  readonly operations: readonly { readonly operation: string; readonly keys: readonly KeyNumber[]; readonly minutes: number; readonly partsMinor: number }[];
}

/** A plan made without thought, to compare with. */
export interface NaivePlan {
  readonly minutes: number;
  readonly partsMinor: number;
  readonly setups: readonly string[];
  readonly inside: number;
  /** Keys it leaves outside, by how much, and whether friction stands in the way or the reach of what it does. */
  readonly outside: readonly { readonly key: KeyNumber; readonly missG: Grams; readonly because: 'friction' | 'reach' }[];
}

export interface LeastWork {
  /** Work and set-ups. */
  readonly minutes: number;
  /** No set of the named work that brings the same keys inside takes fewer. */
  readonly lowerBoundMinutes: number;
  readonly proven: boolean;
  readonly partsMinor: number;
  readonly setups: readonly { readonly name: string; readonly minutes: number; readonly keys: readonly KeyNumber[] }[];
  readonly stages: readonly StagePlan[];
  readonly keys: readonly KeyPlan[];
  readonly already: number;
  readonly planned: number;
  readonly outOfReach: readonly KeyNumber[];
  readonly replaceAll: NaivePlan;
  readonly leadOnly: NaivePlan;
}
