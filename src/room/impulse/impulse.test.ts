import { type Samples, seededRandom } from '#numerics';
import { hertz, seconds } from '#units';
import { describe, expect, it } from 'vitest';
import { midbandOf, octaveBands } from '../bands.ts';
import { decayOf, energiesOf } from '../testing/image-sources.ts';
import { octaveSectionsOf, filteredBackwards } from './octave-filter.ts';
import { roomImpulseOf } from './room-impulse.ts';
import { sweepOf } from './sweep.ts';

const RATE = 24_000;

const drawn = (): number => Math.floor(Math.random() * 2 ** 32);
const diceOf = (seed: number): (() => number) => seededRandom(seed).uniform;
const gauss = (dice: () => number): number => Math.sqrt(-2 * Math.log(dice())) * Math.cos(2 * Math.PI * dice());

/** White noise that dies away in T after its onset, over a floor so far below its beginning. */
function clap(time: number, floorDb: number, lengthS: number, dice: () => number): Float64Array {
  return Float64Array.from({ length: Math.round(lengthS * RATE) }, (_, at) => 0.3 * gauss(dice) * 10 ** ((-3 * at) / RATE / time) + 0.3 * 10 ** (-floorDb / 20) * gauss(dice));
}
const silence = (lengthS: number, floorDb: number, dice: () => number): Float64Array => Float64Array.from({ length: Math.round(lengthS * RATE) }, () => 0.3 * 10 ** (-floorDb / 20) * gauss(dice));
const laid = (...parts: readonly Float64Array[]): Samples => {
  const all = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  parts.reduce((at, part) => { all.set(part, at); return at + part.length; }, 0);
  return { sampleRateHz: RATE, channels: [all] };
};

describe('an octave filter', () => {
  // Half power at the edges of the octave, as a Butterworth filter has it; a tone an octave away is weaker by more than 15 dB.
  it.each(octaveBands.slice(0, 5).map((_, index) => index))('of band %d lets its middle through, halves the edges and holds back the next octaves', (index) => {
    const mid = midbandOf(index);
    const through = (frequency: number): number => {
      const tone = Float64Array.from({ length: 4 * RATE }, (_, at) => Math.sin((2 * Math.PI * frequency * at) / RATE));
      const passed = filteredBackwards(tone, mid, RATE).subarray(RATE, 3 * RATE);
      return 10 * Math.log10(2 * passed.reduce((sum, value) => sum + value * value, 0) / passed.length);
    };
    expect(Math.abs(through(mid))).toBeLessThan(0.05);
    for (const edge of [10 ** 0.15, 10 ** -0.15]) expect(Math.abs(through(mid * edge) + 10 * Math.log10(2))).toBeLessThan(0.1);
    expect(through(mid / 2)).toBeLessThan(-15);
    if (mid * 2 < RATE / 2) expect(through(mid * 2)).toBeLessThan(-15);
    expect(octaveSectionsOf(mid, RATE)).toHaveLength(3);
  });
});

describe('a room by its claps', () => {
  // Closed form: the noise was made to fall by 60 dB in T. A clap of noise scatters by about √(1/(B·T)); several claps are averaged.
  it.each([0.4, 0.9, 1.8])('rings %d s, as it was made to', (time) => {
    const seed = drawn();
    const dice = diceOf(seed);
    const take = laid(silence(0.5, 65, dice), ...Array.from({ length: 4 }, () => clap(time, 65, Math.max(1.2, 1.3 * time), dice)));
    const { impulses, bands } = roomImpulseOf(take);
    expect(impulses, `seed ${String(seed)}`).toBe(4);
    for (const { bandHz, t20, t30 } of bands) {
      const allowed = 4 * Math.sqrt(1 / (0.707 * bandHz * time * 4)) + 0.01;
      expect(Math.abs((t20?.seconds ?? Number.NaN) / time - 1), `T20 at ${String(bandHz)}, seed ${String(seed)}`).toBeLessThan(allowed);
      expect(Math.abs((t30?.seconds ?? Number.NaN) / time - 1), `T30 at ${String(bandHz)}, seed ${String(seed)}`).toBeLessThan(allowed);
    }
  });

  it('tells T20 and not T30 where the noise is too near, and neither where it is nearer still', () => {
    const dice = diceOf(drawn());
    const over = (floorDb: number) => roomImpulseOf(laid(silence(0.5, floorDb, dice), clap(0.8, floorDb, 1.5, dice))).bands.at(-2);
    expect(over(40)).toMatchObject({ bandHz: 2000, t20: { count: 1 } });
    expect(over(40)?.t30).toBeUndefined();
    expect(over(28)?.t20).toBeUndefined();
    expect(over(28)?.each[0]?.doubts).toContain('too-much-noise-for-t20');
  });

  it('finds nothing in silence and in talk-like hum, and says so', () => {
    const dice = diceOf(drawn());
    expect(roomImpulseOf(laid(silence(2, 60, dice))).impulses).toBe(0);
  });

  it('says that a decay of two slopes is bent', () => {
    const dice = diceOf(drawn());
    const both = Float64Array.from({ length: 3 * RATE }, (_, at) => gauss(dice) * (0.3 * 10 ** ((-3 * at) / RATE / 0.4) + 0.01 * 10 ** ((-3 * at) / RATE / 2) + 0.3 * 10 ** (-75 / 20)));
    const band = roomImpulseOf(laid(silence(0.3, 75, dice), both)).bands.find(({ bandHz }) => bandHz === 1000);
    expect(band?.each[0]?.doubts).toContain('bent');
  });

  it('hears in a box of mirrors the decay its mirror images have', () => {
    const dice = diceOf(drawn());
    const box = { sides: [6, 5, 3] as const, absorption: 0.25, speedMPerS: 343.2 };
    const energies = energiesOf(box, [1.1, 1.3, 1.2], [4.4, 3.2, 1.6], 0.8, 1 / RATE);
    // Each image with a sign of its own, so that the sum of squares stays the sum of energies.
    const sound = Float64Array.from(energies, (energy) => Math.sqrt(energy) * (dice() < 0.5 ? -1 : 1));
    const loudest = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const take = laid(silence(0.3, 200, dice), sound.map((value) => (0.9 * value) / loudest));
    const told = roomImpulseOf(take).bands.filter(({ bandHz }) => bandHz >= 500).map(({ t20 }) => t20?.seconds ?? Number.NaN);
    const expected = decayOf(energies, 1 / RATE);
    for (const time of told) expect(Math.abs(time / expected - 1)).toBeLessThan(0.15);
  });
});

describe('a room by a sweep', () => {
  it('rings as long as by a clap', () => {
    const dice = diceOf(drawn());
    const sweep = { fromHz: hertz(60), toHz: hertz(9000), lengthS: seconds(1.5) };
    const played = sweepOf(sweep, RATE);
    const response = clap(0.7, 200, 1, dice);
    const heard = convolved(played, response);
    const take = laid(silence(0.3, 90, dice), heard.map((value, at) => value / 30 + (0.3 * 10 ** (-90 / 20)) * Math.sin(at * at)), silence(0.5, 90, dice));
    const { impulses, bands } = roomImpulseOf(take, sweep);
    expect(impulses).toBe(1);
    for (const { bandHz, t20 } of bands.filter((band) => band.bandHz <= 4000)) expect(Math.abs((t20?.seconds ?? Number.NaN) / 0.7 - 1), String(bandHz)).toBeLessThan(4 * Math.sqrt(1 / (0.707 * bandHz * 0.7)) + 0.02);
  });
});

/** Plain convolution, thinned to the samples that count. */
function convolved(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length + b.length - 1);
  for (let j = 0; j < b.length; j += 1) {
    const weight = b[j] ?? 0;
    for (let i = 0; i < a.length; i += 1) out[i + j] = (out[i + j] ?? 0) + weight * (a[i] ?? 0);
  }
  return out;
}
