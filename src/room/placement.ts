import { standardDeviationOf } from '#numerics';
import { type Celsius, type Decibels, type Hertz, type Millimetres, type Seconds, decibels, hertz, millimetres } from '#units';
import { type RoomMode, type Shoebox, roomModesOf } from './modes.ts';

/** Bass of a room: what a piano’s place changes most. @source PRACTICE */
const FROM_HZ = 30;
const TO_HZ = 200;
/** Modes beyond the band still lift its upper edge. */
const MODES_TO_HZ = hertz(1.3 * TO_HZ);
/** ln(10⁶)/2: amplitude falls by e^(−δt), and by 60 dB in T. */
const DECAY = 3 * Math.LN10;

/** The room as one spring of air. */
const EVEN_PRESSURE: RoomMode = { frequencyHz: hertz(0), order: [0, 0, 0], kind: 'axial' };

/** Where in a rectangular room a piano stands, and how even the room answers it from 30 to 200 Hz: standard deviation of the level at semitone steps. */
export interface PlacedPiano {
  readonly alongMm: Millimetres;
  readonly acrossMm: Millimetres;
  readonly spreadDb: Decibels;
}

export interface PlacementQuestion extends Shoebox {
  readonly temperatureC: Celsius;
  readonly reverberationS: Seconds;
  /** Between places tried. */
  readonly gridMm: Millimetres;
  /** Middle of the soundboard from each wall, at least. */
  readonly fromWallMm: Millimetres;
  readonly heightAboveFloorMm: Millimetres;
}

/** Semitones of the bass. */
const pitches: readonly Hertz[] = Array.from({ length: Math.floor(12 * Math.log2(TO_HZ / FROM_HZ)) + 1 }, (_, step) => hertz(FROM_HZ * 2 ** (step / 12)));

const normOf = (mode: RoomMode): number => mode.order.reduce<number>((product, n) => product * (n === 0 ? 1 : 2), 1);

/** Energy a mode answers with at each pitch: ω²/((ω_n² − ω²)² + (2δω)²), δ = 3·ln 10/T. */
function answersOf(modes: readonly RoomMode[], reverberationS: Seconds): readonly Float64Array[] {
  const damping = DECAY / reverberationS;
  return modes.map((mode) => Float64Array.from(pitches, (pitch) => {
    const [own, driven] = [2 * Math.PI * mode.frequencyHz, 2 * Math.PI * pitch];
    return (normOf(mode) * driven ** 2) / ((own ** 2 - driven ** 2) ** 2 + (2 * damping * driven) ** 2);
  }));
}

const cosinesOf = (count: number, place: number, side: number): Float64Array => Float64Array.from({ length: count }, (_, n) => Math.cos((Math.PI * n * place) / side) ** 2);

const placesOf = (side: number, grid: number, fromWall: number): readonly number[] => {
  const room = side - 2 * fromWall;
  return room < 0 ? [] : Array.from({ length: Math.floor(room / grid + 1e-9) + 1 }, (_, index) => fromWall + index * grid);
};

/**
 * Tries a piano, as one point, on every place of a grid, row by row: the mean square of the sound over the whole room, Σ ε·cos²(n_xπx/L)·cos²(n_yπy/W)·
 * cos²(n_zπz/H)·ω²/((ω_n² − ω²)² + (2δω)²), and how much its level sways.
 * @source MORSE-1948 modal sum of a room, averaged over the room by the orthogonality of its modes
 */
export function* placementRowsOf(question: PlacementQuestion): Generator<{ readonly places: readonly PlacedPiano[]; readonly done: number; readonly of: number }> {
  const { lengthMm, widthMm, heightMm, temperatureC, reverberationS, gridMm, fromWallMm, heightAboveFloorMm } = question;
  const modes = [EVEN_PRESSURE, ...roomModesOf(question, temperatureC, MODES_TO_HZ)];
  const answers = answersOf(modes, reverberationS);
  const most = ([0, 1, 2] as const).map((side) => modes.reduce((highest, { order }) => Math.max(highest, order[side]), 0) + 1);
  const height = cosinesOf(most[2] ?? 1, heightAboveFloorMm, heightMm);
  const across = placesOf(widthMm, gridMm, fromWallMm).map((place) => ({ place, cosines: cosinesOf(most[1] ?? 1, place, widthMm) }));
  const rows = placesOf(lengthMm, gridMm, fromWallMm);
  for (const [index, alongMm] of rows.entries()) {
    const along = cosinesOf(most[0] ?? 1, alongMm, lengthMm);
    const spreadAt = (cosines: Float64Array) => spreadOf(modes, answers, ([x, y, z]) => (along[x] ?? 0) * (cosines[y] ?? 0) * (height[z] ?? 0));
    yield { places: across.map(({ place, cosines }) => ({ alongMm: millimetres(alongMm), acrossMm: millimetres(place), spreadDb: spreadAt(cosines) })), done: index + 1, of: rows.length };
  }
}

function spreadOf(modes: readonly RoomMode[], answers: readonly Float64Array[], shareOf: (order: RoomMode['order']) => number): Decibels {
  const energies = new Float64Array(pitches.length);
  modes.forEach(({ order }, index) => {
    const share = shareOf(order);
    const answer = answers[index];
    if (answer !== undefined) for (let step = 0; step < energies.length; step += 1) energies[step] = (energies[step] ?? 0) + share * (answer[step] ?? 0);
  });
  return decibels(standardDeviationOf(Array.from(energies, (energy) => 10 * Math.log10(energy))));
}

/** Most even first. */
export const mostEvenFirst = <Place extends PlacedPiano>(places: readonly Place[]): readonly Place[] => places.toSorted((a, b) => a.spreadDb - b.spreadDb);

/** Every place of the grid, most even first. @source MORSE-1948 */
export const placementsOf = (question: PlacementQuestion): readonly PlacedPiano[] => mostEvenFirst([...placementRowsOf(question)].flatMap(({ places }) => places));
