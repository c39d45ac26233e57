import type { Instrument } from '#instrument';
import { GRAND_WIDTH_MM, type PlacedPiano, type PlacementQuestion, type StandingPiano, type StandingQuestion, placementsOf, standingsOf } from '#room';
import { millimetres } from '#units';
import type { RoomConsequences } from './consequences.ts';
import type { RoomGiven } from './record.ts';

const GRID_MM = 250;
const HEIGHT_MM = 800;
/** A grand’s soundboard stands out in the room, an upright’s near its wall. @source PRACTICE */
const FROM_WALL_MM = { grand: 750, upright: 350 } as const;
const MOST_PLACES = 20_000;
/** As many places as are told. */
export const PLACES_TOLD = 5;

/** A grid to be tried, and what must have room there. */
export interface PlacesQuestion {
  readonly grid: PlacementQuestion;
  readonly standing: StandingQuestion;
}

type Place = PlacedPiano | StandingPiano;
type Cased = Pick<Instrument, 'kind' | 'lengthMm'>;

/** What is tried: a grid over the room, or the rectangle around it, coarser where there would be more places than can be waited for. */
export function placesQuestionOf(given: RoomGiven, { input, midS }: RoomConsequences, { kind, lengthMm }: Cased, most = MOST_PLACES): PlacesQuestion {
  const [left, top] = cornerOf(input.points);
  const gridMm = GRID_MM * Math.max(1, Math.ceil(Math.sqrt((input.box.lengthMm * input.box.widthMm) / GRID_MM ** 2 / most)));
  const fromWallMm = millimetres(FROM_WALL_MM[kind]);
  const length = given.piano?.lengthMm ?? lengthMm;
  return {
    grid: { ...input.box, temperatureC: input.temperatureC, reverberationS: midS, gridMm: millimetres(gridMm), fromWallMm, heightAboveFloorMm: millimetres(Math.min(HEIGHT_MM, input.box.heightMm)) },
    standing: {
      points: input.points.map(({ alongMm, acrossMm }) => ({ alongMm: millimetres(alongMm - left), acrossMm: millimetres(acrossMm - top) })), fromWallMm,
      piano: kind === 'upright' || length === null ? undefined : { lengthMm: millimetres(length), widthMm: GRAND_WIDTH_MM },
    },
  };
}

/** The first places of a ranking, as they lie in the drawing of the room. */
export function placesInRoom<P extends Place>(ranked: readonly P[], { input }: Pick<RoomConsequences, 'input'>): readonly P[] {
  const [left, top] = cornerOf(input.points);
  return ranked.slice(0, PLACES_TOLD).map((place) => ({ ...place, alongMm: millimetres(place.alongMm + left), acrossMm: millimetres(place.acrossMm + top) }));
}

const cornerOf = (points: RoomConsequences['input']['points']): readonly [leftMm: number, topMm: number] => [Math.min(...points.map(({ alongMm }) => alongMm)), Math.min(...points.map(({ acrossMm }) => acrossMm))];

/** Few enough to be ranked while somebody waits for a print. */
const MOST_PRINTED = 4000;

/** The whole ranking at once, as a report tells it. */
export function placesToldOf(given: RoomGiven, known: RoomConsequences, piano: Cased) {
  const { grid, standing } = placesQuestionOf(given, known, piano, MOST_PRINTED);
  const ranked = standingsOf(placementsOf(grid), standing);
  return { best: placesInRoom(ranked, known), count: ranked.length, worstDb: ranked.at(-1)?.spreadDb ?? 0, gridMm: grid.gridMm, isBox: known.input.isBox };
}
