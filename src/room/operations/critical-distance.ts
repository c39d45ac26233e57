import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { millimetres, ratio } from '#units';
import { z } from 'zod';
import { criticalDistanceM } from '../level.ts';
import { VOLUME_M3 } from '../schemas.ts';

/** Where a piano’s own sound gives way to the room’s, whatever its power. */
export const criticalDistanceOperation = defineOperation({
  name: 'critical-distance',
  input: z.strictObject({
    volumeM3: field.cubicMetres({ ...VOLUME_M3, describe: 'Volume of the room' }),
    reverberationS: field.seconds({ min: 0.05, max: 60, describe: 'Reverberation time of the room' }),
    directivity: field.ratio({ min: 0.1, max: 20, describe: 'How much more the source sends that way than evenly all round; 1 evenly' }).default(ratio(1)),
  }),
  output: z.strictObject({ criticalDistanceMm: field.millimetres({ describe: 'Nearer than this the piano’s own sound is the louder' }) }),
  formula: ['A = 0.161 V/T', 'r_c = √(Q·A/(16π))', 'a diffuse sound field is taken'],
  sources: ['KUTTRUFF', 'SABINE-1922'],
  example: { volumeM3: 117, reverberationS: 1 },
  run: ({ volumeM3, reverberationS, directivity }) => ok({ criticalDistanceMm: millimetres(1000 * criticalDistanceM({ volumeM3, reverberationS }, directivity)) }),
});
