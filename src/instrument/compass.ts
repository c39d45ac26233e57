import { type Hertz, hertz } from '#units';

/** The notes a keyboard has, by MIDI number of the first and the last key; A0 is 21, C8 is 108. */
export interface Compass {
  readonly firstMidi: number;
  readonly lastMidi: number;
}

/** A key's number, 1 at the bass end; A0 = key 1 on an 88-note piano. */
export type KeyNumber = number;
export type KeyColour = 'natural' | 'sharp';

/** The modern keyboard of 88 notes, A0 to C8. */
export const compass88: Compass = { firstMidi: 21, lastMidi: 108 };
/** The keyboard of 85 notes, A0 to A7. */
export const compass85: Compass = { firstMidi: 21, lastMidi: 105 };

const NOTE_NAMES = ['C', 'C♯', 'D', 'D♯', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'A♯', 'B'] as const;
const SHARP_STEPS: ReadonlySet<number> = new Set([1, 3, 6, 8, 10]);

/** How many keys the compass has. */
export function keyCountOf(compass: Compass): number {
  return compass.lastMidi - compass.firstMidi + 1;
}

/** Every key number of the compass, bass to treble. */
export function keysOf(compass: Compass): readonly KeyNumber[] {
  return Array.from({ length: keyCountOf(compass) }, (_, index) => index + 1);
}

/** MIDI number of a key. */
export function midiOf(compass: Compass, key: KeyNumber): number {
  return compass.firstMidi + key - 1;
}

/** Natural or sharp: the two colours have levers of their own. */
export function colourOf(compass: Compass, key: KeyNumber): KeyColour {
  return SHARP_STEPS.has(midiOf(compass, key) % 12) ? 'sharp' : 'natural';
}

/** Scientific pitch name, `A0`, `C♯4`. */
export function noteNameOf(compass: Compass, key: KeyNumber): string {
  const midi = midiOf(compass, key);
  return `${NOTE_NAMES[midi % 12] ?? ''}${String(Math.floor(midi / 12) - 1)}`;
}

/** Key number of a note name as typed (`a0`, `C#4`, `Db4`, `D♭4`), or `undefined` when it is no note of the compass. */
export function keyOfNote(compass: Compass, typed: string): KeyNumber | undefined {
  const match = /^([a-h])([#♯b♭]?)(-?\d)$/iu.exec(typed.trim());
  if (match === null) return undefined;
  const [, letter = '', accidental = '', octave = ''] = match;
  const natural: Readonly<Record<string, number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11, h: 11 };
  const step = (natural[letter.toLowerCase()] ?? 0) + (/[#♯]/u.test(accidental) ? 1 : accidental === '' ? 0 : -1);
  const key = (Number(octave) + 1) * 12 + step - compass.firstMidi + 1;
  return key >= 1 && key <= keyCountOf(compass) ? key : undefined;
}

/** Equal-tempered frequency of a key. f = a4 · 2^((midi − 69)/12). @source ISO-16 for the default of 440 Hz */
export function equalTemperedHzOf(compass: Compass, key: KeyNumber, a4Hz = 440): Hertz {
  return hertz(a4Hz * 2 ** ((midiOf(compass, key) - 69) / 12));
}

/** The compass of an instrument, and nothing else of it. */
export function compassOf({ firstMidi, lastMidi }: Compass): Compass {
  return { firstMidi, lastMidi };
}
