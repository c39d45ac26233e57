import { surfaces } from '#materials';
import { type BandFit, type PerBand, type ReverberationModel, type RoomSurface, doubtOf, fitAbsorption, perBand, reverberationOf } from '#room';
import { type Seconds, seconds } from '#units';
import type { RoomFace, RoomGiven, RoomMeasured } from './record.ts';
import { type NamedSurface, type RoomInput, absorptionOfFace } from './room-input.ts';

/** A proposal: what each surface would have to take in for the room to ring as measured. */
export interface RoomFit {
  readonly surfaces: readonly (NamedSurface & { readonly fitted: PerBand; readonly doubt: PerBand })[];
  readonly outcomes: PerBand<BandFit['outcome']>;
  readonly times: PerBand<Seconds>;
  /** The room with these shares as its own. */
  readonly faces: Pick<RoomGiven, 'floor' | 'ceiling' | 'walls' | 'things'>;
}

/** A proposal is told to so many parts of one. */
const PARTS = 1e4;
const NONE: PerBand = perBand(() => 0);

/** Times a measurement told, T20 before T30, since more bands bear it. */
export const measuredTimesOf = ({ t20S, t30S }: RoomMeasured): PerBand<Seconds | null> => perBand((band) => { const time = t20S[band] ?? t30S[band] ?? null; return time === null ? null : seconds(time); });

/** How far each surface may move; people, who are counted, do not. */
export const doubtsOf = ({ surfaces: named }: RoomInput): readonly PerBand[] => named.map(({ face, isPeople, absorption }) => (isPeople === true ? NONE : doubtOf(absorption, alsoGivenOf(face))));

function alsoGivenOf({ surface, own }: RoomFace): PerBand | undefined {
  const row = own === null && surface !== null ? surfaces[surface] : undefined;
  return row !== undefined && 'alsoGiven' in row ? row.alsoGiven : undefined;
}

/** Moves the surfaces as little as gives the times measured, within the doubt of their figures. Nothing is changed: it is a proposal. */
export function roomFitOf(given: RoomGiven, input: RoomInput, model: ReverberationModel, measured: RoomMeasured): RoomFit {
  const doubts = doubtsOf(input);
  const fits = fitAbsorption({ room: input.room, model, measured: measuredTimesOf(measured), doubts });
  const fitted = input.surfaces.map((surface, index) => ({ ...surface, doubt: doubts[index] ?? NONE, fitted: perBand((band) => Math.round(PARTS * (fits[band]?.absorption[index] ?? 0)) / PARTS) }));
  const room: readonly RoomSurface[] = fitted.map(({ areaM2, fitted: absorption }) => ({ areaM2, absorption }));
  const faceOf = (isOf: (one: NamedSurface) => boolean, face: RoomFace): RoomFace => {
    const found = fitted.find((one) => one.isPeople === undefined && isOf(one));
    return found === undefined || found.fitted.every((share, band) => Math.abs(share - (absorptionOfFace(face)[band] ?? 0)) < 0.5 / PARTS) ? face : { surface: face.surface, own: [...found.fitted] };
  };
  const sideOf = (on: NamedSurface['on'], face: RoomFace): RoomFace => faceOf((one) => one.on === on && one.thing === undefined, face);
  return {
    surfaces: fitted, outcomes: perBand((band) => fits[band]?.outcome ?? 'unmeasured'), times: reverberationOf({ ...input.room, surfaces: room }, model),
    faces: {
      floor: sideOf('floor', given.floor), ceiling: sideOf('ceiling', given.ceiling), walls: given.walls.map((face, index) => sideOf(index + 1, face)),
      things: given.things.map((thing, index) => ({ ...thing, face: faceOf((one) => one.thing === index, thing.face) })),
    },
  };
}
