import type { KeyNumber } from '#instrument';
import type { Issue } from '#result';
import type { GramsPerMetre, Hertz, KilogramsPerSecond, Megapascals, Millimetres, Newtons, Percent, Ratio } from '#units';
import type { SizeDoubt, StringUncertainty } from './string-uncertainty.ts';
import type { Winding } from './winding.ts';
import type { StrengthModel } from './wire-strength.ts';
import type { WoundEnds } from './wound-string.ts';

/** One wire of a note: plain, or wound with its bare ends and steps. */
export type ScaleWire = { readonly kind: 'plain'; readonly diameterMm: Millimetres } | ({ readonly kind: 'wound' } & Winding & WoundEnds);

/** Why no wire can be made of what is stated of a note. */
export type WireFault = 'wrapWithoutCore' | 'coreWithoutWrap' | 'twoCores' | 'innerWithoutOuter';

/** What is known of the strings of one note; an absent field is not known, and nothing stands in for it. */
export interface ScaleNote {
  readonly key: KeyNumber;
  readonly frequencyHz: Hertz;
  readonly speakingLengthMm?: Millimetres;
  /** True for a length laid between measured neighbours instead of measured. */
  readonly isLengthEstimated: boolean;
  readonly strings?: number;
  readonly wire?: ScaleWire;
  readonly fault?: WireFault;
  /** Strength by certificate or test break of this very wire. */
  readonly certificateMPa?: Megapascals;
  /** Absent where it was not stated how sure the sizes are. */
  readonly doubt?: SizeDoubt;
}

/** A run of keys between two breaks. */
export interface ScaleSection {
  readonly name: string;
  readonly firstKey: KeyNumber;
  readonly lastKey: KeyNumber;
}

/** What the share of the breaking load is asked to keep within. */
export interface AskedBreaking {
  readonly leastPct?: Percent;
  readonly mostPct?: Percent;
}

export interface ScaleInput {
  /** Bass to treble, every key once. */
  readonly notes: readonly ScaleNote[];
  readonly sections: readonly ScaleSection[];
  readonly strengthModel?: StrengthModel;
  readonly asked: AskedBreaking;
}

/** What one string of a note bears and sounds like. */
export interface NoteFigures {
  readonly linearDensityGPerM: GramsPerMetre;
  /** Over the wrap; of a plain string its diameter. */
  readonly overallDiameterMm: Millimetres;
  readonly tensionN: Newtons;
  readonly stressMPa: Megapascals;
  readonly breakingPct: Percent;
  readonly inharmonicityB: Ratio;
  readonly impedanceKgPerS: KilogramsPerSecond;
  readonly uncertainty?: StringUncertainty;
}

/** Where a string stands to what is asked of it. */
export interface BreakingVerdict {
  readonly side: 'under' | 'within' | 'over';
  /** How far outside, or inside the nearer bound; per cent of breaking. */
  readonly marginPct: Percent;
  /** True where the expanded uncertainty (k = 2) reaches over the bound. */
  readonly isDoubtful: boolean;
}

/** A note with what follows from it. */
export interface AnalysedNote extends ScaleNote {
  readonly figures?: NoteFigures;
  /** Sizes that make no string, by field. */
  readonly issues: readonly Issue[];
  /** All strings of the note together; absent without their count. */
  readonly unisonTensionN?: Newtons;
  readonly unisonImpedanceKgPerS?: KilogramsPerSecond;
  /** Absent where nothing is asked. */
  readonly verdict?: BreakingVerdict;
}

/** A load with the notes it is the sum of. */
export interface Load {
  readonly tensionN: Newtons;
  readonly counted: number;
  readonly of: number;
}

export interface SectionFigures extends ScaleSection {
  readonly load: Load;
  /** Least and greatest share of breaking in the section, with their keys. */
  readonly breaking?: { readonly least: KeyedPercent; readonly most: KeyedPercent };
}

export interface KeyedPercent {
  readonly key: KeyNumber;
  readonly pct: Percent;
}

/** How the figures change from a key to the next above it, upper over lower. */
export interface ScaleStep {
  readonly lowerKey: KeyNumber;
  readonly upperKey: KeyNumber;
  readonly tensionRatio: Ratio;
  readonly inharmonicityRatio: Ratio;
  readonly impedanceRatio: Ratio;
  /** Of the whole unisons; absent without both counts. */
  readonly unisonImpedanceRatio?: Ratio;
}

/** A step where the scale breaks: between sections, from wound to plain, or both. */
export interface ScaleBreak extends ScaleStep {
  readonly isSection: boolean;
  readonly isWinding: boolean;
}

export interface ScaleAnalysis {
  readonly notes: readonly AnalysedNote[];
  readonly sections: readonly SectionFigures[];
  /** Of every note that has tension and count. */
  readonly plate: Load;
  readonly breaks: readonly ScaleBreak[];
  /** The greatest change of tension between neighbours away from any break. */
  readonly largestStep?: ScaleStep;
}
