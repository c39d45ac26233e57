import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { ownTargetOf, ownTimeOf } from '../own-target.ts';
import { VOLUME_M3, ownTargetSchema, sixOf } from '../schemas.ts';
import { type ReverberationTarget, reverberationTargetOf, roomUses } from '../target.ts';

const volumeM3 = field.cubicMetres({ ...VOLUME_M3, describe: 'Volume of the room' });
const answerOf = (target: ReverberationTarget) => ({ ...target, lower: [...target.lower], upper: [...target.upper] });

/** How long a room should ring for what it is used for, by the standard or by a target of one's own. */
export const reverberationTargetOperation = defineOperation({
  name: 'reverberation-target',
  input: z.union([
    z.strictObject({ volumeM3, use: z.enum(roomUses).describe('What the room is for') }),
    z.strictObject({ volumeM3, own: ownTargetSchema.describe('A target of one’s own, in place of a use') }),
  ]),
  output: z.strictObject({
    seconds: field.seconds({ describe: 'Reverberation time wanted, people in the room' }),
    lower: sixOf(field.seconds()).describe('Shortest allowed by band, seconds'),
    upper: sixOf(field.seconds()).describe('Longest allowed by band, seconds'),
    standard: z.string().describe('Where the target is laid down'),
    fromM3: field.cubicMetres({ describe: 'Smallest volume it is stated for' }).optional(),
    toM3: field.cubicMetres({ describe: 'Volume it is stated up to' }).optional(),
    outsideVolumes: z.boolean().describe('Whether the volume lies outside, the formula being stretched'),
  }),
  formula: ['music: T = 0.45·lg V + 0.07', 'speech: T = 0.37·lg V − 0.14', 'teaching: T = 0.32·lg V − 0.17', 'inclusive teaching: T = 0.26·lg V − 0.14', 'own: T = slope·lg V + offset, or one fixed time'],
  sources: ['DIN-18041', 'DIN-18041-OPEN'],
  example: { volumeM3: 116.64, use: 'music' },
  run: (asked) => {
    if ('use' in asked) return ok(answerOf(reverberationTargetOf(asked.volumeM3, asked.use)));
    const time = ownTimeOf(asked.own, asked.volumeM3);
    return time > 0 ? ok(answerOf(ownTargetOf(asked.volumeM3, asked.own))) : refuse({ code: 'unsolvable', path: 'own', given: time, allowed: 'a formula that gives more than 0 s at this volume', params: { reason: 'noTime' } });
  },
});
