import { defineOperation, field } from '#operation';
import { type Result, all, andThen, map, refuse, under } from '#result';
import type { Millimetres } from '#units';
import { z } from 'zod';
import { MOST_NOTES, doubtShape, noteShape, station, stiffnessNPerMm } from '../schemas.ts';
import { checkDoubt } from '../bearing-uncertainty.ts';
import { settledUncertaintyOf } from '../settle-uncertainty.ts';
import { settledOf } from '../settle.ts';
import { ladenOf } from '../stations.ts';

const settleInput = z.strictObject({
  notes: z.array(z.strictObject({ ...noteShape, ...doubtShape, station })).min(1).max(MOST_NOTES).describe('Notes bass to treble, bridge heights with the strings slack'),
  stiffnessNPerMm,
  stiffnessUncertaintyNPerMm: field.newtonsPerMillimetre({ min: 0, max: 1e9, describe: 'Standard uncertainty of a stiffness given as a number' }).optional(),
});

/** How far the board goes down under its strings, what they bear then, and how sure both are. */
export const bearingSettleOperation = defineOperation({
  name: 'bearing-settle',
  input: settleInput,
  output: z.strictObject({
    settlingMm: z.union([field.millimetres(), z.array(field.millimetres())]).describe('How far the bridge goes down: one figure for a board that is one spring, else one for each note'),
    forcesN: z.array(field.newtons()).describe('Bearing of each note on the settled board'),
    totalForceN: field.newtons(),
    settlingUncertaintyMm: z.union([field.millimetres(), z.array(field.millimetres())]).describe('Standard uncertainty (k = 1), as the settling; answered where something is stated of every note').optional(),
    forceUncertaintiesN: z.array(field.newtons()).describe('Standard uncertainty (k = 1) of each bearing').optional(),
    totalForceUncertaintyN: field.newtons({ describe: 'Standard uncertainty (k = 1)' }).optional(),
    totalsDeg: z.array(field.degrees()).describe('Total angle of each note on the settled board'),
  }),
  formula: ['K·d = Pᵀ·F(h − P·d), F as in bearing', 'least energy: ½·dᵀ·K·d + Σ n·T·(string lengths), strictly convex', 'first order: d = F₀/(k + Σ n·T·(1/L + 1/L_r))', 'δd = (K + Pᵀ·S·P)⁻¹·Pᵀ·u(F), δF = u(F) − s·δd, u² summed over the notes'],
  sources: ['VARIGNON-1687', 'BOYD-VANDENBERGHE', 'MAXWELL-1864', 'JCGM-100'],
  example: {
    notes: [
      { tensionN: 680, strings: 3, speakingLengthMm: 640, backLengthMm: 98, frontHeightMm: 0, bridgeHeightMm: 1.9, rearHeightMm: 0.1 },
      { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, bridgeHeightMm: 1.8, rearHeightMm: 0.1 },
    ],
    stiffnessNPerMm: [[420, -160], [-160, 410]],
  },
  run: (input) => andThen(checked(input), (notes) => map(ladenOf(notes, input.stiffnessNPerMm, 'stiffnessNPerMm'), ({ board, riding }) => {
    const { stiffnessNPerMm: stiffness, stiffnessUncertaintyNPerMm: unsure } = input;
    const settled = settledOf(notes, riding, board);
    const doubt = settledUncertaintyOf({ notes, riding, board, settled, ...(typeof stiffness === 'number' && unsure !== undefined ? { stiffnessShare: unsure / stiffness } : {}) });
    const { settlingMm, stationsMm, forcesN, totalForceN, totalsDeg } = settled;
    const wholeOr = (list: readonly Millimetres[], whole: Millimetres | undefined): Millimetres | Millimetres[] => (typeof stiffness === 'number' && whole !== undefined ? whole : [...list]);
    return {
      settlingMm: wholeOr(settlingMm, stationsMm[0]),
      forcesN: [...forcesN],
      totalForceN,
      ...(doubt === undefined ? {} : {
        settlingUncertaintyMm: wholeOr(doubt.settlingUncertaintiesMm, doubt.settlingUncertaintiesMm[0]),
        forceUncertaintiesN: [...doubt.forceUncertaintiesN], totalForceUncertaintyN: doubt.totalForceUncertaintyN,
      }),
      totalsDeg: [...totalsDeg],
    };
  })),
});

type Given = z.output<typeof settleInput>;

/** Refuses a doubt as large as what it belongs to, and one of a stiffness that is no number. */
function checked({ notes, stiffnessNPerMm: stiffness, stiffnessUncertaintyNPerMm: unsure }: Given): Result<readonly Given['notes'][number][]> {
  const each = all(notes.map((note, index): Result<Given['notes'][number]> => {
    const sure = checkDoubt(note, note);
    return sure.ok ? sure : refuse(...under(`notes[${String(index)}]`, sure.issues));
  }));
  if (unsure === undefined) return each;
  const path = 'stiffnessUncertaintyNPerMm';
  if (typeof stiffness !== 'number') return refuse({ code: 'conflict', path, given: unsure, allowed: 'with a stiffness that is one number only' });
  return unsure < stiffness ? each : refuse({ code: 'range', path, given: unsure, allowed: `less than the figure itself, ${String(stiffness)}`, params: { below: stiffness } });
}
