import { type Degrees, type Millimetres, degrees, millimetres } from '#units';
import { type FloorPoint, fromWallsMm, isInside, openWayMm } from './floor-plan.ts';
import type { PlacedPiano } from './placement.ts';

/** Width of a grand over its cheeks, where none is typed. @source PRACTICE */
export const GRAND_WIDTH_MM = millimetres(1520);
/** Room for the bench and whoever sits on it. @source PRACTICE */
const PLAYER_MM = 900;

/** An open lid nearer to a wall than this speaks into it. @source PRACTICE */
export const LEAST_OPEN_MM = 1000;

/** Ways a piano may be turned: where its tail points, 0 along and 90 across, clockwise as drawn. */
export const turnsDeg = [0, 90, 180, 270] as const;

export interface PianoFootprint {
  readonly lengthMm: Millimetres;
  readonly widthMm: Millimetres;
}

/** A place with the turn in which the open lid looks furthest into the room. */
export interface StandingPiano extends PlacedPiano {
  readonly tailDeg: Degrees;
  /** From the open side to the wall it faces. */
  readonly openMm: Millimetres;
}

/** The lid opens to the player’s right. Degrees. */
export const lidSideDeg = (tailDeg: number): number => (tailDeg + 90) % 360;

/** Outline of the case and the player’s place behind the keys, as points to be inside the room: corners and middles of the sides. */
export function footprintOf({ alongMm, acrossMm }: { readonly alongMm: number; readonly acrossMm: number }, { lengthMm, widthMm }: PianoFootprint, tailDeg: number, player = PLAYER_MM): readonly FloorPoint[] {
  const [cos, sin] = [Math.cos((tailDeg * Math.PI) / 180), Math.sin((tailDeg * Math.PI) / 180)];
  const [front, back, side] = [lengthMm / 2, 0 - lengthMm / 2 - player, widthMm / 2];
  const middle = (front + back) / 2;
  return ([[back, -side], [middle, -side], [front, -side], [front, 0], [front, side], [middle, side], [back, side], [back, 0]] as const)
    .map(([ahead, right]) => ({ alongMm: millimetres(alongMm + ahead * cos - right * sin), acrossMm: millimetres(acrossMm + ahead * sin + right * cos) }));
}

export interface StandingQuestion {
  readonly points: readonly FloorPoint[];
  readonly fromWallMm: Millimetres;
  /** Left out: places alone, however the piano is turned. */
  readonly piano?: PianoFootprint | undefined;
}

/** Keeps the places inside the walls, and where a piano is given those where case and player have room, turned so that the open lid has the longest way before it, a metre at least. Order stays. @source OWN */
export function standingsOf(places: readonly PlacedPiano[], { points, fromWallMm, piano }: StandingQuestion): readonly (PlacedPiano | StandingPiano)[] {
  return places.flatMap((place): readonly (PlacedPiano | StandingPiano)[] => {
    const at = { alongMm: place.alongMm, acrossMm: place.acrossMm };
    if (!isInside(points, at) || fromWallsMm(points, at) < fromWallMm - 1e-6) return [];
    return piano === undefined ? [place] : bestTurnOf(place, points, piano);
  });
}

function bestTurnOf(place: PlacedPiano, points: readonly FloorPoint[], piano: PianoFootprint): readonly StandingPiano[] {
  const at = { alongMm: place.alongMm, acrossMm: place.acrossMm };
  const ways = turnsDeg.filter((turn) => footprintOf(at, piano, turn).every((corner) => isInside(points, corner)))
    .map((turn): StandingPiano => ({ ...place, tailDeg: degrees(turn), openMm: millimetres(openWayMm(points, at, lidSideDeg(turn)) - piano.widthMm / 2) }))
    .filter(({ openMm }) => openMm >= LEAST_OPEN_MM);
  const [first, ...rest] = ways;
  return first === undefined ? [] : [rest.reduce((best, way) => (way.openMm > best.openMm ? way : best), first)];
}
