import type { Degrees, Millimetres, Percent } from '#units';
import type { Levers } from '../levers.ts';
import { type Point, along, arrow, dot, from, point } from '../plane.ts';

/** A jack as its tripping needs it. */
export interface JackMeasures {
  /** Jack centre to the top. */
  readonly heightMm: Millimetres;
  /** Jack centre to where the let-off button meets the toe. */
  readonly toeMm: Millimetres;
  /** Contact with the roller to the edge of the top it slips off at. */
  readonly overlapMm: Millimetres;
}

/** One key of a grand action as it is measured at the bench; heights above the key bed. */
export interface StrokeMeasures {
  /** The six arms, taken level from centre to contact at the measured position. */
  readonly levers: Levers;
  /** Balance point to the front edge. */
  readonly keyEdgeMm: Millimetres;
  readonly balanceHeightMm: Millimetres;
  /** Capstan contact at the measured position. */
  readonly capstanHeightMm: Millimetres;
  readonly wippenCentreHeightMm: Millimetres;
  /** Jack top under the roller at the measured position. */
  readonly jackTopHeightMm: Millimetres;
  readonly hammerCentreHeightMm: Millimetres;
  readonly stringHeightMm: Millimetres;
  /** Radius of the head of the capstan. */
  readonly capstanRadiusMm: Millimetres;
  readonly rollerDiameterMm: Millimetres;
  readonly blowMm: Millimetres;
  readonly letOffMm: Millimetres;
  /** At the front edge. */
  readonly dipMm: Millimetres;
  /** Key travel at the measuring point before the hammer moves. */
  readonly lossMm: Millimetres;
  /** Where the arms were taken: share of the blow the hammer had risen. */
  readonly measuredAtPct: Percent;
  /** Heel and jack top at the measured position, from level, rising away from the player. */
  readonly heelTiltDeg: Degrees;
  readonly jackTiltDeg: Degrees;
  /** Left out: the jack is taken to let go at once. */
  readonly jack?: JackMeasures | undefined;
}

/** A jack in the plane at the measured position. */
export interface JackBody {
  readonly centre: Point;
  /** From its centre. */
  readonly toe: Point;
  /** Edge of the top the roller slips off at, from its centre. */
  readonly edge: Point;
  /** Roller centre from the jack centre, the roller standing on that edge. */
  readonly rollerOnEdge: Point;
  /** Roller centre from the jack centre along the normal of the top. */
  readonly levelMm: number;
}

/** The parts in the plane they move in, all at the measured position. The measuring point of the key is in front of the origin. */
export interface Assembly {
  readonly balance: Point;
  readonly wippen: Point;
  readonly hammer: Point;
  /** Centre of the capstan's head, from the balance point. */
  readonly capstan: Point;
  readonly capstanRadiusMm: number;
  /** Of the heel, its face downward: outward normal turned up, and the capstan centre along it from the wippen centre. */
  readonly heelNormal: Point;
  readonly heelLevelMm: number;
  /** Of the jack top: normal up, and the roller centre along it from the wippen centre while the jack stands in the wippen. */
  readonly topNormal: Point;
  readonly topLevelMm: number;
  /** Centre of the roller, from the hammer centre. */
  readonly roller: Point;
  readonly rollerRadiusMm: number;
  /** Strike point, from the hammer centre. */
  readonly strike: Point;
  readonly jack: JackBody | undefined;
}

/**
 * Lays the parts out in the plane from their bench measures.
 * Balance point at x = 0; capstan contact at b; wippen centre at b + w_c; jack top under the roller at b + w_c − w_j; hammer
 * centre at b + w_c − w_j − r; strike point L behind it. The jack centre is taken straight below the contact and its toe
 * level with its centre, toward the player.
 * @source OWN
 */
export function assemblyOf(given: StrokeMeasures): Assembly {
  const { levers } = given;
  const wippen = point(levers.keyBackMm + levers.wippenHeelMm, given.wippenCentreHeightMm);
  const heel = point(levers.keyBackMm, given.capstanHeightMm);
  const top = point(wippen.xMm - levers.wippenJackMm, given.jackTopHeightMm);
  const hammer = point(top.xMm - levers.rollerMm, given.hammerCentreHeightMm);
  const balance = point(0, given.balanceHeightMm);
  const [heelNormal, topNormal] = [given.heelTiltDeg, given.jackTiltDeg].map((tilt) => arrow(((90 + tilt) * Math.PI) / 180)) as [Point, Point];
  const capstan = along(heel, heelNormal, 0 - given.capstanRadiusMm);
  const roller = along(top, topNormal, given.rollerDiameterMm / 2);
  const measuredHeight = given.stringHeightMm - given.blowMm * (1 - given.measuredAtPct / 100);
  return {
    balance, wippen, hammer, heelNormal, topNormal,
    capstan: from(balance, capstan),
    capstanRadiusMm: given.capstanRadiusMm,
    heelLevelMm: dot(heelNormal, from(wippen, capstan)),
    topLevelMm: dot(topNormal, from(wippen, roller)),
    roller: from(hammer, roller),
    rollerRadiusMm: given.rollerDiameterMm / 2,
    strike: point(levers.hammerMm, measuredHeight - hammer.yMm),
    jack: given.jack === undefined ? undefined : jackOf(given.jack, top, topNormal, given.rollerDiameterMm / 2),
  };
}

function jackOf({ heightMm, toeMm, overlapMm }: JackMeasures, top: Point, normal: Point, rollerRadiusMm: number): JackBody {
  const centre = point(top.xMm, top.yMm - heightMm);
  const edge = from(centre, along(top, point(normal.yMm, -normal.xMm), overlapMm));
  const rollerOnEdge = along(edge, normal, rollerRadiusMm);
  return { centre, toe: point(0 - toeMm, 0), edge, rollerOnEdge, levelMm: dot(normal, rollerOnEdge) };
}
