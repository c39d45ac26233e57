import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { keyTopEffectOf } from '../key-top.ts';
import { leadFields } from '../leads/schemas.ts';

const thickness = (describe: string) => field.millimetres({ min: 0, max: 100, describe });
const density = (describe: string) => field.gramsPerCubicMillimetre({ min: 0, max: 0.03, describe });

/** What new key tops do to mass, front weight and level. */
export const keyTopChangeOperation = defineOperation({
  name: 'key-top-change',
  input: z.strictObject({
    oldThicknessMm: thickness('Old top; 0 when it is gone already'),
    oldDensityGPerMm3: density('Of the old top'),
    newThicknessMm: thickness('New top'),
    newDensityGPerMm3: density('Of the new top'),
    areaMm2: field.squareMillimetres({ min: 0, max: 1e6, describe: 'Of the top, seen from above' }),
    centroidMm: field.millimetres({ min: 0, max: 10_000, describe: 'Front edge to the centroid of the top' }),
    keyEdgeMm: field.millimetres({ min: 0.01, max: 10_000, describe: 'Balance point to the front edge' }),
    keyFrontMm: leadFields.keyFrontMm,
    planedMm: thickness('Wood planed off before the new top goes on'),
    woodDensityGPerMm3: leadFields.woodDensityGPerMm3,
  }),
  output: z.strictObject({
    massChangeG: field.grams(),
    frontWeightChangeG: field.grams(),
    levelChangeMm: field.millimetres({ describe: 'How much higher the top of the key stands' }),
  }),
  formula: ['Δm = A·(t_n·ρ_n − t_o·ρ_o − p·ρ_wood)', 'ΔFW = Δm·(a_edge − c)/a', 'Δlevel = t_n − t_o − p'],
  sources: ['OWN', 'PRACTICE'],
  example: {
    oldThicknessMm: 1, oldDensityGPerMm3: 0.00185, newThicknessMm: 2.3, newDensityGPerMm3: 0.00119, areaMm2: 2400,
    centroidMm: 65, keyEdgeMm: 238, keyFrontMm: 225, planedMm: 1.3,
  },
  run: (top) => {
    const { centroidMm, keyEdgeMm } = top;
    if (centroidMm <= keyEdgeMm) return ok(keyTopEffectOf(top));
    const byMm = centroidMm - keyEdgeMm;
    return refuse({
      code: 'range', path: 'centroidMm', given: centroidMm, allowed: `at most ${String(keyEdgeMm)}, the balance point; the top would lie ${String(byMm)} mm behind it`,
      params: { reason: 'topBehindBalance', max: keyEdgeMm, byMm },
    });
  },
});
