import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { influenceOf } from '../influence.ts';
import { pushShape, stationCount } from '../schemas.ts';

const place = (describe: string) => field.count({ min: 1, max: 60, describe });

/** Stiffness matrix of a board from pushes at one station read at another. */
export const pushInfluenceOperation = defineOperation({
  name: 'push-influence',
  input: z.strictObject({
    stations: stationCount,
    readings: z.array(z.strictObject({ pushedStation: place('Station that was loaded, from 1'), readStation: place('Station the gauge stood at, from 1'), ...pushShape })).min(1).max(10_000)
      .describe('Every pair of stations at least one way round, every station by itself'),
  }),
  output: z.strictObject({
    stiffnessNPerMm: z.array(z.array(field.newtonsPerMillimetre())).describe('As bearing-settle and bearing-plan take it'),
    asymmetryPct: field.percent({ describe: 'Largest difference between a pair and its mirror, against their own compliances' }),
    asymmetryStations: z.array(field.count()).describe('The pair it is largest at').optional(),
    uncheckedPairs: field.count({ describe: 'Pairs taken one way round only' }),
  }),
  formula: ['C_ij = ΣF·δ/ΣF² over the readings of a pair', 'C ← (C + Cᵀ)/2', 'K = C⁻¹', 'asymmetry: |C_ij − C_ji|/√(C_ii·C_jj)'],
  sources: ['MAXWELL-1864', 'OWN'],
  example: {
    stations: 2,
    readings: [
      { pushedStation: 1, readStation: 1, forceN: 98.1, deflectionMm: 0.28 },
      { pushedStation: 1, readStation: 2, forceN: 98.1, deflectionMm: 0.11 },
      { pushedStation: 2, readStation: 1, forceN: 98.1, deflectionMm: 0.112 },
      { pushedStation: 2, readStation: 2, forceN: 98.1, deflectionMm: 0.29 },
    ],
  },
  run: ({ stations, readings }) => map(influenceOf(stations, readings), ({ stiffnessNPerMm, asymmetryPct, asymmetryStations, uncheckedPairs }) => ({
    stiffnessNPerMm: stiffnessNPerMm.map((row) => [...row]),
    asymmetryPct,
    ...(asymmetryStations === undefined ? {} : { asymmetryStations: [...asymmetryStations] }),
    uncheckedPairs,
  })),
});
