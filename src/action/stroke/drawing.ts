import { type Point, along, dot, from, lengthOf, point, turned } from '../plane.ts';
import type { Assembly } from './assembly.ts';
import { type Pose, jackCentreAt } from './pose.ts';

/** Parts a drawing shows. */
export const drawnParts = ['key', 'capstan', 'heel', 'wippen', 'jack', 'toe', 'jackTop', 'roller', 'shank', 'head'] as const;
export type DrawnPart = (typeof drawnParts)[number];

/** Lines and circles of one position, millimetres, x away from the player from the balance point, y up from the key bed. */
export interface Drawing {
  readonly segments: readonly { readonly part: DrawnPart; readonly from: Point; readonly to: Point }[];
  readonly circles: readonly { readonly part: DrawnPart; readonly centre: Point; readonly radiusMm: number }[];
}

/** What the drawing needs beside the assembly. */
export interface DrawingScale {
  readonly keyEdgeMm: number;
  readonly stringHeightMm: number;
}

/**
 * The action at one position, to scale.
 * The key is drawn as the line from its front edge through the balance point to below the capstan; the head as standing
 * square on its shank, level at the string.
 * @source OWN
 */
export function drawingOf(assembly: Assembly, pose: Pose, { keyEdgeMm, stringHeightMm }: DrawingScale): Drawing {
  const { balance, wippen, hammer } = assembly;
  const capstan = along(balance, turned(assembly.capstan, pose.key));
  const heelNormal = turned(assembly.heelNormal, pose.wippen);
  const heel = along(capstan, heelNormal, assembly.capstanRadiusMm);
  const jackCentre = jackCentreAt(assembly, pose.wippen);
  const roller = along(hammer, turned(assembly.roller, pose.hammer));
  const strike = along(hammer, turned(assembly.strike, pose.hammer));
  const foot = along(hammer, turned(footOf(assembly, stringHeightMm), pose.hammer));
  const face = point(heelNormal.yMm, -heelNormal.xMm);
  const onKey = (x: number): Point => along(balance, turned(point(x, 0), pose.key));
  return {
    segments: [
      { part: 'key', from: onKey(-keyEdgeMm), to: onKey(assembly.capstan.xMm) },
      { part: 'capstan', from: onKey(assembly.capstan.xMm), to: capstan },
      { part: 'heel', from: along(heel, face, -FACE_MM), to: along(heel, face, FACE_MM) },
      { part: 'wippen', from: wippen, to: heel },
      ...jackSegments(assembly, pose, jackCentre, roller),
      { part: 'shank', from: hammer, to: foot },
      { part: 'head', from: foot, to: strike },
    ],
    circles: [
      { part: 'capstan', centre: capstan, radiusMm: assembly.capstanRadiusMm },
      { part: 'roller', centre: roller, radiusMm: assembly.rollerRadiusMm },
    ],
  };
}

/** Half the length a flat face is drawn with. */
const FACE_MM = 5;

function jackSegments({ jack, wippen, topNormal, topLevelMm, rollerRadiusMm }: Assembly, pose: Pose, centre: Point, roller: Point): Drawing['segments'] {
  const normal = turned(topNormal, pose.jack);
  const across = point(normal.yMm, -normal.xMm);
  if (jack === undefined) {
    const top = along(roller, normal, topLevelMm - rollerRadiusMm - dot(normal, from(wippen, roller)));
    return [
      { part: 'wippen', from: wippen, to: top },
      { part: 'jackTop', from: along(top, across, -FACE_MM), to: along(top, across, FACE_MM) },
    ];
  }
  const edge = along(centre, turned(jack.edge, pose.jack));
  return [
    { part: 'wippen', from: wippen, to: centre },
    { part: 'jack', from: centre, to: edge },
    { part: 'jackTop', from: along(edge, across, -2 * FACE_MM), to: edge },
    { part: 'toe', from: centre, to: along(centre, turned(jack.toe, pose.jack)) },
  ];
}

/** Foot of the head on the shank at the measured position, from the hammer centre. */
function footOf({ strike, hammer }: Assembly, stringHeightMm: number): Point {
  const bore = stringHeightMm - hammer.yMm;
  const reach = lengthOf(strike);
  const shank = Math.sqrt(Math.max(0, reach ** 2 - bore ** 2));
  return turned(point(shank, 0), Math.atan2(strike.yMm, strike.xMm) - Math.atan2(bore, shank));
}
