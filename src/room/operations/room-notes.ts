import { compass88, equalTemperedHzOf } from '#instrument';
import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { hertz } from '#units';
import { z } from 'zod';
import { PARTIALS_HEARD, type RoomNote, coincidentModesOf, roomNotesOf } from '../boom.ts';
import { modeWidthOf, notingModesOf, schroederOf, volumeOf } from '../modes.ts';
import { reverberationS, shoeboxShape, timeOr } from '../schemas.ts';
import { countable, modeOut, modeShape } from './room-modes.ts';

const KEYS = 88;
const boom = z.strictObject({
  partial: field.count({ min: 1, max: PARTIALS_HEARD, describe: 'Partial of the note that is held' }),
  mode: z.strictObject(modeShape),
  offHz: field.hertz({ describe: 'Partial less mode' }),
});

/** Which notes a room holds, and which it leaves thin. */
export const roomNotesOperation = defineOperation({
  name: 'room-notes',
  input: z.strictObject({
    ...shoeboxShape, reverberationS: reverberationS.optional(),
    a4Hz: field.hertz({ min: 380, max: 480, describe: 'Pitch of A4' }).default(hertz(440)),
  }),
  output: z.strictObject({
    notes: z.array(z.strictObject({
      key: field.count({ min: 1, max: KEYS, describe: 'Key, A0 being 1' }),
      frequencyHz: field.hertz({ describe: 'Fundamental' }),
      booms: z.array(boom).describe('Partials within half a width of a mode between two walls'),
      thin: z.boolean().describe('No mode of any kind near the fundamental'),
    })).describe('Keys whose fundamental lies below the Schroeder frequency'),
    coincident: z.array(z.strictObject({ lowerHz: field.hertz(), upperHz: field.hertz() })).describe('Modes of two pairs of walls that ring as one'),
    modeWidthHz: field.hertz({ describe: 'How broad a mode rings' }),
    schroederHz: field.hertz({ describe: 'Above it no mode is heard alone' }),
    reverberationS: field.seconds({ describe: 'The reverberation time that was taken' }),
  }),
  formula: ['boom: |n·f − f_mode| ≤ 1.1/T, n = 1 … 6, mode between two walls', 'thin: no mode within 1.1/T of f', 'fundamentals equal-tempered, partials whole multiples'],
  sources: ['KUTTRUFF', 'RAYLEIGH-1896', 'SCHROEDER-1962', 'PRACTICE'],
  example: { lengthMm: 4200, widthMm: 3500, heightMm: 2500, temperatureC: 20, reverberationS: 0.6 },
  run: ({ reverberationS: given, a4Hz, ...room }) => {
    const volume = volumeOf(room);
    const time = timeOr(given, volume);
    const schroederHz = schroederOf(volume, time);
    const keys = Array.from({ length: KEYS }, (_, index) => ({ key: index + 1, frequencyHz: equalTemperedHzOf(compass88, index + 1, a4Hz) })).filter(({ frequencyHz }) => frequencyHz < schroederHz);
    const highest = keys.at(-1)?.frequencyHz ?? 0;
    const allToHz = hertz(Math.max(keys.length === 0 ? 0 : schroederHz, highest + modeWidthOf(time)));
    const fits = countable(room, room.temperatureC, allToHz, 'reverberationS');
    if (!fits.ok) return fits;
    const modes = notingModesOf(room, room.temperatureC, { allToHz, axialToHz: hertz(PARTIALS_HEARD * highest + modeWidthOf(time)) });
    return ok({
      notes: roomNotesOf(keys, modes, time).map(noteOut),
      coincident: coincidentModesOf(modes.filter(({ frequencyHz }) => frequencyHz <= schroederHz), time).map(([lower, upper]) => ({ lowerHz: lower.frequencyHz, upperHz: upper.frequencyHz })),
      modeWidthHz: modeWidthOf(time), schroederHz, reverberationS: time,
    });
  },
});

const noteOut = ({ booms, ...note }: RoomNote) => ({ ...note, booms: booms.map(({ mode, ...held }) => ({ ...held, mode: modeOut(mode) })) });
