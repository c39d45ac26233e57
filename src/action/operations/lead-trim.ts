import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { LEAD_DENSITY_G_PER_MM3, trimDrillOf, trimmedFrontWeightOf } from '../leads/lead.ts';
import { leadFields } from '../leads/schemas.ts';

/** Drill that takes a little front weight off a lead. */
export const leadTrimOperation = defineOperation({
  name: 'lead-trim',
  input: z.strictObject({
    frontWeightChangeG: field.grams({ min: 0, max: 10_000, describe: 'How much lighter the front is to become' }),
    positionMm: field.millimetres({ min: 0.01, max: 10_000, describe: 'Balance point to the middle of the lead, in front of the balance point' }),
    keyWidthMm: leadFields.keyWidthMm,
    keyFrontMm: leadFields.keyFrontMm,
    leadDensityGPerMm3: field.gramsPerCubicMillimetre({ min: 1e-5, max: 0.03, describe: 'Density of what is drilled out' }).default(LEAD_DENSITY_G_PER_MM3),
    diameterMm: field.millimetres({ min: 0.01, max: 10_000, describe: 'Diameter of the lead; given, a drill wider than it is refused' }).optional(),
  }),
  output: z.strictObject({ drillDiameterMm: field.millimetres({ describe: 'Right through the middle of the lead' }) }),
  formula: ['d = √(4·ΔFW·a/(π·ρ·w·x))'],
  sources: ['OWN', 'METALS-MEMORY'],
  example: { frontWeightChangeG: 1, positionMm: 180, keyWidthMm: 13, keyFrontMm: 225, diameterMm: 12.7 },
  run: ({ diameterMm, ...trim }) => {
    const drillDiameterMm = trimDrillOf(trim);
    if (diameterMm === undefined || drillDiameterMm <= diameterMm) return ok({ drillDiameterMm });
    const wholeG = trimmedFrontWeightOf(diameterMm, trim);
    return refuse({
      code: 'unreachable', path: 'frontWeightChangeG', given: trim.frontWeightChangeG,
      allowed: `at most ${String(wholeG)}, the whole of this lead; a drill of ${String(drillDiameterMm)} mm would be needed, ${String(drillDiameterMm - diameterMm)} mm wider than the lead`,
      params: { reason: 'drillWiderThanLead', reachableG: wholeG, neededMm: drillDiameterMm, byMm: drillDiameterMm - diameterMm },
    });
  },
});
