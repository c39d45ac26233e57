import { type Millimetres, millimetres } from '#units';
import { type Compass, type KeyColour, type KeyNumber, colourOf, keyCountOf, midiOf, noteNameOf } from './compass.ts';

/** One key of the drawn keyboard, in millimetres from the bass end. */
export interface DrawnKey {
  readonly key: KeyNumber;
  readonly note: string;
  readonly colour: KeyColour;
  /** Visible left edge and width: the full front for a natural, the body for a sharp. */
  readonly xMm: Millimetres;
  readonly widthMm: Millimetres;
  /** Middle of the key's tail between its neighbours: evenly spaced within C–E and F–B, so a plot point sits over its key. */
  readonly centreMm: Millimetres;
}

export interface DrawnKeyboard {
  readonly keys: readonly DrawnKey[];
  readonly widthMm: Millimetres;
  readonly naturalLengthMm: Millimetres;
  readonly sharpLengthMm: Millimetres;
}

/** Modern key measures: octave of seven naturals 164.5 mm, natural 150 mm and sharp 95 mm long before the fallboard. @source PRACTICE */
const NATURAL_WIDTH_MM = 23.5;
const NATURAL_LENGTH_MM = 150;
const SHARP_LENGTH_MM = 95;
const SHARP_WIDTH_MM = 11;

/** Naturals below each step of the octave, and each key's tail centre in natural widths: three naturals shared by five keys, four by seven. */
const NATURALS_BELOW = [0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6];
const tailCentre = (step: number): number => (step < 5 ? ((step + 0.5) * 3) / 5 : 3 + ((step - 4.5) * 4) / 7);

/** Lays out the keys of a compass in true proportion: the axis every per-key plot stands on. */
export function drawKeyboard(compass: Compass): DrawnKeyboard {
  const naturalsBefore = (midi: number): number => Math.floor(midi / 12) * 7 + (NATURALS_BELOW[midi % 12] ?? 0);
  const centreAt = (midi: number): number => (Math.floor(midi / 12) * 7 + tailCentre(midi % 12)) * NATURAL_WIDTH_MM;
  const origin = naturalsBefore(compass.firstMidi) * NATURAL_WIDTH_MM;
  const keys = Array.from({ length: keyCountOf(compass) }, (_, index): DrawnKey => {
    const key = index + 1;
    const midi = midiOf(compass, key);
    const colour = colourOf(compass, key);
    const centreMm = centreAt(midi) - origin;
    const xMm = colour === 'natural' ? naturalsBefore(midi) * NATURAL_WIDTH_MM - origin : centreMm - SHARP_WIDTH_MM / 2;
    return {
      key,
      note: noteNameOf(compass, key),
      colour,
      xMm: millimetres(xMm),
      widthMm: millimetres(colour === 'natural' ? NATURAL_WIDTH_MM : SHARP_WIDTH_MM),
      centreMm: millimetres(centreMm),
    };
  });
  const widthMm = Math.max(...keys.map((key) => key.xMm + key.widthMm));
  return { keys, widthMm: millimetres(widthMm), naturalLengthMm: millimetres(NATURAL_LENGTH_MM), sharpLengthMm: millimetres(SHARP_LENGTH_MM) };
}
