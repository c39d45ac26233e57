import { carriedUncertaintiesOf } from '#numerics';
import { type KilogramsPerSecond, type Millimetres, type Newtons, type Percent, type Ratio, kilogramsPerSecond, millimetres, newtons, percent, ratio } from '#units';
import { type PlainString, plainFiguresOf } from './plain-string.ts';
import { type WoundString, woundFiguresOf } from './wound-string.ts';

/** How sure the measured sizes of a string are; standard uncertainties (k = 1). */
export interface SizeDoubt {
  readonly lengthUncertaintyMm: Millimetres;
  /** Of the plain wire, or of the core. */
  readonly diameterUncertaintyMm: Millimetres;
  /** Of each wrap wire, or of the overall diameter where that was measured. */
  readonly wrapUncertaintyMm?: Millimetres;
}

/** Standard uncertainties (k = 1). */
export interface StringUncertainty {
  readonly tensionUncertaintyN: Newtons;
  readonly breakingUncertaintyPct: Percent;
  readonly inharmonicityUncertainty: Ratio;
  readonly impedanceUncertaintyKgPerS: KilogramsPerSecond;
}

/**
 * What errors of length and diameter make of tension, per cent of breaking, inharmonicity and impedance.
 * Carried by central differences. For plain wire that is u(T)/T = 2·√(u(d)²/d² + u(L)²/L²) and u(B)/B =
 * 2·√(u(d)²/d² + 4·u(L)²/L²); the drawing tolerance of ±0.0004 inch alone is about ±2 % of either. Strength, modulus and
 * density are taken as known. First order.
 *
 * @returns `undefined` where a size less its uncertainty makes no string any more.
 * @source JCGM-100 clause 5.1.2
 */
export function stringUncertaintyOf(string: PlainString | WoundString, doubt: SizeDoubt): StringUncertainty | undefined {
  const sizes = 'diameterMm' in string ? plainSizes(string, doubt) : woundSizes(string, doubt);
  const [tension, breaking, inharmonicity, impedance] = carriedUncertaintiesOf(sizes.figuresOf, sizes.at, sizes.uncertainties);
  if (tension === undefined || breaking === undefined || inharmonicity === undefined || impedance === undefined) return undefined;
  if (![tension, breaking, inharmonicity, impedance].every(Number.isFinite)) return undefined;
  return { tensionUncertaintyN: newtons(tension), breakingUncertaintyPct: percent(breaking), inharmonicityUncertainty: ratio(inharmonicity), impedanceUncertaintyKgPerS: kilogramsPerSecond(impedance) };
}

/** The sizes of a string as a list, how sure they are, and its four figures from such a list. */
interface Sizes {
  readonly at: readonly number[];
  readonly uncertainties: readonly number[];
  readonly figuresOf: (sizes: readonly number[]) => readonly number[];
}

const NONE = [Number.NaN, Number.NaN, Number.NaN, Number.NaN] as const;

function plainSizes(string: PlainString, doubt: SizeDoubt): Sizes {
  return {
    at: [string.speakingLengthMm, string.diameterMm],
    uncertainties: [doubt.lengthUncertaintyMm, doubt.diameterUncertaintyMm],
    figuresOf: ([length = 0, diameter = 0]) => {
      if (length <= 0 || diameter <= 0) return NONE;
      const { tensionN, breakingPct, inharmonicityB, impedanceKgPerS } = plainFiguresOf({ ...string, speakingLengthMm: millimetres(length), diameterMm: millimetres(diameter) });
      return [tensionN, breakingPct, inharmonicityB, impedanceKgPerS];
    },
  };
}

function woundSizes(string: WoundString, { lengthUncertaintyMm, diameterUncertaintyMm, wrapUncertaintyMm = millimetres(0) }: SizeDoubt): Sizes {
  const wraps = 'wraps' in string ? string.wraps.map(({ wireDiameterMm }) => wireDiameterMm) : [string.overallDiameterMm];
  return {
    at: [string.speakingLengthMm, string.coreDiameterMm, ...wraps],
    uncertainties: [lengthUncertaintyMm, diameterUncertaintyMm, ...wraps.map(() => wrapUncertaintyMm)],
    figuresOf: ([length = 0, core = 0, ...outer]) => {
      if (Math.min(length, core, ...outer) <= 0) return NONE;
      const sized = { ...string, speakingLengthMm: millimetres(length), coreDiameterMm: millimetres(core) };
      const found = woundFiguresOf('wraps' in sized
        ? { ...sized, wraps: sized.wraps.map((wrap, index) => ({ ...wrap, wireDiameterMm: millimetres(outer[index] ?? wrap.wireDiameterMm) })) }
        : { ...sized, overallDiameterMm: millimetres(outer[0] ?? sized.overallDiameterMm) }, 1);
      return found.ok ? [found.value.tensionN, found.value.breakingPct, found.value.inharmonicityB, found.value.impedanceKgPerS] : NONE;
    },
  };
}
