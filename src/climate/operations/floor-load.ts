import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { kilopascals, megapascals, newtons } from '#units';
import { z } from 'zod';
import { floorLoadOf } from '../care/floor-load.ts';

/** What a standing piano asks of a floor, leg by leg and spread. */
export const floorLoadOperation = defineOperation({
  name: 'floor-load',
  input: z.strictObject({
    weightKg: field.number({ above: 0, max: 2000, describe: 'Weight of the piano, weighed or from its maker’s list' }),
    peopleKg: field.number({ min: 0, max: 2000, describe: 'Players, bench and what else stands within the same area' }),
    legs: field.count({ min: 1, max: 8, describe: 'Legs or castors that touch the floor' }),
    heaviestPct: field.percent({ above: 0, max: 100, describe: 'Share of the piano on the leg that carries most' }),
    areaM2: field.squareMetres({ min: 0.1, max: 100, describe: 'Floor the load is spread over: the outline with the player’s place' }),
    footMm: field.millimetres({ min: 1, max: 1000, describe: 'Across the round foot or cup under a leg' }),
  }),
  output: z.strictObject({
    meanLegN: field.newtons({ describe: 'Mean load of a leg' }),
    heaviestLegN: field.newtons({ describe: 'Load of the leg that carries most' }),
    spreadKPa: field.kilopascals({ describe: 'Load spread over the area; 1 kPa is 1 kN/m²' }),
    footMPa: field.megapascals({ describe: 'Pressure under the foot of that leg' }),
  }),
  formula: ['F = m·g/n; F_max = share·m·g', 'p = (m + people)·g/A', 'under the foot: F_max/(π·d²/4)'],
  sources: ['OWN', 'CGPM-1901'],
  example: { weightKg: 480, peopleKg: 90, legs: 3, heaviestPct: 40, areaM2: 4.5, footMm: 120 },
  run: (standing) => {
    const least = 100 / standing.legs;
    const fault: Issue = { code: 'range', path: 'heaviestPct', given: standing.heaviestPct, allowed: `at least ${least.toFixed(1)}, an even share of ${String(standing.legs)} legs`, params: { min: Number(least.toFixed(1)), max: 100 } };
    if (standing.heaviestPct < least - 0.1) return refuse(fault);
    const { meanLegN, heaviestLegN, spreadKPa, footMPa } = floorLoadOf(standing);
    return ok({ meanLegN: newtons(meanLegN), heaviestLegN: newtons(heaviestLegN), spreadKPa: kilopascals(spreadKPa), footMPa: megapascals(footMPa) });
  },
});
