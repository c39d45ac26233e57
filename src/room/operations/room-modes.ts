import { defineOperation, field } from '#operation';
import { type Result, ok, refuse } from '#result';
import type { Celsius, Hertz } from '#units';
import { z } from 'zod';
import { type RoomMode, type Shoebox, modeCountOf, modeKinds, roomModesOf, schroederOf, volumeOf } from '../modes.ts';
import { reverberationS, shoeboxShape, timeOr } from '../schemas.ts';

/** A list longer than this helps nobody. */
const MOST_MODES = 20_000;
const half = field.count({ min: 0, max: 10_000 });

/** A standing wave, as answered. */
export const modeShape = {
  frequencyHz: field.hertz({ describe: 'Of the mode' }),
  order: z.array(half).length(3).describe('Half waves along length, width and height'),
  kind: z.enum(modeKinds).describe('Between two walls, four, or all six'),
} as const;

/** Standing waves of a rectangular room. */
export const roomModesOperation = defineOperation({
  name: 'room-modes',
  input: z.strictObject({ ...shoeboxShape, upToHz: field.hertz({ min: 1, max: 2000, describe: 'Highest frequency listed' }), reverberationS: reverberationS.optional() }),
  output: z.strictObject({
    modes: z.array(z.strictObject(modeShape)).describe('Lowest first'),
    schroederHz: field.hertz({ describe: 'Above it modes overlap and none is heard alone' }),
    reverberationS: field.seconds({ describe: 'The reverberation time that was taken' }),
  }),
  formula: ['f = (c/2)·√((n_x/L)² + (n_y/W)² + (n_z/H)²)', 'c = 331.3·√(1 + t/273.15) m/s', 'Schroeder: 2000·√(T/V)'],
  sources: ['RAYLEIGH-1896', 'SPEED-OF-SOUND', 'SCHROEDER-1962', 'DIN-18041'],
  example: { lengthMm: 4200, widthMm: 3500, heightMm: 2500, temperatureC: 20, upToHz: 120, reverberationS: 0.6 },
  run: ({ upToHz, reverberationS: given, ...room }) => {
    const volume = volumeOf(room);
    const time = timeOr(given, volume);
    const fits = countable(room, room.temperatureC, upToHz, 'upToHz');
    if (!fits.ok) return fits;
    return ok({
      modes: roomModesOf(room, room.temperatureC, upToHz).map(modeOut),
      schroederHz: schroederOf(volume, time), reverberationS: time,
    });
  },
});

/** A mode as answered. */
export const modeOut = ({ order, ...mode }: RoomMode): Omit<RoomMode, 'order'> & { order: number[] } => ({ ...mode, order: [...order] });

/** Refused where so many modes lie below a frequency that no list of them is meant. */
export function countable(room: Shoebox, temperatureC: Celsius, upToHz: Hertz, path: string): Result<true> {
  if (modeCountOf(room, temperatureC, upToHz) <= MOST_MODES) return ok(true);
  const most = Math.floor(upToHz * Math.cbrt(MOST_MODES / modeCountOf(room, temperatureC, upToHz)));
  return refuse({ code: 'range', path, given: upToHz, allowed: `about ${String(most)} or less in a room so large, for which there are ${String(MOST_MODES)} modes`, params: { reason: 'tooManyModes', max: most, modes: MOST_MODES } });
}
