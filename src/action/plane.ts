/**
 * A point or an arrow in the plane an action moves in: x away from the player, y up, millimetres.
 * Angles run counter-clockwise, a turn by +90° taking x to y.
 */
export interface Point {
  readonly xMm: number;
  readonly yMm: number;
}

/** The point x, y. */
export const point = (xMm: number, yMm: number): Point => ({ xMm, yMm });

/** The arrow of length 1 at an angle in radians. */
export const arrow = (angle: number): Point => point(Math.cos(angle), Math.sin(angle));

/** a + k·b. */
export const along = (a: Point, b: Point, k = 1): Point => point(a.xMm + k * b.xMm, a.yMm + k * b.yMm);

/** From b to a. */
export const from = (b: Point, a: Point): Point => along(a, b, -1);

/** a·b, mm². */
export const dot = (a: Point, b: Point): number => a.xMm * b.xMm + a.yMm * b.yMm;

/** The turn from a to b: a.x·b.y − a.y·b.x, mm². */
export const cross = (a: Point, b: Point): number => a.xMm * b.yMm - a.yMm * b.xMm;

/** An arrow turned by an angle in radians. */
export const turned = ({ xMm, yMm }: Point, angle: number): Point => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return point(c * xMm - s * yMm, s * xMm + c * yMm);
};

/** A point turned about a centre by an angle in radians. */
export const turnedAbout = (centre: Point, spot: Point, angle: number): Point => along(centre, turned(from(centre, spot), angle));

/** Length of an arrow, mm. */
export const lengthOf = ({ xMm, yMm }: Point): number => Math.hypot(xMm, yMm);

/** The angle from one arrow to another, radians from −π to π. */
export const angleBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));
