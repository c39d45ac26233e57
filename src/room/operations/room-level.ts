import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { millimetres, ratio } from '#units';
import { z } from 'zod';
import { criticalDistanceM, levelAt, powerBehind, reverberantLevelOf } from '../level.ts';
import { VOLUME_M3 } from '../schemas.ts';

const decibel = (describe: string) => field.decibels({ min: 0, max: 160, describe });
const distance = (describe: string) => field.millimetres({ min: 100, max: 200_000, describe });

/** How loud a piano is in a room, and where its own sound gives way to the room’s. */
export const roomLevelOperation = defineOperation({
  name: 'room-level',
  input: z.strictObject({
    volumeM3: field.cubicMetres({ ...VOLUME_M3, describe: 'Volume of the room' }),
    reverberationS: field.seconds({ min: 0.05, max: 60, describe: 'Reverberation time of the room' }),
    directivity: field.ratio({ min: 0.1, max: 20, describe: 'How much more the source sends that way than evenly all round; 1 evenly' }).default(ratio(1)),
    powerDb: decibel('Sound power of the piano over 1 pW').optional(),
    measured: z.strictObject({ levelDb: decibel('Level read in this room'), distanceMm: distance('From the piano, where it was read') }).describe('A reading that tells the power, in place of it').optional(),
    distancesMm: z.array(distance('From the piano')).min(1).max(100).describe('Player and listeners'),
  }),
  output: z.strictObject({
    powerDb: field.decibels({ describe: 'Sound power over 1 pW, as given or as the reading tells' }),
    levelsDb: z.array(field.decibels()).describe('Level at each distance'),
    reverberantDb: field.decibels({ describe: 'Level of the room’s own sound' }),
    criticalDistanceMm: field.millimetres({ describe: 'Nearer than this the piano’s own sound is the louder' }),
  }),
  formula: ['A = 0.161 V/T', 'L = L_W + 10·lg(Q/(4πr²) + 4/A)', 'r_c = √(Q·A/(16π))', 'a diffuse sound field is taken: within a few decibels'],
  sources: ['KUTTRUFF', 'SABINE-1922'],
  example: { volumeM3: 117, reverberationS: 1, measured: { levelDb: 88, distanceMm: 2000 }, distancesMm: [600, 4000] },
  run: ({ volumeM3, reverberationS, directivity, powerDb, measured, distancesMm }) => {
    const room = { volumeM3, reverberationS };
    if (powerDb !== undefined && measured !== undefined) return refuse({ code: 'conflict', path: 'measured', given: measured.levelDb, allowed: 'either powerDb or measured, not both', params: { reason: 'powerTwice' } });
    const power = measured === undefined ? powerDb : powerBehind(room, measured.levelDb, directivity, measured.distanceMm / 1000);
    if (power === undefined) return refuse(...(['powerDb', 'measured'] as const).map((path): Issue => ({ code: 'required', path, given: undefined, allowed: 'a power, or a level read in the room' })));
    return ok({
      powerDb: power, levelsDb: distancesMm.map((one) => levelAt(room, { powerDb: power, directivity }, one / 1000)),
      reverberantDb: reverberantLevelOf(room, power), criticalDistanceMm: millimetres(1000 * criticalDistanceM(room, directivity)),
    });
  },
});
