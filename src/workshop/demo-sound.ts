import type { Samples } from '#numerics';

/** An invented note of the demonstration. */
export interface DemoNote {
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  /** How much weaker partials become, an octave up. */
  readonly slopeDbPerOctave: number;
  /** Time for 60 dB of the lowest partials; higher ones die away sooner. */
  readonly decayS: number;
  readonly levelDb: number;
  /** Any number: the noise of the invented room. */
  readonly seed: number;
}

const RATE_HZ = 32_000;
const SECONDS = 2.5;
const ONSET_S = 0.1;
const HIGHEST_HZ = 15_000;
const MOST_PARTIALS = 40;
const NOISE = 3e-5;
/** Where the invented hammer strikes, as a share of the string. */
const STRIKE_SHARE = 1 / 8;

/** The sound of an invented stiff string: partials at n·f0·√(1 + B·n²) that die away, and a little noise. Not a recording of any piano. */
export function demoSoundOf({ f0Hz, inharmonicityB, slopeDbPerOctave, decayS, levelDb, seed }: DemoNote): Samples {
  const length = Math.round(SECONDS * RATE_HZ);
  const onset = Math.round(ONSET_S * RATE_HZ);
  const sound = new Float64Array(length);
  for (let n = 1; n <= MOST_PARTIALS; n += 1) {
    const frequencyHz = n * f0Hz * Math.sqrt(1 + inharmonicityB * n * n);
    if (frequencyHz > HIGHEST_HZ) break;
    const amplitude = 0.12 * 10 ** ((levelDb - slopeDbPerOctave * Math.log2(n)) / 20) * Math.max(0.05, Math.abs(Math.sin(Math.PI * n * STRIKE_SHARE)));
    addPartial(sound, onset, { amplitude, frequencyHz, fall: Math.exp((-Math.log(1000) * n ** 0.4) / (decayS * RATE_HZ)), phase: n * n });
  }
  let state = seed >>> 0;
  for (let at = 0; at < length; at += 1) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    sound[at] = (sound[at] ?? 0) + NOISE * (state / 2 ** 31 - 1);
  }
  return { sampleRateHz: RATE_HZ, channels: [sound] };
}

/** Adds one damped line, turned on sample by sample as a complex number; its beginning swells over a millisecond. */
function addPartial(sound: Float64Array, onset: number, { amplitude, frequencyHz, fall, phase }: { readonly amplitude: number; readonly frequencyHz: number; readonly fall: number; readonly phase: number }): void {
  const turn = (2 * Math.PI * frequencyHz) / RATE_HZ;
  const [turnRe, turnIm] = [fall * Math.cos(turn), fall * Math.sin(turn)];
  let [re, im] = [amplitude * Math.cos(phase), amplitude * Math.sin(phase)];
  const swell = RATE_HZ / 1000;
  for (let at = onset; at < sound.length; at += 1) {
    sound[at] = (sound[at] ?? 0) + re * Math.min(1, (at - onset) / swell);
    [re, im] = [re * turnRe - im * turnIm, re * turnIm + im * turnRe];
  }
}

/** Levels of the invented strikes from soft to loud, beside the usual one; decibels. */
const LADDER_DB = [-12, -7, -2, 3, 8] as const;
/** A harder hammer sounds brighter: so much less slope of the partials for every decibel. */
const SLOPE_PER_DB = 0.15;
/** The invented damper ends a strike within so long. */
const DAMPED_S = 0.06;

/** One invented note struck again and again from soft to loud, each strike brighter than the last and ended by its damper. */
export function demoLadderOf(note: DemoNote): Samples {
  const fade = DAMPED_S * RATE_HZ;
  const strikes = LADDER_DB.map((louderDb, index) => {
    const sound = demoSoundOf({ ...note, levelDb: note.levelDb + louderDb, slopeDbPerOctave: note.slopeDbPerOctave - SLOPE_PER_DB * louderDb, seed: note.seed + index }).channels[0] ?? new Float64Array();
    return sound.map((x, at) => x * Math.min(1, (sound.length - at) / fade));
  });
  const length = strikes.reduce((sum, strike) => sum + strike.length, 0);
  const take = new Float64Array(length);
  strikes.forEach((strike, index) => { take.set(strike, index * strike.length); });
  return { sampleRateHz: RATE_HZ, channels: [take] };
}

/** The keys of the demonstration that sound, and how, in a state; strings as worked out from the invented figures. */
export function demoNotesOf(state: 'found' | 'finished', strings: ReadonlyMap<number, { readonly f0Hz: number; readonly inharmonicityB: number }>): readonly { readonly key: number; readonly note: DemoNote }[] {
  return DEMO_KEYS.flatMap((key) => {
    const string = strings.get(key);
    if (string === undefined) return [];
    const sway = (((key * 37) % 11) - 5) / 5;
    const isWrong = state === 'found' && key === WRONG_WIRE_KEY;
    const isOverLost = state === 'found' && key >= LOST_KEYS[0] && key <= LOST_KEYS[1];
    const levelDb = 0.3 * sway;
    const harder = state === 'found' && key === HARD_KEY ? 3 : 0;
    const offsetCents = state === 'found' ? -14 + 3 * sway : 0.4 * sway;
    const height = key / 88;
    return [{
      key,
      note: {
        f0Hz: string.f0Hz * 2 ** (offsetCents / 1200), inharmonicityB: string.inharmonicityB * (isWrong ? 1.6 : 1 + 0.03 * sway),
        slopeDbPerOctave: (state === 'found' ? 4.5 : 6.5) + 2 * height + (state === 'found' ? 0.9 : 0.2) * sway - SLOPE_PER_DB * levelDb - harder,
        decayS: (9 - 7.6 * height) * (state === 'found' ? 0.75 : 1) * (isWrong ? 0.4 : isOverLost ? 0.45 : 1), levelDb, seed: key * (state === 'found' ? 7919 : 104_729),
      },
    }];
  });
}

const DEMO_KEYS: readonly number[] = [10, 16, 22, 28, 34, 37, 40, 43, 46, 52, 58, 61, 64, 67, 73, 79];
/** Those that are struck from soft to loud too. */
export const demoLadderKeys: ReadonlySet<number> = new Set([28, 40, 52]);
/** Over the lost spot of the invented bridge notes ring short. */
const LOST_KEYS = [60, 70] as const;
/** A hammer as hard as a stone, as found. */
const HARD_KEY = 46;
const WRONG_WIRE_KEY = 43;
