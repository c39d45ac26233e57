import { type PublishedFigure, type Tolerance, figuresFrom } from '#sources';
import { steadyLoudnessOf } from './loudness.ts';
import { sharpnessOf, thirdOctavePowersOf } from './sharpness.ts';

/** Third-octave levels of a band of even noise, or of a tone where it is no wider than a hertz. */
function levelsOf(fromHz: number, toHz: number, levelDb: number): readonly number[] {
  const power = new Float64Array(20_001);
  for (let bin = fromHz; bin <= toHz; bin++) power[bin] = 10 ** (levelDb / 10) / (toHz - fromHz + 1);
  return thirdOctavePowersOf(power, 1).map((value) => 10 * Math.log10(Math.max(value, 1e-6)));
}

/** Sharpness of a band of noise made as loud as the standard’s, 4 sone. */
function sharpnessAt4Sone(fromHz: number, toHz: number): number {
  let [low, high] = [20, 100];
  for (let turn = 0; turn < 40; turn++) {
    const middle = (low + high) / 2;
    if (steadyLoudnessOf(levelsOf(fromHz, toHz, middle)).sone < 4) low = middle;
    else high = middle;
  }
  return sharpnessOf(steadyLoudnessOf(levelsOf(fromHz, toHz, low)));
}

const FIRST_SPECTRUM = [-60, -60, 78, 79, 89, 72, 80, 89, 75, 87, 85, 79, 86, 80, 71, 70, 72, 71, 72, 74, 69, 65, 67, 77, 68, 58, 45, 30];
const share = (figure: number): Tolerance => ({ tolerance: 0.05 * figure, because: 'the standard allows 5 %; our filters are the ideal ones' });
const acum = (figure: number): Tolerance => ({ tolerance: Math.max(0.05 * figure, 0.05), because: 'the standard allows 5 % or 0.05 acum' });

/** Loudness and sharpness of the test sounds of the standards. */
export const publishedSoundFigures: readonly PublishedFigure[] = [
  ...figuresFrom('ISO-532-1', 'annex B.2, test signal 1', { tolerance: 0.005, because: 'tables only, no filters; printed to 3 decimals, rounded to 2 above 16 sone' },
    ['loudness, sone', '28 third-octave levels', 83.296, () => steadyLoudnessOf(FIRST_SPECTRUM).sone]),
  ...figuresFrom('ISO-532-1', 'annex B.3, test signal 2', share(14.655), ['loudness, sone', 'tone of 250 Hz at 80 dB', 14.655, () => steadyLoudnessOf(levelsOf(250, 250, 80)).sone]),
  ...figuresFrom('ISO-532-1', 'annex B.3, test signal 3', share(4.019), ['loudness, sone', 'tone of 1 kHz at 60 dB', 4.019, () => steadyLoudnessOf(levelsOf(1000, 1000, 60)).sone]),
  ...figuresFrom('ISO-532-1', 'annex B.3, test signal 4', share(1.549), ['loudness, sone', 'tone of 4 kHz at 40 dB', 1.549, () => steadyLoudnessOf(levelsOf(4000, 4000, 40)).sone]),
  ...figuresFrom('DIN-45692', 'reference sound', acum(1), ['sharpness, acum', 'noise 920 to 1080 Hz at 60 dB', 1, () => sharpnessOf(steadyLoudnessOf(levelsOf(920, 1080, 60)))]),
  ...([[200, 300, 0.38], [920, 1080, 1], [2320, 2700, 1.78], [3700, 4400, 2.82]] as const).flatMap(([fromHz, toHz, expected]) =>
    figuresFrom('DIN-45692', 'test sounds, a critical band of noise at 4 sone', acum(expected), ['sharpness, acum', `noise ${String(fromHz)} to ${String(toHz)} Hz`, expected, () => sharpnessAt4Sone(fromHz, toHz)])),
];
