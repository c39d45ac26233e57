import { type PitchClass, type TemperamentName, pitchClasses } from '#instrument';
import { type PublishedCase, type PublishedFigure, exactly, figuresFrom, printedTo } from '#sources';
import { hertz, ratio } from '#units';
import { beatOf } from './beat-rates.ts';
import { stretchOf } from './octave-stretch.ts';
import { learntDropsOf } from './pitch-raise.ts';
import { PYTHAGOREAN_COMMA_CENTS, SYNTONIC_COMMA_CENTS, temperedNotesOf } from './temperament.ts';

const binary = { tolerance: 1e-10, because: 'exact but for binary' };
const string = (b: number) => ({ inharmonicityB: ratio(b) });
const stretch = (lower: number, upper: number, k: number) => (): number => stretchOf(string(lower), string(upper), k) ?? Number.NaN;
const noteOf = (name: TemperamentName, note: PitchClass) => temperedNotesOf(name).find((one) => one.note === note);
const fromC = (name: TemperamentName, note: PitchClass) => (): number => noteOf(name, note)?.fromCCents ?? Number.NaN;
const third = (name: TemperamentName, note: PitchClass) => (): number => noteOf(name, note)?.thirdCents ?? Number.NaN;
const centsOf = (over: number, under: number): number => 1200 * Math.log2(over / under);

const octave = (names: readonly string[], lower: number, upper: number, values: readonly number[]): readonly PublishedCase[] =>
  names.map((name, index) => [`stretch ${name}, cents`, `B ${String(lower)} below, ${String(upper)} above`, values[index] ?? Number.NaN, stretch(lower, upper, Number(name.slice(2)))]);

/** Frequencies from C3 to B3 for A3 = 220 Hz. */
const listed = [131.7021, 138.7479, 147.1644, 156.0914, 165, 175.6028, 184.9972, 196.885, 208.1219, 220, 234.1371, 247.5] as const;
const heard = (index: number) => (): number => 220 * 2 ** ((index - 9) / 12 + (temperedNotesOf('well1691')[index]?.offsetCents ?? Number.NaN) / 1200);

/** Ten passes, each of which loses a quarter exactly. */
const quarter = () => learntDropsOf(Array.from({ length: 10 }, (_, i) => ({ section: 'bass' as const, fromCents: -10 * i as never, setCents: 2 as never, settledCents: 2 - 0.25 * (2 + 10 * i) as never }))).find(({ section }) => section === 'bass')?.drop;

/** Figures of tuning that others worked out, beside this program's. */
export const publishedTuningFigures: readonly PublishedFigure[] = [
  ...figuresFrom('OWN', 'octaves worked by hand from the closed form', printedTo(2),
    ...octave(['2:1', '4:2', '6:3'], 3.9e-4, 1.5e-3, [1.01, 1.17, 1.42]),
    ...octave(['2:1', '4:2', '6:3'], 3e-4, 1.2e-4, [0.78, 3.57, 8.21])),
  ...figuresFrom('OWN', 'octaves worked by hand from the closed form', printedTo(1), ...octave(['4:2', '6:3'], 1.5e-3, 8e-3, [-1.1, -9.1])),
  ...figuresFrom('FLETCHER-1964', 'flexible strings: partials are whole multiples', exactly,
    ['beats 2:1, Hz', '220 and 441 Hz, B 0', 1, () => beatOf({ frequencyHz: hertz(220), string: string(0) }, { frequencyHz: hertz(441), string: string(0) }, 1) ?? Number.NaN],
    ['beats 6:3, Hz', '220 and 441 Hz, B 0', 3, () => beatOf({ frequencyHz: hertz(220), string: string(0) }, { frequencyHz: hertz(441), string: string(0) }, 3) ?? Number.NaN]),
  ...figuresFrom('BOETHIUS', 'ratios of twelve pure fifths', binary,
    ['comma, cents', '3¹²/2¹⁹', centsOf(3 ** 12, 2 ** 19), () => PYTHAGOREAN_COMMA_CENTS],
    ['C–D, cents', '9/8', centsOf(9, 8), fromC('pythagorean', 'D')],
    ['C–E, cents', '81/64', centsOf(81, 64), fromC('pythagorean', 'E')],
    ['C–E♭, cents', '32/27', centsOf(32, 27), fromC('pythagorean', 'D♯')],
    ['C–G♯, cents', '6561/4096', centsOf(6561, 4096), fromC('pythagorean', 'G♯')]),
  ...figuresFrom('AARON-1523', 'pure major thirds', binary,
    ['comma, cents', '81/80', centsOf(81, 80), () => SYNTONIC_COMMA_CENTS],
    ['C–E, cents', '5/4', centsOf(5, 4), fromC('meantoneQuarter', 'E')],
    ['C–G, cents', '⁴√5', 300 * Math.log2(5), fromC('meantoneQuarter', 'G')],
    ['E–G♯ off 5/4, cents', 'eight thirds are pure', 0, third('meantoneQuarter', 'E')],
    ['G♯–C off 5/4, cents', 'a diminished fourth: 32/25', centsOf(32, 25) - centsOf(5, 4), third('meantoneQuarter', 'G♯')]),
  ...figuresFrom('KIRNBERGER-1779', 'ratios of the pure intervals', binary,
    ['C–E, cents', '5/4', centsOf(5, 4), fromC('well1779Pure', 'E')],
    ['C–B, cents', '15/8', centsOf(15, 8), fromC('well1779Pure', 'B')],
    ['C–F♯, cents', '45/32', centsOf(45, 32), fromC('well1779Pure', 'F♯')],
    ['C–C♯, cents', '256/243', centsOf(256, 243), fromC('well1779Pure', 'C♯')]),
  ...figuresFrom('VALLOTTI-1779', 'thirds by sixths of the comma', binary,
    ['C–E wide of 5/4, cents', 'four sixths: 81/64 less 4 · P/6', centsOf(81, 80) - (4 / 6) * centsOf(3 ** 12, 2 ** 19), third('well1779Sixths', 'C')],
    ['F♯–A♯ wide of 5/4, cents', 'four pure fifths: 81/80', centsOf(81, 80), third('well1779Sixths', 'F♯')]),
  ...figuresFrom('YOUNG-1800', 'thirds by sixths of the comma', binary, ['F–A wide of 5/4, cents', 'three sixths', centsOf(81, 80) - (3 / 6) * centsOf(3 ** 12, 2 ** 19), third('well1800', 'F')]),
  ...figuresFrom('ORGAN-LIST-2001', 'table of frequencies', printedTo(4), ...listed.map((frequency, index): PublishedCase => [`${pitchClasses[index] ?? ''}, Hz`, 'the temperament of 1691, A 220 Hz', frequency, heard(index)])),
  ...figuresFrom('OWN', 'passes that lose a quarter each', binary, ['share lost', 'ten passes', 0.25, () => quarter()?.share ?? Number.NaN], ['its uncertainty', 'ten passes', 0, () => quarter()?.shareUncertainty ?? Number.NaN]),
];
