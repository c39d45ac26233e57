import { defineOperation, field } from '#operation';
import { type Result, all, map, under } from '#result';
import { z } from 'zod';
import { bearingOf, bearingSides } from '../bearing.ts';
import { bearingUncertaintyOf, checkDoubt } from '../bearing-uncertainty.ts';
import { bearingFindingCodes, bearingFindingsOf } from '../findings.ts';
import { bellyLoadOf } from '../load.ts';
import { MOST_NOTES, bearingShape, doubtShape, noteShape, uncertaintyShape } from '../schemas.ts';

const asked = (describe: string) => field.degrees({ min: 0, max: 180, describe }).optional();

const loadShape = {
  forceN: field.newtons({ describe: 'Bearing, down positive' }),
  totalTensionN: field.newtons({ describe: 'Of all strings' }),
  loadPct: field.percent({ describe: 'Bearing as a share of the tension' }),
  forceUncertaintyN: field.newtons({ describe: 'Standard uncertainty (k = 1), notes independent; absent unless every note states one' }).optional(),
} as const;

/** Bearing of many notes: each, each section, the whole, and what is found. */
export const bearingLoadOperation = defineOperation({
  name: 'bearing-load',
  input: z.strictObject({
    notes: z.array(z.strictObject({ ...noteShape, section: z.string().min(1).max(60).describe('Section the note belongs to').optional(), ...doubtShape })).min(1).max(MOST_NOTES).describe('Notes bass to treble'),
    asked: z.strictObject({
      leastTotalDeg: asked('Below this bearing counts as lost'),
      mostTotalDeg: asked('Above this bearing counts as too high'),
      mostStepDeg: asked('Largest step of the total angle between neighbours of a section'),
    }).describe('What is asked; what is left out is not judged').optional(),
  }),
  output: z.strictObject({
    ...loadShape,
    sections: z.array(z.strictObject({ section: z.string(), notes: field.count(), ...loadShape })),
    notes: z.array(z.strictObject({ ...bearingShape, ...uncertaintyShape })),
    findings: z.array(z.strictObject({
      code: z.enum(bearingFindingCodes),
      index: field.count({ describe: 'Place of the note in the list, from 0; of a step, the upper one' }),
      side: z.enum(bearingSides),
      figureDeg: field.degrees({ describe: 'The angle, or the step from the note below' }),
      limitDeg: field.degrees({ describe: '0, or what was asked' }),
      uncertaintyDeg: field.degrees({ describe: 'Standard uncertainty (k = 1) of the figure' }).optional(),
      inDoubt: z.boolean().describe('Within twice its uncertainty of the limit').optional(),
    })),
  }),
  formula: ['ΣF per section and whole, F as in bearing', 'share = 100·ΣF/Σ(n·T)', 'u(ΣF)² = Σ u(F)²', 'in doubt: |figure − limit| ≤ 2·u'],
  sources: ['VARIGNON-1687', 'JCGM-100', 'JCGM-106'],
  example: {
    notes: [
      { tensionN: 680, strings: 3, speakingLengthMm: 640, backLengthMm: 98, frontHeightMm: 0, bridgeHeightMm: 1.6, rearHeightMm: 0.1, section: 'tenor', heightUncertaintyMm: 0.1 },
      { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, bridgeHeightMm: 0.4, rearHeightMm: 0.7, section: 'tenor', heightUncertaintyMm: 0.1 },
    ],
    asked: { leastTotalDeg: 0.5, mostStepDeg: 0.3 },
  },
  run: ({ notes, asked: limits }) => map(all(notes.map((note, index) => placed(checkDoubt(note, note), index))), (sure) => {
    const rows = sure.map((note) => ({ note, bearing: bearingOf(note), uncertainty: bearingUncertaintyOf(note, note) }));
    const { sections, ...whole } = bellyLoadOf(rows.map(({ note, bearing, uncertainty }) => ({ ...note, forceN: bearing.forceN, forceUncertaintyN: uncertainty?.forceUncertaintyN })));
    return {
      ...whole,
      sections: [...sections],
      notes: rows.map(({ bearing, uncertainty }) => ({ ...bearing, ...uncertainty })),
      findings: [...bearingFindingsOf(rows.map(({ note, bearing, uncertainty }) => ({ ...bearing, section: note.section, uncertainty })), limits)],
    };
  }),
});

function placed<T>(result: Result<T>, index: number): Result<T> {
  return result.ok ? result : { ok: false, issues: under(`notes[${String(index)}]`, result.issues) };
}
