import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { plannedHeightsOf } from '../plan.ts';
import { MOST_NOTES, noteShape, station, stiffnessNPerMm, targetTotalDeg } from '../schemas.ts';
import { ladenOf } from '../stations.ts';

const { bridgeHeightMm: _, ...restShape } = noteShape;

/** Bridge heights to cut to with the strings slack, for the angles wanted under load. */
export const bearingPlanOperation = defineOperation({
  name: 'bearing-plan',
  input: z.strictObject({
    notes: z.array(z.strictObject({ ...restShape, targetTotalDeg, station })).min(1).max(MOST_NOTES).describe('Notes bass to treble'),
    stiffnessNPerMm,
  }),
  output: z.strictObject({
    loadedHeightsMm: z.array(field.millimetres()).describe('Of the bridge under the strings’ load'),
    unloadedHeightsMm: z.array(field.millimetres()).describe('To cut to, with the strings slack'),
    settlingMm: z.array(field.millimetres()),
    forcesN: z.array(field.newtons()).describe('Bearing of each note under load'),
    totalForceN: field.newtons(),
  }),
  formula: ['loaded height: the one that bears θ, as in bearing-recap', 'd = K⁻¹·Pᵀ·F(θ)', 'unloaded height = loaded height + d'],
  sources: ['VARIGNON-1687', 'EUCLID-III-21', 'MAXWELL-1864'],
  example: {
    notes: [
      { tensionN: 680, strings: 3, speakingLengthMm: 640, backLengthMm: 98, frontHeightMm: 0, rearHeightMm: 0.1, targetTotalDeg: 1 },
      { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, rearHeightMm: 0.1, targetTotalDeg: 1 },
    ],
    stiffnessNPerMm: [[420, -160], [-160, 410]],
  },
  run: ({ notes, stiffnessNPerMm: stiffness }) => map(ladenOf(notes, stiffness, 'stiffnessNPerMm'), ({ board, riding }) => {
    const plan = plannedHeightsOf(notes, riding, board);
    return {
      loadedHeightsMm: [...plan.loadedHeightsMm],
      unloadedHeightsMm: [...plan.unloadedHeightsMm],
      settlingMm: [...plan.settlingMm],
      forcesN: [...plan.forcesN],
      totalForceN: plan.totalForceN,
    };
  }),
});
