import { type Point, along, angleBetween, dot, from, lengthOf, point, turned } from '../plane.ts';
import type { Assembly } from './assembly.ts';
import { circlesMeet } from './meet.ts';
import { type Miss, type Pose, jackCentreAt, keyTurnOf, poseOfHammer } from './pose.ts';

/** Where the jack lets go. */
export interface LetOff {
  readonly pose: Pose;
  /** Underside of the let-off button over the toe; `undefined` where no jack is known. */
  readonly buttonHeightMm: number | undefined;
}

/**
 * Where the jack lets go with the hammer turned as the let-off asks, and how high the button must stand for it.
 * The roller then stands on the edge of the jack top. The jack centre lies on a circle about the wippen centre and on one
 * about the roller centre; of their two meetings that nearer to the jack standing in the wippen. Without a jack the roller
 * is let go as it lies. A roller that would have left the standing jack before is a miss.
 * @source OWN
 */
export function letOffOf(assembly: Assembly, hammerTurn: number): LetOff | Miss {
  const standing = poseOfHammer(assembly, hammerTurn);
  const { jack, wippen } = assembly;
  if (jack === undefined) return 'contact' in standing ? standing : { pose: standing, buttonHeightMm: undefined };
  const roller = along(assembly.hammer, turned(assembly.roller, hammerTurn));
  const met = circlesMeet(wippen, lengthOf(from(wippen, jack.centre)), roller, lengthOf(jack.rollerOnEdge));
  if ('missMm' in met) return { contact: 'jack', ...met };
  const near = jackCentreAt(assembly, 'contact' in standing ? 0 : standing.wippen);
  const centre = [...met.points].sort((a, b) => lengthOf(from(near, a)) - lengthOf(from(near, b)))[0] ?? near;
  const wippenTurn = angleBetween(from(wippen, jack.centre), from(wippen, centre));
  const jackTurn = angleBetween(jack.rollerOnEdge, from(centre, roller));
  if ('wippen' in standing && jackTurn < wippenTurn) return { contact: 'edge', missMm: pastEdgeMm(assembly, standing, roller) };
  const key = keyTurnOf(assembly, wippenTurn);
  if ('missMm' in key) return { contact: 'capstan', ...key };
  return { pose: { key: key.turn, wippen: wippenTurn, jack: jackTurn, hammer: hammerTurn }, buttonHeightMm: centre.yMm + turned(jack.toe, jackTurn).yMm };
}

/** How far the roller would be past the edge of a jack that still stands in the wippen. */
function pastEdgeMm(assembly: Assembly, standing: Pose, roller: Point): number {
  const { topNormal, jack } = assembly;
  const across = point(topNormal.yMm, -topNormal.xMm);
  const onTop = from(jackCentreAt(assembly, standing.wippen), roller);
  return dot(turned(across, standing.wippen), onTop) - dot(across, jack?.rollerOnEdge ?? across);
}
