import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { grams, gramsPerCubicCentimetre } from '#units';
import { z } from 'zod';
import { ivoryMassOf } from '../ivory-mass.ts';

/** Where a law counts ivory by mass. @source the rule of the small share */
const LIMIT_G = 200;
const COVERAGE = 2;

/** Mass of the ivory of a keyboard, from measured pieces. */
export const ivoryMassOperation = defineOperation({
  name: 'ivory-mass',
  input: z.strictObject({
    pieces: z.array(z.strictObject({
      areaMm2: field.squareMillimetres({ min: 1, max: 1_000_000, describe: 'Area of one piece, head and tail together' }),
      thicknessMm: field.millimetres({ min: 0.05, max: 50, describe: 'Mean thickness, measured at ten keys or more' }),
      thicknessUncertaintyMm: field.millimetres({ min: 0, max: 50, describe: 'Standard uncertainty of that mean' }),
      count: field.count({ min: 1, max: 10_000, describe: 'How many pieces alike' }),
    })).min(1).max(200).describe('Rows of like pieces: naturals, fronts, sharps'),
    densityGPerCm3: field.gramsPerCubicCentimetre({ min: 1, max: 3, describe: 'Density; sources give 1.7 to 2.0' }).default(gramsPerCubicCentimetre(1.8)),
    densityUncertaintyGPerCm3: field.gramsPerCubicCentimetre({ min: 0, max: 1, describe: 'Standard uncertainty of the density' }).default(gramsPerCubicCentimetre(0)),
  }),
  output: z.strictObject({
    massG: field.grams({ describe: 'All pieces together' }),
    massUncertaintyG: field.grams({ describe: 'Standard uncertainty (k = 1)' }),
    lowG: field.grams({ describe: 'Least, 19 times in 20 (k = 2)' }),
    highG: field.grams({ describe: 'Most, 19 times in 20 (k = 2)' }),
    side: z.enum(['below', 'open', 'above']).describe('Which side of 200 g the whole range lies on; open: weigh, or ask the authority'),
  }),
  formula: ['m = ρ·Σ n·A·t', 'u² = ρ²·Σ (n·A·u_t)² + (u_ρ·Σ n·A·t)²'],
  sources: ['JCGM-100', 'IVORY-DENSITY'],
  example: { pieces: [{ areaMm2: 2424, thicknessMm: 0.9, thicknessUncertaintyMm: 0.03, count: 52 }], densityUncertaintyGPerCm3: 0.05 },
  run: ({ pieces, densityGPerCm3, densityUncertaintyGPerCm3 }) => {
    const mass = ivoryMassOf(pieces, densityGPerCm3, densityUncertaintyGPerCm3);
    const reach = COVERAGE * mass.massUncertaintyG;
    const [lowG, highG] = [grams(Math.max(0, mass.massG - reach)), grams(mass.massG + reach)];
    return ok({ ...mass, lowG, highG, side: highG < LIMIT_G ? 'below' as const : lowG > LIMIT_G ? 'above' as const : 'open' as const });
  },
});
