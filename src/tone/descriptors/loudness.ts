import { loudnessTables as table } from './loudness-tables.ts';

/** A straight piece of the pattern of specific loudness over the critical-band rate. */
interface Piece {
  readonly fromBark: number;
  readonly toBark: number;
  readonly from: number;
  readonly to: number;
}

/** Loudness of a steady sound, and its pattern over the critical-band rate. */
export interface Loudness {
  readonly sone: number;
  /** Specific loudness at 0.1, 0.2 … 24 Bark, sone per Bark. */
  readonly specific: readonly number[];
}

/** How many third-octave bands are asked for: 25 Hz to 12.5 kHz. */
export const THIRD_OCTAVES = 28;

/**
 * Loudness of a steady sound in a free field from its third-octave levels, 25 Hz to 12.5 kHz, in dB re 20 µPa: core loudness of each
 * critical band, Nc = 0.0635·10^(0.025·LTQ)·((1 − s + s·10^((LE − LTQ)/10))^0.25 − 1) with s = 0.25, masked upwards along the slopes of
 * the table; loudness is the area.
 * @source ISO-532-1 method 1
 */
export function steadyLoudnessOf(levelsDb: readonly number[]): Loudness {
  const pieces = patternOf(coreLoudnessOf(levelsDb));
  const sone = pieces.reduce((sum, { fromBark, toBark, from, to }) => sum + ((toBark - fromBark) * (from + to)) / 2, 0);
  let place = 0;
  const specific = Array.from({ length: 240 }, (_, index) => {
    const bark = (index + 1) / 10;
    while (place < pieces.length - 1 && (pieces[place]?.toBark ?? 24) < bark - 1e-9) place += 1;
    const piece = pieces[place];
    if (piece === undefined || piece.toBark === piece.fromBark) return 0;
    return piece.from + ((piece.to - piece.from) * (bark - piece.fromBark)) / (piece.toBark - piece.fromBark);
  });
  return { sone, specific };
}

/** Core loudness of the 20 critical bands, and the nought above them. */
function coreLoudnessOf(levelsDb: readonly number[]): readonly number[] {
  const low = levelsDb.slice(0, 11).map((level, band) => 10 ** (reducedDb(level, band) / 10));
  const sum = (from: number, to: number): number => 10 * Math.log10(low.slice(from, to).reduce((all, x) => all + x, 0));
  const bands = [sum(0, 6), sum(6, 9), sum(9, 11), ...levelsDb.slice(11, THIRD_OCTAVES)];
  const core = bands.map((level, band) => {
    const threshold = table.thresholdDb[band] ?? 0;
    const reached = level - (table.earDb[band] ?? 0);
    if (reached <= threshold) return 0;
    const excess = reached - (table.bandwidthDb[band] ?? 0) - threshold;
    return Math.max(0, 0.0635 * 10 ** (0.025 * threshold) * ((0.75 + 0.25 * 10 ** (excess / 10)) ** 0.25 - 1));
  });
  const [first = 0, ...rest] = core;
  return [first * Math.min(1, 0.4 + 0.32 * first ** 0.2), ...rest, 0];
}

/** Level of one of the lowest bands with the reduction that holds at it. */
function reducedDb(levelDb: number, band: number): number {
  const last = table.lowRangesDb.length - 1;
  const row = table.lowRangesDb.findIndex((range, index) => index === last || levelDb <= range - (table.lowDb[index]?.[band] ?? 0));
  return levelDb + (table.lowDb[row]?.[band] ?? 0);
}

/** The pattern: in each band its core loudness, or what still rings over from below, falling along the slopes. */
function patternOf(core: readonly number[]): readonly Piece[] {
  const pieces: Piece[] = [];
  let [bark, height] = [0, 0];
  for (const [band, upper] of table.upperBark.entries()) {
    const own = core[band] ?? 0;
    while (bark < upper) {
      const piece = height > own ? fallingPiece({ bark, height, own, band, upper }) : { fromBark: bark, toBark: upper, from: own, to: own };
      pieces.push(piece);
      [bark, height] = [piece.toBark, piece.to];
    }
  }
  return pieces;
}

interface Fall {
  readonly bark: number;
  readonly height: number;
  readonly own: number;
  readonly band: number;
  readonly upper: number;
}

function fallingPiece({ bark, height, own, band, upper }: Fall): Piece {
  const range = table.slopeRanges.findIndex((least) => least < height);
  const slope = table.slopes[range]?.[Math.min(Math.max(band - 1, 0), 7)] ?? 1;
  const floor = Math.max(table.slopeRanges[range] ?? 0, own);
  const reach = bark + (height - floor) / slope;
  if (reach <= upper) return { fromBark: bark, toBark: reach, from: height, to: floor };
  return { fromBark: bark, toBark: upper, from: height, to: height - (upper - bark) * slope };
}
