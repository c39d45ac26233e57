import { defineOperation, field } from '#operation';
import { type Result, ok, refuse } from '#result';
import { hertz, millimetres } from '#units';
import { z } from 'zod';
import { rectangleOf } from '../floor-plan.ts';
import { volumeOf } from '../modes.ts';
import { placementsOf } from '../placement.ts';
import { GRAND_WIDTH_MM, standingsOf, turnsDeg } from '../standing.ts';
import { reverberationS, shoeboxShape, timeOr } from '../schemas.ts';
import { countable } from './room-modes.ts';
import { floorPoints, soundPlan } from './room-plan.ts';

const MOST_PLACES = 20_000;
const place = { min: 0, max: 200_000 };

const question = z.strictObject({
  ...shoeboxShape, reverberationS: reverberationS.optional(),
  gridMm: field.millimetres({ min: 50, max: 10_000, describe: 'Between places tried' }).default(millimetres(250)),
  fromWallMm: field.millimetres({ min: 0, max: 10_000, describe: 'Middle of the soundboard from every wall, at least' }).default(millimetres(750)),
  heightAboveFloorMm: field.millimetres({ ...place, describe: 'Soundboard above the floor' }).default(millimetres(800)),
  points: floorPoints.describe('Corners of a floor that is no rectangle, within length and width; the rectangle is what rings, places outside the corners are left out').optional(),
  piano: z.strictObject({
    lengthMm: field.millimetres({ min: 300, max: 4000, describe: 'Length of the case' }),
    widthMm: field.millimetres({ min: 300, max: 2500, describe: 'Width over the cheeks' }).default(GRAND_WIDTH_MM),
  }).describe('A grand, for which case and player must have room; its lid opens to the player’s right').optional(),
});

/** Places of a room, the bass most even first. */
export const roomPositionsOperation = defineOperation({
  name: 'room-positions',
  input: question,
  output: z.strictObject({
    places: z.array(z.strictObject({
      alongMm: field.millimetres({ describe: 'From a short wall, along the length' }),
      acrossMm: field.millimetres({ describe: 'From a long wall, along the width' }),
      spreadDb: field.decibels({ describe: 'Standard deviation of the level, semitone by semitone from 30 to 200 Hz' }),
      tailDeg: field.degrees({ describe: `Where the tail points, 0 along and 90 across, of ${turnsDeg.join(', ')} the one with the longest way before the lid` }).optional(),
      openMm: field.millimetres({ describe: 'From the open side of the lid to the wall it faces' }).optional(),
    })).describe('Most even first'),
    reverberationS: field.seconds({ describe: 'The reverberation time that was taken' }),
  }),
  formula: ['p² ∝ Σ ε_n·ψ_n(x, y, z)²·ω²/((ω_n² − ω²)² + (2δω)²), δ = 3·ln 10/T', 'ψ = cos(n_xπx/L)·cos(n_yπy/W)·cos(n_zπz/H), mean over the room', 'the piano taken as one point', 'with a piano: turned by quarters, the longest way before the open lid wins, a metre at least; the order stays that of the bass'],
  sources: ['MORSE-1948', 'OWN'],
  example: { lengthMm: 7200, widthMm: 5400, heightMm: 3000, temperatureC: 20, reverberationS: 1, gridMm: 1000 },
  run: (input) => {
    const { gridMm, fromWallMm, heightAboveFloorMm, points, piano, ...room } = input;
    const fits = placesFit(input);
    if (!fits.ok) return fits;
    const time = timeOr(input.reverberationS, volumeOf(room));
    const tried = placementsOf({ ...room, gridMm, fromWallMm, heightAboveFloorMm, reverberationS: time });
    return ok({ places: [...standingsOf(tried, { points: points ?? rectangleOf(room.lengthMm, room.widthMm), fromWallMm, piano })], reverberationS: time });
  },
});

/** Refused where there is no place, or more of them than anybody waits for. */
function placesFit({ gridMm, fromWallMm, heightAboveFloorMm, points, ...room }: z.output<typeof question>): Result<true> {
  const counts = [room.lengthMm, room.widthMm].map((side) => Math.floor(Math.max(0, side - 2 * fromWallMm) / gridMm) + 1);
  const [narrow] = (['lengthMm', 'widthMm'] as const).filter((side) => room[side] < 2 * fromWallMm);
  if (narrow !== undefined) return refuse({ code: 'range', path: 'fromWallMm', given: fromWallMm, allowed: `${String(room[narrow] / 2)} or less, half of ${narrow}`, params: { reason: 'roomTooNarrow', max: room[narrow] / 2 } });
  if (heightAboveFloorMm > room.heightMm) return refuse({ code: 'range', path: 'heightAboveFloorMm', given: heightAboveFloorMm, allowed: `${String(room.heightMm)} or less, the height of the room`, params: { reason: 'aboveCeiling', max: room.heightMm } });
  if ((counts[0] ?? 0) * (counts[1] ?? 0) > MOST_PLACES) return refuse({ code: 'range', path: 'gridMm', given: gridMm, allowed: `a wider grid: ${String(MOST_PLACES)} places at most`, params: { reason: 'gridTooFine', max: MOST_PLACES } });
  const sound = points === undefined ? ok(true as const) : soundPlan(points, 'points');
  return sound.ok ? countable(room, room.temperatureC, hertz(260), 'lengthMm') : sound;
}
