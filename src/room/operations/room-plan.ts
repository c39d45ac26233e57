import { defineOperation, field } from '#operation';
import { type Issue, type Result, ok, refuse } from '#result';
import { z } from 'zod';
import { type FloorPoint, crossingWalls, roomPlanOf } from '../floor-plan.ts';

const coordinate = (describe: string) => field.millimetres({ min: -1_000_000, max: 1_000_000, describe });
/** Corners of a floor. */
export const floorPoints = z.array(z.strictObject({ alongMm: coordinate('Along'), acrossMm: coordinate('Across') })).min(3).max(60).describe('Corners of the floor in turn, the last joined to the first');

/** Floor, walls and volume of a room of any plan. */
export const roomPlanOperation = defineOperation({
  name: 'room-plan',
  input: z.strictObject({ points: floorPoints, heightMm: field.millimetres({ min: 500, max: 200_000, describe: 'Mean height of the room' }) }),
  output: z.strictObject({
    floorM2: field.squareMetres({ describe: 'Floor, and ceiling' }),
    perimeterMm: field.millimetres({ describe: 'All walls together' }),
    wallsM2: z.array(field.squareMetres()).describe('Area of each wall, from each corner to the next'),
    volumeM3: field.cubicMetres({ describe: 'Volume' }),
  }),
  formula: ['floor = ½·|Σ (xᵢ·yᵢ₊₁ − xᵢ₊₁·yᵢ)|', 'wall = length × mean height', 'volume = floor × mean height'],
  sources: ['SHOELACE'],
  example: { points: [{ alongMm: 0, acrossMm: 0 }, { alongMm: 7200, acrossMm: 0 }, { alongMm: 7200, acrossMm: 3400 }, { alongMm: 5200, acrossMm: 5400 }, { alongMm: 0, acrossMm: 5400 }], heightMm: 3000 },
  run: ({ points, heightMm }) => {
    const sound = soundPlan(points, 'points');
    if (!sound.ok) return sound;
    const plan = roomPlanOf(points, heightMm);
    return ok({ ...plan, wallsM2: [...plan.wallsM2] });
  },
});

/** Refuses corners that are no floor: walls that cross, and no area between them. */
export function soundPlan(points: readonly FloorPoint[], path: string): Result<true> {
  const crossing = crossingWalls(points);
  if (crossing !== undefined) return refuse(crossed(crossing, path));
  const { floorM2 } = roomPlanOf(points, 1000 as FloorPoint['alongMm']);
  return floorM2 >= LEAST_FLOOR_M2 ? ok(true) : refuse({ code: 'range', path, given: floorM2, allowed: `corners around a floor of ${String(LEAST_FLOOR_M2)} m² or more`, params: { reason: 'noFloor', min: LEAST_FLOOR_M2 } });
}

const LEAST_FLOOR_M2 = 0.25;
const crossed = ([first, second]: readonly [number, number], path: string): Issue =>
  ({ code: 'order', path: `${path}[${String(second)}]`, given: second + 1, allowed: `corners in turn around the room: wall ${String(first + 1)} and wall ${String(second + 1)} cross`, params: { reason: 'wallsCross', first: first + 1, second: second + 1 } });
