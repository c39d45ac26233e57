import { type Result, ok, refuse } from '#result';
import { field } from '#operation';
import { z } from 'zod';
import type { TouchReadings } from './balance.ts';

/** No weight at a key, and no part of an action, comes near ten kilograms or ten metres. */
const MAX_G = 10_000;
const MAX_MM = 10_000;
/** Anything lighter or shorter is no part of an action; it also keeps quotients finite. */
const LEAST_G = 0.001;
const LEAST_MM = 0.01;
const MAX_RATIO = 1000;

const weight = (describe: string) => field.grams({ min: 0, max: MAX_G, describe });
const arm = (describe: string) => field.millimetres({ min: LEAST_MM, max: MAX_MM, describe });

/** Fields that several operations share; each says the same everywhere. */
export const fields = {
  downWeightG: weight('Smallest weight that takes the key down, dampers lifted'),
  upWeightG: weight('Largest weight the key still lifts, dampers lifted; not above the down weight'),
  frontWeightG: field.grams({ min: -MAX_G, max: MAX_G, describe: 'Key alone, balanced on an edge at its balance hole, weighed at the measuring point; negative when the back is heavier' }),
  hammerWeightG: field.grams({ min: LEAST_G, max: MAX_G, describe: 'Hammer and shank at the strike point, shank level and free' }),
  wippenWeightG: weight('Wippen at its heel, free on its flange'),
  helperSpringG: weight('What a wippen helper spring takes off at the key front'),
  frictionG: weight('Friction at the key front, (down − up)/2'),
  balanceWeightG: field.grams({ min: -MAX_G, max: MAX_G, describe: 'Balance weight, (down + up)/2' }),
  keyRatio: field.ratio({ min: 0.001, max: MAX_RATIO, describe: 'Key lever, back arm over front arm' }),
  weightRatio: field.ratio({ min: 0.001, max: MAX_RATIO, describe: 'Action ratio by weights' }),
  stepG: field.grams({ min: LEAST_G, max: MAX_G, describe: 'Step of the weights' }),
  repeatabilityG: weight('Standard deviation of repeated weighings of one key'),
  scaleUncertaintyG: weight('Standard uncertainty of the scale for front, hammer and wippen weight'),
  keyRatioUncertainty: field.ratio({ min: 0, max: MAX_RATIO, describe: 'Standard uncertainty of the key ratio' }),
  levers: z.strictObject({
    keyFrontMm: arm('Balance point to the measuring point'),
    keyBackMm: arm('Balance point to the capstan contact'),
    wippenHeelMm: arm('Wippen centre to the contact at its heel'),
    wippenJackMm: arm('Wippen centre to the contact of jack and roller'),
    rollerMm: arm('Hammer centre to the contact of the roller'),
    hammerMm: arm('Hammer centre to the strike point'),
  }).describe('Lever arms: perpendicular distances from each centre to the line of the force'),
} as const;

/** The parts and readings of one key, as `weight-ratio` and `touch-diagnosis` take them. */
export const weighedKeyShape = {
  downWeightG: fields.downWeightG,
  upWeightG: fields.upWeightG,
  frontWeightG: fields.frontWeightG,
  hammerWeightG: fields.hammerWeightG,
  wippenWeightG: fields.wippenWeightG,
  keyRatio: fields.keyRatio,
} as const;

/** Refuses an up weight above the down weight: no friction can do that. */
export function checkOrder<T extends TouchReadings>(readings: T): Result<T> {
  const { downWeightG, upWeightG } = readings;
  if (upWeightG <= downWeightG) return ok(readings);
  return refuse({ code: 'order', path: 'upWeightG', given: upWeightG, allowed: `at most the down weight, ${String(downWeightG)}`, params: { reason: 'upAboveDown', max: downWeightG } });
}
