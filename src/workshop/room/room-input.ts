import { surfaces } from '#materials';
import { sumOf } from '#numerics';
import { type FloorPoint, type PerBand, type Room, type RoomPlan, type RoomSurface, type Shoebox, STANDARD_PRESSURE_KPA, crossingWalls, enclosingOf, isRectangle, ownTimeOf, perBand, rectangleOf, roomPlanOf } from '#room';
import type { Issue } from '#result';
import { celsius, kilopascals, millimetres, percent, squareMetres } from '#units';
import type { RoomFace, RoomGiven, RoomSide } from './record.ts';

/** Air of a room whose temperature or humidity was not stated. @source PRACTICE */
export const USUAL_ROOM_AIR = { temperatureC: 20, humidityPct: 50 } as const;

/** A surface of the room by where it is, with what it takes in. */
export interface NamedSurface extends RoomSurface {
  readonly on: RoomSide;
  readonly face: RoomFace;
  /** Its place among the things; the side itself, as far as nothing covers it, has none. */
  readonly thing?: number;
  readonly isPeople?: true;
}

/** A room made ready for the calculations. */
export interface RoomInput {
  readonly points: readonly FloorPoint[];
  readonly plan: RoomPlan;
  /** The room itself, or the rectangle around it. */
  readonly box: Shoebox;
  readonly isBox: boolean;
  readonly temperatureC: ReturnType<typeof celsius>;
  readonly room: Room;
  readonly surfaces: readonly NamedSurface[];
}

/** What a face takes in. */
export const absorptionOfFace = ({ surface, own }: RoomFace): PerBand => perBand((band) => own?.[band] ?? (surface === null ? 0 : surfaces[surface].absorption[band] ?? 0));

/** Corners of the floor. */
export const cornersOf = ({ plan }: Pick<RoomGiven, 'plan'>): readonly FloorPoint[] =>
  (plan.shape === 'box' ? rectangleOf(millimetres(plan.lengthMm), millimetres(plan.widthMm)) : plan.points.map(({ alongMm, acrossMm }) => ({ alongMm: millimetres(alongMm), acrossMm: millimetres(acrossMm) })));

const PEOPLE: RoomFace = { surface: 'audience-one-per-m2', own: null };

/** What covers a side, people on the floor among it: a square metre each. */
function coversOf({ things, people }: RoomGiven, side: RoomSide): readonly Omit<NamedSurface, 'absorption'>[] {
  const hung = things.flatMap(({ on, areaM2, face }, thing) => (on === side ? [{ on, face, areaM2: squareMetres(areaM2), thing }] : []));
  return side === 'floor' && people > 0 ? [...hung, { on: side, face: PEOPLE, areaM2: squareMetres(people), isPeople: true }] : hung;
}

interface Side { readonly side: RoomSide; readonly face: RoomFace; readonly areaM2: number }

const sidesOf = (given: RoomGiven, plan: RoomPlan): readonly Side[] => [
  { side: 'floor', face: given.floor, areaM2: plan.floorM2 }, { side: 'ceiling', face: given.ceiling, areaM2: plan.floorM2 },
  ...given.walls.map((face, index) => ({ side: index + 1, face, areaM2: plan.wallsM2[index] ?? 0 })),
];

/** Volume, surfaces and air of a room that fits together. */
export function roomInputOf(given: RoomGiven): RoomInput {
  const points = cornersOf(given);
  const plan = roomPlanOf(points, millimetres(given.heightMm));
  const { lengthMm, widthMm } = enclosingOf(points);
  const named = sidesOf(given, plan).flatMap(({ side, face, areaM2 }): readonly NamedSurface[] => {
    const covers = coversOf(given, side);
    const bare = areaM2 - sumOf(covers.map((cover) => cover.areaM2));
    return [...(bare > 1e-9 ? [{ on: side, face, areaM2: squareMetres(bare) }] : []), ...covers].map((one) => ({ ...one, absorption: absorptionOfFace(one.face) }));
  });
  const temperatureC = celsius(given.temperatureC ?? USUAL_ROOM_AIR.temperatureC);
  return {
    points, plan, temperatureC, surfaces: named, isBox: isRectangle(points), box: { lengthMm, widthMm, heightMm: millimetres(given.heightMm) },
    room: {
      volumeM3: plan.volumeM3, surfaces: named.map(({ areaM2, absorption }) => ({ areaM2, absorption })),
      air: { temperatureC, humidityPct: percent(given.humidityPct ?? USUAL_ROOM_AIR.humidityPct), pressureKPa: kilopascals(STANDARD_PRESSURE_KPA) },
    },
  };
}

/** The same as the operations of the catalogue are given it. */
export const roomCalculated = ({ room, surfaces: named }: RoomInput) => ({
  volumeM3: room.volumeM3, air: room.air ?? false,
  surfaces: named.map(({ areaM2, face }) => (face.own === null ? { areaM2, surface: face.surface } : { areaM2, absorption: face.own })),
});

/** Below so short a time a formula is stretched beyond sense. */
const LEAST_TIME_S = 0.05;

/** What in a room does not fit together: walls that cross, faces without their wall, more hung on a side than there is of it. */
export function roomIssues(given: RoomGiven): readonly Issue[] {
  const points = cornersOf(given);
  const crossing = crossingWalls(points);
  if (crossing !== undefined) return [{ code: 'order', path: `plan.points[${String(crossing[1])}]`, given: crossing[1] + 1, allowed: 'corners in turn around the room, no wall crossing another', params: { reason: 'wallsCross', first: crossing[0] + 1, second: crossing[1] + 1 } }];
  const plan = roomPlanOf(points, millimetres(given.heightMm));
  if (!(plan.floorM2 >= 0.25)) return [{ code: 'range', path: 'plan.points', given: plan.floorM2, allowed: '0.25 m² or more', params: { reason: 'noFloor', min: 0.25 } }];
  const wanted = given.standard == null ? undefined : ownTimeOf(given.standard, plan.volumeM3);
  if (wanted !== undefined && !(wanted >= LEAST_TIME_S)) return [{ code: 'range', path: 'standard', given: wanted, allowed: `a target that gives ${String(LEAST_TIME_S)} s or more at ${String(plan.volumeM3)} m³`, params: { reason: 'noTime', min: LEAST_TIME_S, volume: Number(plan.volumeM3.toFixed(1)) } }];
  if (given.walls.length !== points.length) return [{ code: 'range', path: 'walls', given: given.walls.length, allowed: `${String(points.length)}, one for each wall`, params: { min: points.length, max: points.length } }];
  const homeless = given.things.flatMap(({ on }, index): readonly Issue[] => (typeof on === 'number' && on > points.length ? [{ code: 'range', path: `things[${String(index)}].on`, given: on, allowed: `wall 1 to ${String(points.length)}`, params: { min: 1, max: points.length } }] : []));
  const full = sidesOf(given, plan).flatMap(({ side, areaM2 }): readonly Issue[] => {
    const covers = coversOf(given, side);
    const covered = sumOf(covers.map((cover) => cover.areaM2));
    if (covered <= areaM2 + 1e-9) return [];
    const last = covers.at(-1);
    return [{ code: 'range', path: last?.isPeople === true ? 'people' : `things[${String(last?.thing ?? 0)}].areaM2`, given: covered, allowed: `${String(areaM2)} m² or less together, the area of that side`, params: { reason: 'sideFull', max: Number(areaM2.toFixed(2)), covered: Number(covered.toFixed(2)) } }];
  });
  return [...homeless, ...full];
}
