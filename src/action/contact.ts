import { type Degrees, type Millimetres, type Ratio, millimetres, ratio } from '#units';
import { type Point, along, arrow, cross, dot, from } from './plane.ts';

/** Two levers that touch: their centres, the point of contact and the direction the faces press in. */
export interface TouchingLevers {
  readonly first: Point;
  readonly second: Point;
  readonly contact: Point;
  /** Common normal of both faces, from level. */
  readonly normalDeg: Degrees;
}

/** How two levers that touch drive each other. */
export interface Contact {
  /** Perpendicular distance from each centre to the line of the force; above nought where the force turns counter-clockwise. */
  readonly firstArmMm: Millimetres;
  readonly secondArmMm: Millimetres;
  /** Turning speed of the second lever for one of the first; below nought where they turn against each other. */
  readonly speedRatio: Ratio;
  /** Where the line of the force crosses the line of centres; `undefined` when the two are parallel. */
  readonly pitchPoint: Point | undefined;
  /** How far the faces slide on each other for a radian of the first lever. */
  readonly slidingMm: Millimetres;
}

/**
 * How two levers that touch drive each other: turning speeds, pitch point and sliding.
 * ω₂/ω₁ = p₁/p₂ with p the perpendicular distances to the common normal; sliding = |ω₂ − ω₁|·|CP|, C the contact and P
 * the pitch point, so nothing slides where the contact lies on the line of centres.
 * @returns `undefined` when the force passes through the second centre and cannot turn that lever.
 * @source ARONHOLD-KENNEDY
 */
export function contactOf({ first, second, contact, normalDeg }: TouchingLevers): Contact | undefined {
  const normal = arrow((normalDeg * Math.PI) / 180);
  const [one, two] = [from(first, contact), from(second, contact)];
  const [firstArm, secondArm] = [cross(one, normal), cross(two, normal)];
  if (Math.abs(secondArm) < LEAST_ARM_MM) return undefined;
  const speed = firstArm / secondArm;
  return {
    firstArmMm: millimetres(firstArm),
    secondArmMm: millimetres(secondArm),
    speedRatio: ratio(speed),
    pitchPoint: pitchPointOf(first, second, contact, normal),
    slidingMm: millimetres(Math.abs(dot(one, normal) - speed * dot(two, normal))),
  };
}

/** An arm below this is none: it keeps speeds finite. */
const LEAST_ARM_MM = 1e-6;

function pitchPointOf(first: Point, second: Point, contact: Point, normal: Point): Point | undefined {
  const centres = from(first, second);
  const turn = cross(centres, normal);
  return Math.abs(turn) < LEAST_ARM_MM ? undefined : along(first, centres, cross(from(first, contact), normal) / turn);
}
