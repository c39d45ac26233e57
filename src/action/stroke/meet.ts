import { type Point, along, angleBetween, from, lengthOf, point } from '../plane.ts';

/** A turn in radians that brings two parts together, or by how many millimetres they miss each other however they turn. */
export type Meeting = { readonly turn: number } | { readonly missMm: number };

/**
 * The turn t of an arm that brings its end to a level along a direction: n·(arm turned by t) = level.
 * |v|·cos x = level, x the angle from n to the arm; of the two solutions the one on the arm's own side of n.
 * `normal` of length 1, millimetres, radians.
 * @source OWN
 */
export function turnToMeet(arm: Point, normal: Point, level: number): Meeting {
  const reach = lengthOf(arm);
  if (Math.abs(level) > reach) return { missMm: Math.abs(level) - reach };
  const now = angleBetween(normal, arm);
  return { turn: (now < 0 ? -1 : 1) * Math.acos(level / reach) - now };
}

/**
 * Where two circles meet: the two points, that on the left of the way from the first centre to the second first; or by how
 * much they miss, outside or one within the other. Centres apart from each other.
 * @source OWN
 */
export function circlesMeet(first: Point, firstRadius: number, second: Point, secondRadius: number): { readonly points: readonly [Point, Point] } | { readonly missMm: number } {
  const way = from(first, second);
  const apart = lengthOf(way);
  const missMm = Math.max(apart - firstRadius - secondRadius, Math.abs(firstRadius - secondRadius) - apart);
  if (missMm > 0) return { missMm };
  const foot = (apart ** 2 + firstRadius ** 2 - secondRadius ** 2) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, firstRadius ** 2 - foot ** 2));
  const [middle, side] = [along(first, way, foot / apart), point(-way.yMm / apart, way.xMm / apart)];
  return { points: [along(middle, side, aside), along(middle, side, -aside)] };
}
