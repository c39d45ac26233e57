import { sumOf } from '#numerics';
import { type CubicMetres, type Millimetres, type SquareMetres, cubicMetres, millimetres, squareMetres } from '#units';

/** A corner of the floor: along from the left wall, across from the upper wall of the drawing. */
export interface FloorPoint {
  readonly alongMm: Millimetres;
  readonly acrossMm: Millimetres;
}

/** The corners of a rectangle, clockwise as drawn. */
export function rectangleOf(lengthMm: Millimetres, widthMm: Millimetres): readonly FloorPoint[] {
  const none = millimetres(0);
  return [{ alongMm: none, acrossMm: none }, { alongMm: lengthMm, acrossMm: none }, { alongMm: lengthMm, acrossMm: widthMm }, { alongMm: none, acrossMm: widthMm }];
}

/** Each wall as its two ends, in the order of the corners. */
export const wallsOf = (points: readonly FloorPoint[]): readonly (readonly [FloorPoint, FloorPoint])[] =>
  points.map((from, index) => [from, points[(index + 1) % points.length] ?? from]);

export interface RoomPlan {
  readonly floorM2: SquareMetres;
  readonly perimeterMm: Millimetres;
  readonly wallsM2: readonly SquareMetres[];
  readonly volumeM3: CubicMetres;
}

/** Floor by its corners, ½·|Σ (x_i·y_(i+1) − x_(i+1)·y_i)|; walls and volume by the mean height. Ignores slopes of floor and ceiling beyond their mean. @source SHOELACE */
export function roomPlanOf(points: readonly FloorPoint[], heightMm: Millimetres): RoomPlan {
  const walls = wallsOf(points);
  const lengths = walls.map(([from, to]) => Math.hypot(to.alongMm - from.alongMm, to.acrossMm - from.acrossMm));
  const floorM2 = Math.abs(sumOf(walls.map(([from, to]) => from.alongMm * to.acrossMm - to.alongMm * from.acrossMm))) / 2e6;
  return {
    floorM2: squareMetres(floorM2), perimeterMm: millimetres(sumOf(lengths)),
    wallsM2: lengths.map((length) => squareMetres((length * heightMm) / 1e6)), volumeM3: cubicMetres((floorM2 * heightMm) / 1000),
  };
}

/** The smallest rectangle along the axes that holds the floor. */
export function enclosingOf(points: readonly FloorPoint[]): { readonly fromXMm: number; readonly fromYMm: number; readonly lengthMm: Millimetres; readonly widthMm: Millimetres } {
  const [xs, ys] = [points.map(({ alongMm }) => alongMm), points.map(({ acrossMm }) => acrossMm)];
  const [fromXMm, fromYMm] = [Math.min(...xs), Math.min(...ys)];
  return { fromXMm, fromYMm, lengthMm: millimetres(Math.max(...xs) - fromXMm), widthMm: millimetres(Math.max(...ys) - fromYMm) };
}

/** True where the corners are those of one rectangle along the axes. */
export function isRectangle(points: readonly FloorPoint[]): boolean {
  const { lengthMm, widthMm } = enclosingOf(points);
  return points.length === 4 && Math.abs(roomPlanOf(points, millimetres(1000)).floorM2 - (lengthMm * widthMm) / 1e6) < 1e-9 * lengthMm * widthMm;
}

interface Place { readonly alongMm: number; readonly acrossMm: number }

/** True inside the walls or on them; by how often a ray crosses them. */
export function isInside(points: readonly FloorPoint[], { alongMm, acrossMm }: Place): boolean {
  return wallsOf(points).some((wall) => fromWallMm(wall, { alongMm, acrossMm }) < 1e-6)
    || wallsOf(points).filter(([a, b]) => a.acrossMm > acrossMm !== b.acrossMm > acrossMm && alongMm < a.alongMm + ((acrossMm - a.acrossMm) / (b.acrossMm - a.acrossMm)) * (b.alongMm - a.alongMm)).length % 2 === 1;
}

/** How far a place is from one wall. Millimetres. */
function fromWallMm([a, b]: readonly [FloorPoint, FloorPoint], { alongMm, acrossMm }: Place): number {
  const [dx, dy] = [b.alongMm - a.alongMm, b.acrossMm - a.acrossMm];
  const share = Math.min(1, Math.max(0, ((alongMm - a.alongMm) * dx + (acrossMm - a.acrossMm) * dy) / (dx ** 2 + dy ** 2)));
  return Math.hypot(alongMm - a.alongMm - share * dx, acrossMm - a.acrossMm - share * dy);
}

/** How far a place is from the nearest wall. Millimetres. */
export const fromWallsMm = (points: readonly FloorPoint[], place: Place): number => Math.min(...wallsOf(points).map((wall) => fromWallMm(wall, place)));

/** How far one sees from a place in a direction, 0 along and 90 across, before a wall. Millimetres; infinite outside. */
export function openWayMm(points: readonly FloorPoint[], { alongMm, acrossMm }: Place, directionDeg: number): number {
  const [ux, uy] = [Math.cos((directionDeg * Math.PI) / 180), Math.sin((directionDeg * Math.PI) / 180)];
  return wallsOf(points).reduce((nearest, [a, b]) => {
    const [dx, dy] = [b.alongMm - a.alongMm, b.acrossMm - a.acrossMm];
    const cross = ux * dy - uy * dx;
    if (Math.abs(cross) < 1e-12) return nearest;
    const [ax, ay] = [a.alongMm - alongMm, a.acrossMm - acrossMm];
    const [way, share] = [(ax * dy - ay * dx) / cross, (ax * uy - ay * ux) / cross];
    return way >= 0 && share >= -1e-9 && share <= 1 + 1e-9 ? Math.min(nearest, way) : nearest;
  }, Infinity);
}

/** The first two walls that cross each other, which no floor has; corners may be shared by neighbours alone. */
export function crossingWalls(points: readonly FloorPoint[]): readonly [number, number] | undefined {
  const walls = wallsOf(points);
  const side = (a: FloorPoint, b: FloorPoint, c: FloorPoint): number => Math.sign((b.alongMm - a.alongMm) * (c.acrossMm - a.acrossMm) - (b.acrossMm - a.acrossMm) * (c.alongMm - a.alongMm));
  for (const [first, [a, b]] of walls.entries()) {
    for (let second = first + 2; second < walls.length; second += 1) {
      const [c, d] = walls[second] ?? [a, b];
      const areNeighbours = first === 0 && second === walls.length - 1;
      if (!areNeighbours && side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0) return [first, second];
    }
  }
  return undefined;
}
