import { field } from '#operation';
import { z } from 'zod';
import { KEY_WOOD_DENSITY_G_PER_MM3, LEAD_DENSITY_G_PER_MM3 } from './lead.ts';

/** No key is longer, wider or drilled wider than ten metres, and none is a hair thin: quotients stay finite. */
const MAX_MM = 10_000;
const LEAST_MM = 0.01;
/** The heaviest metals have 0.0226 g/mm³. */
const MAX_DENSITY = 0.03;

/** Most leads of one calculation. */
export const MOST_LEADS = 100;

/** Fields of leads and the key they sit in, the same in every operation. */
export const leadFields = {
  keyFrontMm: field.millimetres({ min: LEAST_MM, max: MAX_MM, describe: 'Balance point to the measuring point' }),
  keyWidthMm: field.millimetres({ min: LEAST_MM, max: MAX_MM, describe: 'Width of the key where the leads go through' }),
  bareFrontWeightG: field.grams({ min: -MAX_MM, max: MAX_MM, describe: 'Front weight with no lead in the key and its holes taken as wood; negative when the back is heavier' }),
  leadDensityGPerMm3: field.gramsPerCubicMillimetre({ min: 0, max: MAX_DENSITY, describe: 'Density of the inserts: lead, or what stands in for it; 0 for empty holes' }).default(LEAD_DENSITY_G_PER_MM3),
  woodDensityGPerMm3: field.gramsPerCubicMillimetre({ min: 0, max: MAX_DENSITY, describe: 'Density of the wood drilled out' }).default(KEY_WOOD_DENSITY_G_PER_MM3),
  diameterMm: field.millimetres({ min: LEAST_MM, max: MAX_MM, describe: 'Diameter of the lead' }),
  boreMm: field.millimetres({ min: LEAST_MM, max: MAX_MM, describe: 'Hole through the middle of the lead, left open; none for a solid lead' }).optional(),
  densityGPerMm3: field.gramsPerCubicMillimetre({ min: 0, max: MAX_DENSITY, describe: 'Density of this insert where it is not that of the others' }).optional(),
  positionMm: field.millimetres({ min: -MAX_MM, max: MAX_MM, describe: 'Balance point to the middle of the lead; negative behind the balance point' }),
} as const;

/** Leads of one key; a key may have none. */
export const leadList = z.array(z.strictObject({ diameterMm: leadFields.diameterMm, positionMm: leadFields.positionMm, boreMm: leadFields.boreMm, densityGPerMm3: leadFields.densityGPerMm3 })).max(MOST_LEADS).describe('Leads in the key, none or more');
