import { describe, expect, it } from 'vitest';
import { compass88, equalTemperedHzOf } from '#instrument';
import { type Dice, diceOf, drawnSeed } from '../testing/dice.ts';
import { syntheticNote } from '../testing/synthetic.ts';
import { recordedStrike } from '../testing/recordings.ts';
import { expectedInharmonicityOf } from '../comb.ts';
import { takeOf } from './take.ts';

const RATE = 44_100;

interface Event {
  readonly atS: number;
  readonly sound: Float64Array;
}

/** One channel in which everything lies where it was put. */
function laid(events: readonly Event[], dice: Dice, hiss = 1e-4): { readonly sampleRateHz: number; readonly channels: readonly Float64Array[] } {
  const length = Math.max(...events.map(({ atS, sound }) => Math.round(atS * RATE) + sound.length)) + RATE / 2;
  const out = Float64Array.from({ length }, () => hiss * dice.normal());
  for (const { atS, sound } of events) for (let at = 0; at < sound.length; at++) out[Math.round(atS * RATE) + at] = (out[Math.round(atS * RATE) + at] ?? 0) + (sound[at] ?? 0);
  return { sampleRateHz: RATE, channels: [out] };
}

/** A key held for a while and let go: after that it dies in a tenth of a second. */
function held(key: number, heldS: number, peak: number, dice: Dice): Float64Array {
  const f0Hz = Number(equalTemperedHzOf(compass88, key, 440)) * 2 ** (dice.between(-5, 5) / 1200);
  const { samples } = syntheticNote({ seed: Math.floor(dice.even() * 2 ** 31), f0Hz, inharmonicityB: expectedInharmonicityOf(f0Hz), seconds: heldS + 0.6, leadS: 0, peak, sampleRateHz: RATE, knockDb: -12, unisonCents: [-0.2, 0.2] });
  return (samples.channels[0] ?? new Float64Array()).map((x, at) => x * Math.exp(-Math.max(0, at / RATE - heldS) / 0.1));
}

const knock = (dice: Dice): Float64Array => Float64Array.from({ length: RATE * 0.3 }, (_, at) => 0.3 * dice.normal() * Math.exp(-at / (0.02 * RATE)));

/** Noise in syllables through wandering resonances over a wandering buzz. */
function speech(dice: Dice): Float64Array {
  let [phase, low, band] = [0, 0, 0];
  return Float64Array.from({ length: RATE * 1.5 }, (_, at) => {
    const t = at / RATE;
    phase += (120 + 25 * Math.sin(9 * t) + 12 * Math.sin(31 * t)) / RATE;
    const source = (phase % 1) - 0.5 + 0.3 * dice.normal();
    const centre = 2 * Math.sin((Math.PI * (700 + 400 * Math.sin(7 * t))) / RATE);
    band += centre * (source - low - 0.2 * band);
    low += centre * band;
    return 0.05 * band * Math.max(0, Math.sin(2 * Math.PI * 3.5 * t));
  });
}

describe('a made-up walk', () => {
  it('is told note by note, with a skipped key, a doubled key, a knock and talk', () => {
    const seed = drawnSeed();
    const dice = diceOf(seed);
    const wanted = [28, 29, 30, 31, 33, 34, 35, 35, 36, 37, 38, 39, 40];
    const events: Event[] = [];
    let at = 0.5;
    const starts: number[] = [];
    for (const [index, key] of wanted.entries()) {
      const heldS = dice.between(1.4, 2.2);
      starts.push(at);
      events.push({ atS: at, sound: held(key, heldS, dice.between(0.15, 0.5), dice) });
      // The next key comes while the last is still dying, now and then.
      at += heldS + (dice.even() < 0.4 ? 0.05 : dice.between(0.2, 0.9));
      if (index === 4) { events.push({ atS: at + 0.5, sound: knock(dice) }); at += 1.2; }
      if (index === 9) { events.push({ atS: at + 0.5, sound: speech(dice) }); at += 2.4; }
    }
    const take = takeOf(laid(events, dice));
    const told = `seed ${String(seed)} ${JSON.stringify(take.notes.map(({ startS, note }) => [note.key, startS.toFixed(2)]))} wanted ${JSON.stringify(wanted.map((key, i) => [key, starts[i]?.toFixed(2)]))} doubtful ${JSON.stringify(take.doubtful)}`;
    expect(take.notes.map(({ note }) => note.key), told).toEqual(wanted);
    for (const [index, { startS }] of take.notes.entries()) expect(Math.abs(startS - (starts[index] ?? 0)), told).toBeLessThan(0.02);
    expect(take.missingKeys, told).toEqual([32]);
    expect(take.duplicateKeys, told).toEqual([35]);
    expect(take.kind).toBe('walk');
    expect(take.doubtful.some(({ doubt }) => doubt === 'nothing-heard'), told).toBe(true);
  });
});

describe('a sound too short to tell a note by', () => {
  it('is told as doubtful, with its place, and names no key', () => {
    const seed = drawnSeed();
    const dice = diceOf(seed);
    const cut = held(40, 3, 0.3, dice).subarray(0, 0.33 * RATE);
    const take = takeOf(laid([{ atS: 0.5, sound: held(30, 1.8, 0.3, dice) }, { atS: 3.2, sound: cut }, { atS: 3.55, sound: held(31, 1.8, 0.3, dice) }], dice));
    expect(take.notes.map(({ note }) => note.key), `seed ${String(seed)}`).toEqual([30, 31]);
    expect(take.doubtful.some(({ doubt, reason, startS }) => doubt === 'nothing-heard' && reason === 'short' && Math.abs(startS - 3.2) < 0.02), `seed ${String(seed)} ${JSON.stringify(take.doubtful)}`).toBe(true);
  });
});

describe('a made-up ladder', () => {
  it('gives every strike with its level, softest to loudest', () => {
    const seed = drawnSeed();
    const dice = diceOf(seed);
    const peaks = [0.02, 0.04, 0.08, 0.16, 0.32];
    const events = [40, 52].flatMap((key, row) => peaks.map((peak, index) => ({ atS: 0.4 + 2.6 * (row * peaks.length + index), sound: held(key, 1.8, peak, dice) })));
    const take = takeOf(laid(events, dice));
    const told = `seed ${String(seed)} ${JSON.stringify(take.notes.map(({ note, loudnessDb }) => [note.key, loudnessDb]))}`;
    expect(take.notes.map(({ note }) => note.key), told).toEqual([...peaks.map(() => 40), ...peaks.map(() => 52)]);
    expect(take.kind, told).toBe('ladder');
    expect(take.duplicateKeys, told).toEqual([]);
    for (const [index, { loudnessDb }] of take.notes.entries()) {
      const first = (events[index]?.sound ?? new Float64Array()).subarray(0, RATE / 2);
      const own = 10 * Math.log10(first.reduce((sum, x) => sum + x * x, 0) / first.length);
      expect(Math.abs(loudnessDb - own), told).toBeLessThan(0.5);
    }
  });
});

it('a take of recorded strikes, a minor third apart, one left out', async () => {
  const dice = diceOf(drawnSeed());
  const names = [['C3', 28], ['D#3', 31], ['F#3', 34], ['C4', 40], ['D#4', 43], ['F#4', 46], ['A4', 49]] as const;
  const events: Event[] = [];
  let at = 0.3;
  for (const [name] of names) {
    const { sampleRateHz, channels: [channel = new Float64Array()] } = await recordedStrike(name, 11);
    const length = Math.round(2.2 * sampleRateHz);
    const cut = channel.subarray(0, length).map((x, index) => x * Math.min(1, (length - index) / (0.15 * sampleRateHz)));
    events.push({ atS: at * (sampleRateHz / RATE), sound: cut });
    at += 2.2 + dice.between(0, 0.5);
  }
  const take = takeOf({ ...laid(events, dice, 2e-5), sampleRateHz: 48_000 });
  const told = JSON.stringify(take.notes.map(({ startS, note }) => [note.key, startS]));
  expect(take.notes.map(({ note }) => note.key), told).toEqual(names.map(([, key]) => key));
  expect(take.missingKeys, told).toEqual([37]);
});

it('silence and hiss hold no notes', () => {
  const dice = diceOf(drawnSeed());
  expect(takeOf({ sampleRateHz: RATE, channels: [new Float64Array(5 * RATE)] }).notes).toEqual([]);
  expect(takeOf({ sampleRateHz: RATE, channels: [Float64Array.from({ length: 5 * RATE }, () => 0.1 * dice.normal())] }).notes).toEqual([]);
});
