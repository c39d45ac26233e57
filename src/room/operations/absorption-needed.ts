import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { absorptionAdvices, absorptionNeededOf } from '../absorption-needed.ts';
import { perBand } from '../bands.ts';
import { reverberationOf } from '../reverberation.ts';
import { absorptionBy, bandsOf, material, roomOf, roomSchema, sixOf } from '../schemas.ts';
import { ringing } from './reverberation.ts';

const wanted = field.seconds({ min: 0.05, max: 60, describe: 'Reverberation time wanted' });

/** How much of a material brings a room to its target. */
export const absorptionNeededOperation = defineOperation({
  name: 'absorption-needed',
  input: z.strictObject({
    room: roomSchema,
    target: z.union([wanted, sixOf(wanted)]).describe('One time for all bands, or one for each'),
    material: material.describe('What is to be hung or laid'),
    coversMaterial: material.describe('What it would cover; left out, nothing that takes sound in').optional(),
  }),
  output: z.strictObject({
    areaM2: sixOf(field.squareMetres().nullable()).describe('Area by band; below nought: take out; nothing where the material is no help'),
    advice: sixOf(z.enum(absorptionAdvices)).describe('By band: enough, add, take out, or no help to be had'),
  }),
  formula: ['x = 0.161 V·(1/T_target − 1/T_present)/(α_new − α_covered), band by band', 'no help where α_new − α_covered < 0.05'],
  sources: ['SABINE-1922', 'PRACTICE'],
  example: {
    room: { volumeM3: 116.64, surfaces: [{ areaM2: 38.88, surface: 'wood-on-joists' }, { areaM2: 114.48, surface: 'plaster-on-brick' }], air: true },
    target: 1, material: 'carpet-on-felt', coversMaterial: 'wood-on-joists',
  },
  run: ({ room: given, target, material: hung, coversMaterial }) => {
    const room = roomOf(given);
    return map(ringing(room, given.model), () => {
      const needs = absorptionNeededOf({
        volumeM3: room.volumeM3, present: reverberationOf(room, given.model), material: absorptionBy(hung),
        target: typeof target === 'number' ? perBand(() => target) : bandsOf(target),
        covers: coversMaterial === undefined ? perBand(() => 0) : absorptionBy(coversMaterial),
      });
      return { areaM2: needs.map((need) => need.areaM2), advice: needs.map((need) => need.advice) };
    });
  },
});
