import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { MOST_NOTES, noteShape, station, stiffnessNPerMm } from '../schemas.ts';
import { settledOf } from '../settle.ts';
import { ladenOf } from '../stations.ts';

/** How far the board goes down under its strings, and what they bear then. */
export const bearingSettleOperation = defineOperation({
  name: 'bearing-settle',
  input: z.strictObject({
    notes: z.array(z.strictObject({ ...noteShape, station })).min(1).max(MOST_NOTES).describe('Notes bass to treble, bridge heights with the strings slack'),
    stiffnessNPerMm,
  }),
  output: z.strictObject({
    settlingMm: z.union([field.millimetres(), z.array(field.millimetres())]).describe('How far the bridge goes down: one figure for a board that is one spring, else one for each note'),
    forcesN: z.array(field.newtons()).describe('Bearing of each note on the settled board'),
    totalForceN: field.newtons(),
    totalsDeg: z.array(field.degrees()).describe('Total angle of each note on the settled board'),
  }),
  formula: ['K·d = Pᵀ·F(h − P·d), F as in bearing', 'least energy: ½·dᵀ·K·d + Σ n·T·(string lengths), strictly convex', 'first order: d = F₀/(k + Σ n·T·(1/L + 1/L_r))'],
  sources: ['VARIGNON-1687', 'BOYD-VANDENBERGHE', 'MAXWELL-1864'],
  example: {
    notes: [
      { tensionN: 680, strings: 3, speakingLengthMm: 640, backLengthMm: 98, frontHeightMm: 0, bridgeHeightMm: 1.9, rearHeightMm: 0.1 },
      { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, bridgeHeightMm: 1.8, rearHeightMm: 0.1 },
    ],
    stiffnessNPerMm: [[420, -160], [-160, 410]],
  },
  run: ({ notes, stiffnessNPerMm: stiffness }) => map(ladenOf(notes, stiffness, 'stiffnessNPerMm'), ({ board, riding }) => {
    const { settlingMm, stationsMm, forcesN, totalForceN, totalsDeg } = settledOf(notes, riding, board);
    const [whole] = stationsMm;
    return {
      settlingMm: typeof stiffness === 'number' && whole !== undefined ? whole : [...settlingMm],
      forcesN: [...forcesN],
      totalForceN,
      totalsDeg: [...totalsDeg],
    };
  }),
});
