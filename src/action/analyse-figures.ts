import { type KeyColour, type KeyNumber, colourOf } from '#instrument';
import { type Grams, type Ratio, grams, millimetres, ratio } from '#units';
import type { KeyFigures, LeverArms, TouchInput } from './analysis.ts';
import { balanceWeightOf, frictionOf } from './balance.ts';
import { leverRatiosOf } from './levers.ts';
import type { WeighedKey } from './deviation.ts';
import { weightRatioOf } from './parts.ts';
import { balanceUncertaintyOf } from './uncertainty.ts';

/** The figures of one key and what follows from them alone, before any comparison. */
export interface DerivedFigures {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  readonly figures: KeyFigures;
  readonly balanceWeightG?: Grams;
  readonly frictionG?: Grams;
  readonly correctedFrictionG?: Grams;
  readonly standardUncertaintyG?: Grams;
  readonly keyRatio?: Ratio;
  /** Present with `weightRatio`: the readings and parts it was worked out from. */
  readonly weighed?: WeighedKey;
  /** Standard uncertainty of front, hammer and wippen weight: the largest of the three, when all are known. */
  readonly scaleUncertaintyG?: Grams;
  readonly weightRatio?: Ratio;
  /** Up weight above down weight: no friction can do that, so one of the two was misread. Nothing is then derived from them. */
  readonly contradictory: boolean;
}

/**
 * Derives what one key's own figures give: balance, friction, ratio by weights. What was not measured stays absent.
 * Contradictory weights give nothing at all; uprights, resting dampers and helper springs that were not weighed give no ratio.
 */
export function deriveFigures(input: TouchInput, figures: KeyFigures): DerivedFigures {
  const { key, downWeightG: down, upWeightG: up } = figures;
  const colour = colourOf(input.compass, key);
  const keyRatio = keyRatioOf(input.arms[colour]);
  if (down === undefined || up === undefined) return { key, colour, figures, keyRatio, contradictory: false };
  if (up.value > down.value) return { key, colour, figures, keyRatio, contradictory: true };
  const weights = { downWeightG: down.value, upWeightG: up.value };
  const balanceWeightG = balanceWeightOf(weights);
  const frictionG = frictionOf(weights);
  const biasG = frictionBiasOf(input, figures);
  const weighed = !ratioCanBeKnown(input, figures) ? undefined : weighedKeyOf(figures, keyRatio);
  return {
    key,
    colour,
    figures,
    balanceWeightG,
    frictionG,
    correctedFrictionG: biasG === undefined ? undefined : grams(frictionG - biasG),
    standardUncertaintyG: pairUncertaintyOf(figures),
    keyRatio,
    weighed,
    scaleUncertaintyG: weighed === undefined ? undefined : scaleUncertaintyOf(figures),
    weightRatio: weighed === undefined ? undefined : weightRatioOf({ ...weighed, balanceWeightG }),
    contradictory: false,
  };
}

/** Grams by which the weight steps overstate friction; undefined when step or rule were not stated. @source OWN */
export function frictionBiasOf(input: TouchInput, figures: KeyFigures): number | undefined {
  if (figures.frictionBiasG !== undefined) return figures.frictionBiasG;
  if (input.rule === 'interpolated') return 0;
  return input.rule === undefined || input.stepG === undefined ? undefined : input.stepG / 2;
}

/** Key ratio K = b/a of one colour, when both arms are known. */
export function keyRatioOf({ keyFrontMm, keyBackMm }: LeverArms): Ratio | undefined {
  return keyFrontMm === undefined || keyBackMm === undefined ? undefined : ratio(keyBackMm / keyFrontMm);
}

/** Action ratio by distance of one colour, when all six arms are known. */
export function leverRatioOf({ keyFrontMm, keyBackMm, wippenHeelMm, wippenJackMm, rollerMm, hammerMm }: LeverArms): Ratio | undefined {
  if (keyFrontMm === undefined || keyBackMm === undefined || wippenHeelMm === undefined) return undefined;
  if (wippenJackMm === undefined || rollerMm === undefined || hammerMm === undefined) return undefined;
  return leverRatiosOf({
    keyFrontMm: millimetres(keyFrontMm),
    keyBackMm: millimetres(keyBackMm),
    wippenHeelMm: millimetres(wippenHeelMm),
    wippenJackMm: millimetres(wippenJackMm),
    rollerMm: millimetres(rollerMm),
    hammerMm: millimetres(hammerMm),
  }).actionRatio;
}

function ratioCanBeKnown(input: TouchInput, figures: KeyFigures): boolean {
  if (input.kind === 'upright' || input.dampers === 'resting') return false;
  return input.helperSprings !== 'engaged' || figures.helperSpringG !== undefined;
}

/** Readings and parts of a key, when all are known. */
function weighedKeyOf(figures: KeyFigures, keyRatio: Ratio | undefined): WeighedKey | undefined {
  const { downWeightG, upWeightG, frontWeightG, hammerWeightG, wippenWeightG, helperSpringG } = figures;
  if (downWeightG === undefined || upWeightG === undefined || keyRatio === undefined) return undefined;
  if (frontWeightG === undefined || hammerWeightG === undefined || wippenWeightG === undefined) return undefined;
  return {
    downWeightG: downWeightG.value,
    upWeightG: upWeightG.value,
    hammerWeightG: hammerWeightG.value,
    wippenWeightG: wippenWeightG.value,
    frontWeightG: frontWeightG.value,
    helperSpringG: helperSpringG?.value ?? grams(0),
    keyRatio,
  };
}

/** The largest of the three parts' uncertainties, when all are known: they may have come off different scales. */
function scaleUncertaintyOf({ frontWeightG, hammerWeightG, wippenWeightG }: KeyFigures): Grams | undefined {
  const [front, hammer, wippen] = [frontWeightG?.standardUncertaintyG, hammerWeightG?.standardUncertaintyG, wippenWeightG?.standardUncertaintyG];
  return front === undefined || hammer === undefined || wippen === undefined ? undefined : grams(Math.max(front, hammer, wippen));
}

function pairUncertaintyOf({ downWeightG, upWeightG }: KeyFigures): Grams | undefined {
  const down = downWeightG?.standardUncertaintyG;
  const up = upWeightG?.standardUncertaintyG;
  if (down === undefined || up === undefined) return undefined;
  return balanceUncertaintyOf({ downWeightUncertaintyG: down, upWeightUncertaintyG: up });
}
