import { steelWire } from '#materials';
import { type Result, ok, refuse } from '#result';
import { type Gigapascals, type Hertz, type KilogramsPerCubicMetre, type Megapascals, type Millimetres, type Newtons, type Percent, millimetres, percent } from '#units';
import { flexibleTensionOf } from './plain-string.ts';
import { type CoreShape, sectionAreaMm2 } from './section.ts';
import { type Wrap, windingFiguresOf } from './winding.ts';
import { type StrengthModel, wireStrengthOf } from './wire-strength.ts';
import { type WoundEnds, type WoundFigures, woundFiguresOf } from './wound-string.ts';

/** Core wire as it can be had. */
export interface CoreChoice {
  readonly coreShape?: CoreShape;
  readonly coreDensityKgM3?: KilogramsPerCubicMetre;
  readonly youngsModulusGPa?: Gigapascals;
  readonly strengthModel?: StrengthModel | undefined;
  readonly certificateMPa?: Megapascals | undefined;
}

/** A wound string as it is wanted, and the wire there is to make it of. */
export interface WoundWish extends CoreChoice, WoundEnds {
  readonly frequencyHz: Hertz;
  readonly speakingLengthMm: Millimetres;
  readonly targetTensionN: Newtons;
  readonly coresMm: readonly Millimetres[];
  readonly wrapStock: readonly Wrap[];
  /** Steps of the first wrap are left out of single windings. */
  readonly layers?: 'single' | 'double' | 'either';
  /** How far off the target a design may be. */
  readonly tolerancePct?: Percent;
  /** How many designs to name. */
  readonly most?: number;
}

export interface WoundDesign {
  readonly coreDiameterMm: Millimetres;
  readonly wraps: readonly Wrap[];
  readonly figures: WoundFigures;
  /** Tension over its target, less one. */
  readonly errorPct: Percent;
}

/** How far off a design may be unless told otherwise. @source PRACTICE */
const USUAL_TOLERANCE = percent(2);
const USUAL_MOST = 10;
/** Designs worked out exactly, for each one named: the guess before ranks them to well under a per cent. */
const WORKED_OUT = 4;

/**
 * The single and double windings of stock wire that come nearest to a tension, nearest first.
 * Every core is tried with every wrap, and with every pair of which the inner is not the stouter; all are ranked by
 * flexible tension, corrected by what bare ends make of the nearest, and the first of them worked out exactly.
 * Refuses a target that no winding comes near enough to, with the nearest there is. @source OWN @source PRACTICE the inner wrap is not the stouter
 */
export function designWound(wish: WoundWish): Result<readonly WoundDesign[]> {
  const { targetTensionN, tolerancePct = USUAL_TOLERANCE, most = USUAL_MOST } = wish;
  const guesses = guessesOf(wish);
  const first = nearest(guesses, targetTensionN, 1)[0];
  if (first === undefined) return refuse(nothingToWind(wish));
  const exact = workedOut(wish, first);
  if (!exact.ok) return exact;
  const share = exact.value.figures.tensionN / first.tensionN;
  const designs = nearest(guesses, targetTensionN / share, WORKED_OUT * most).flatMap((guess) => {
    const design = workedOut(wish, guess);
    return design.ok ? [design.value] : [];
  }).sort((a, b) => Math.abs(a.errorPct) - Math.abs(b.errorPct));
  const near = designs.filter(({ errorPct }) => Math.abs(errorPct) <= tolerancePct).slice(0, most);
  const best = designs[0];
  if (near.length > 0 || best === undefined) return ok(near);
  return refuse({
    code: 'unreachable', path: 'targetTensionN', given: targetTensionN,
    allowed: `${String(best.figures.tensionN)}, the nearest that this wire can be wound to: ${String(best.errorPct)} % off`,
    params: { reason: 'windingOutOfReach', nearest: best.figures.tensionN, off: best.errorPct },
  });
}

/** Percent of breaking of each core at a tension, nearest to a wanted percentage first: how a core is chosen by load. @source ASTM-A228 */
export function coresByBreaking({ coresMm, targetTensionN, wantedPct, ...core }: CoreChoice & { readonly coresMm: readonly Millimetres[]; readonly targetTensionN: Newtons; readonly wantedPct: Percent }): readonly { readonly coreDiameterMm: Millimetres; readonly breakingPct: Percent }[] {
  const off = ({ breakingPct }: { readonly breakingPct: Percent }): number => Math.abs(breakingPct - wantedPct);
  return coresMm.map((coreDiameterMm) => {
    const { tensileStrengthMPa } = wireStrengthOf({ ...core, diameterMm: coreDiameterMm });
    return { coreDiameterMm, breakingPct: percent((100 * targetTensionN) / sectionAreaMm2(coreDiameterMm, core.coreShape) / tensileStrengthMPa) };
  }).sort((a, b) => off(a) - off(b));
}

interface Guess {
  readonly coreDiameterMm: Millimetres;
  readonly wraps: readonly Wrap[];
  readonly tensionN: number;
}

function guessesOf(wish: WoundWish): readonly Guess[] {
  const { layers = 'either', wrapStock } = wish;
  const single = layers === 'double' ? [] : wrapStock.map((wrap) => [wrap]);
  const double = layers === 'single' ? [] : wrapStock.flatMap((inner) => wrapStock.filter(({ wireDiameterMm }) => wireDiameterMm >= inner.wireDiameterMm).map((outer) => [inner, outer]));
  return wish.coresMm.flatMap((coreDiameterMm) => [...single, ...double].flatMap((wraps) => {
    const winding = windingFiguresOf({ ...coreOf(wish), coreDiameterMm, wraps });
    return winding.ok ? [{ coreDiameterMm, wraps, tensionN: flexibleTensionOf({ ...wish, linearDensityGPerM: winding.value.linearDensityGPerM }) }] : [];
  }));
}

const nearest = (guesses: readonly Guess[], targetN: number, most: number): readonly Guess[] =>
  [...guesses].sort((a, b) => Math.abs(a.tensionN - targetN) - Math.abs(b.tensionN - targetN)).slice(0, most);

function workedOut(wish: WoundWish, { coreDiameterMm, wraps }: Guess): Result<WoundDesign> {
  const steps = wraps.length > 1 ? {} : { stepFrontMm: millimetres(0), stepRearMm: millimetres(0) };
  const { bareFrontMm = millimetres(0), bareRearMm = millimetres(0), stepFrontMm = millimetres(0), stepRearMm = millimetres(0), frequencyHz, speakingLengthMm } = { ...wish, ...steps };
  const found = woundFiguresOf({ ...coreOf(wish), coreDiameterMm, wraps, frequencyHz, speakingLengthMm, bareFrontMm, bareRearMm, stepFrontMm, stepRearMm });
  return found.ok ? ok({ coreDiameterMm, wraps, figures: found.value, errorPct: percent(100 * (found.value.tensionN / wish.targetTensionN - 1)) }) : found;
}

const coreOf = ({ coreShape = 'round', coreDensityKgM3 = steelWire.densityKgM3.value, youngsModulusGPa = steelWire.youngsModulusGPa.value, strengthModel, certificateMPa }: CoreChoice) => ({ coreShape, coreDensityKgM3, youngsModulusGPa, strengthModel, certificateMPa });

const nothingToWind = ({ coresMm, wrapStock }: WoundWish) => ({
  code: 'length' as const, path: coresMm.length === 0 ? 'coresMm' : 'wrapStock', given: coresMm.length === 0 ? coresMm.length : wrapStock.length, allowed: 'at least 1 entry', params: { min: 1, of: 'array' },
});
