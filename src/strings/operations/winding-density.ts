import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { flatWinding, issuesOfGiven, windingSchemas } from '../schemas.ts';
import { windingFiguresOf } from '../winding.ts';

/** Mass of a metre of wound string. */
export const windingDensityOperation = defineOperation({
  name: 'winding-density',
  input: z.union(windingSchemas({})),
  output: z.strictObject({ linearDensityGPerM: field.gramsPerMetre(), overallDiameterMm: field.millimetres() }),
  formula: ['μ = ρ·A + Σ ρ_w·π²·d_w·(D_in + d_w)/4', 'measured: μ = ρ·A + ρ_w·p·(π/4)·(D² − d_c²)', 'A = π·d²/4 round, (√3/2)·s² hexagonal'],
  sources: ['OWN', 'METALS-MEMORY'],
  example: { coreDiameterMm: 1.1, wraps: [{ wireDiameterMm: 0.9 }] },
  run: (input) => map(issuesOfGiven(input, windingFiguresOf(flatWinding(input))), ({ linearDensityGPerM, overallDiameterMm }) => ({ linearDensityGPerM, overallDiameterMm })),
});
