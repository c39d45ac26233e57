import Meyda from 'meyda';
import { describe, expect, it } from 'vitest';
import { realSpectrumOf } from '#numerics';
import { drawnSeed } from '../testing/dice.ts';
import { type SyntheticNote, type SyntheticSpec, syntheticNote } from '../testing/synthetic.ts';
import type { HeardNote } from '../heard-note.ts';
import { centroidOf } from './band-descriptors.ts';
import { toneDescriptorsOf } from './tone-descriptors.ts';

function struck(spec: Omit<SyntheticSpec, 'seed'>): { readonly note: SyntheticNote; readonly heard: HeardNote; readonly label: string } {
  const seed = drawnSeed();
  const note = syntheticNote({ seed, inharmonicityB: 4e-4, ...spec });
  return { note, label: `seed ${String(seed)} ${JSON.stringify(spec)}`, heard: { samples: note.samples, onsetS: note.onsetS, f0Hz: spec.f0Hz, partials: note.partialsHz.map((frequencyHz, index) => ({ n: index + 1, frequencyHz })) } };
}

/** Amplitudes the window sees: √ of the mean power of each line under the same Hann window. */
function trueAmplitudes(note: SyntheticNote): readonly number[] {
  const steps = 2000;
  return note.partialsHz.map((frequencyHz, index) => {
    if (frequencyHz >= 10_000 || index >= 40) return 0;
    let [power, weight] = [0, 0];
    for (let at = 0; at < steps; at++) {
      const hann = Math.sin((Math.PI * (at + 0.5)) / steps) ** 4;
      const t = 0.01 + (0.5 * (at + 0.5)) / steps;
      weight += hann;
      for (const list of note.lines) for (const line of list) if (line.n === index + 1) power += hann * (line.amplitude * Math.exp(-line.dampingPerS * t)) ** 2;
    }
    return Math.sqrt(power / weight);
  });
}

describe('descriptors of partials, against the lines the sound was made of', () => {
  it.each([55, 110, 220, 440, 880])('at %i Hz', (f0Hz) => {
    const { note, heard, label } = struck({ f0Hz, snrDb: 70, strikePoint: 0 });
    const amplitudes = trueAmplitudes(note);
    const sum = amplitudes.reduce((all, x) => all + x, 0);
    const found = toneDescriptorsOf(heard);
    expect(Math.abs((found?.harmonicCentroid?.value ?? 0) / (amplitudes.reduce((all, x, index) => all + (index + 1) * x, 0) / sum) - 1), label).toBeLessThan(0.01);
    expect(Math.abs((found?.tristimulus?.first.value ?? 0) - (amplitudes[0] ?? 0) / sum), label).toBeLessThan(0.005);
    expect(Math.abs((found?.tristimulus?.high.value ?? 0) - amplitudes.slice(4).reduce((all, x) => all + x, 0) / sum), label).toBeLessThan(0.005);
    const points = amplitudes.slice(0, 24).flatMap((x, index) => (x === 0 ? [] : [[Math.log2(index + 1), 20 * Math.log10(x)] as const]));
    const [meanX, meanY] = [0, 1].map((axis) => points.reduce((all, point) => all + (point[axis] ?? 0), 0) / points.length);
    const slope = points.reduce((all, [x, y]) => all + (x - (meanX ?? 0)) * (y - (meanY ?? 0)), 0) / points.reduce((all, [x]) => all + (x - (meanX ?? 0)) ** 2, 0);
    expect(Math.abs((found?.slopeDbPerOctave?.value ?? 0) - slope), label).toBeLessThan(0.3);
    expect(found?.slopeDbPerOctave?.partials, label).toBe(points.length);
  });
});

it('gain changes no descriptor by a thousandth', () => {
  const { heard, label } = struck({ f0Hz: 220, snrDb: 40, knockDb: -15 });
  const quieter = { ...heard, samples: { ...heard.samples, channels: heard.samples.channels.map((channel) => channel.map((x) => x / 31)) } };
  const [a, b] = [heard, quieter].map(toneDescriptorsOf);
  const figures = (found: typeof a) => [found?.harmonicCentroid, found?.centroidHz, found?.balanceDb, found?.tristimulus?.high, found?.slopeDbPerOctave, found?.sharpnessAcum, found?.attackNoiseDb, found?.betweenPartialsDb].map((figure) => figure?.value ?? Number.NaN);
  for (const [index, value] of figures(a).entries()) expect(Math.abs((figures(b)[index] ?? 0) / value - 1), label).toBeLessThan(0.001);
});

it('the centroid is the one meyda has, bins turned into hertz', () => {
  const { heard: { samples: { channels: [channel = new Float64Array()], sampleRateHz } } } = struck({ f0Hz: 330 });
  const size = 8192;
  const part = channel.subarray(12_000, 12_000 + size);
  const library = Meyda as unknown as { bufferSize: number; sampleRate: number; windowingFunction: string; readonly extract: (feature: string, signal: Float32Array) => unknown };
  library.bufferSize = size;
  library.sampleRate = sampleRateHz;
  library.windowingFunction = 'rect';
  const bins = Number(library.extract('spectralCentroid', Float32Array.from(part)));
  const { re, im } = realSpectrumOf(part);
  const power = re.map((x, bin) => x * x + (im[bin] ?? 0) ** 2);
  const ours = centroidOf({ power, binHz: sampleRateHz / size }, { bands: [] }, 0, sampleRateHz / 2).value;
  expect(Math.abs(ours / ((bins * sampleRateHz) / size) - 1)).toBeLessThan(0.002);
});

describe('noise of the attack', () => {
  it('rises with the knock, dB for dB once it stands clear of the tone', () => {
    for (const f0Hz of [262, 523, 1047]) {
      const seed = drawnSeed();
      const at = (knockDb: number): number => {
        const note = syntheticNote({ seed, f0Hz, inharmonicityB: 4e-4, knockDb });
        return toneDescriptorsOf({ samples: note.samples, onsetS: note.onsetS, f0Hz, partials: note.partialsHz.map((frequencyHz, index) => ({ n: index + 1, frequencyHz })) })?.attackNoiseDb?.value ?? Number.NaN;
      };
      const [soft, loud] = [at(-18), at(-8)];
      expect(loud - soft, `${String(f0Hz)} Hz seed ${String(seed)}`).toBeGreaterThan(8);
      expect(loud - soft, `${String(f0Hz)} Hz seed ${String(seed)}`).toBeLessThan(10.5);
    }
  });

  it('is refused in the bass, where the window does not part partials', () => {
    expect(toneDescriptorsOf(struck({ f0Hz: 110 }).heard)?.refusals).toContainEqual(expect.objectContaining({ figure: 'attackNoiseDb', reason: 'below-range', found: 110, needed: 200 }));
  });
});

describe('refusals', () => {
  it('figures of partials above C6', () => {
    const found = toneDescriptorsOf(struck({ f0Hz: 1245 }).heard);
    expect(found?.harmonicCentroid).toBeUndefined();
    for (const figure of ['harmonicCentroid', 'tristimulus', 'slopeDbPerOctave']) expect(found?.refusals).toContainEqual(expect.objectContaining({ figure, reason: 'above-range' }));
    expect(found?.balanceDb).toBeDefined();
  });

  it('bands a low sampling rate leaves out', () => {
    const found = toneDescriptorsOf(struck({ f0Hz: 220, sampleRateHz: 22_050, partialsBelowHz: 10_000 }).heard);
    expect(found?.refusals).toContainEqual({ figure: 'balanceDb', reason: 'narrow-band', found: 22_050, needed: 32_000 });
    expect(found?.harmonicCentroid).toBeDefined();
  });

  it('the balance where the treble drowns in noise', () => {
    const found = toneDescriptorsOf(struck({ f0Hz: 220, snrDb: 8, slopeDbPerOctave: 14 }).heard);
    expect(found?.refusals).toContainEqual(expect.objectContaining({ figure: 'balanceDb', reason: 'in-noise' }));
  });

  it('a sound shorter than the window', () => {
    const { heard } = struck({ f0Hz: 220 });
    expect(toneDescriptorsOf({ ...heard, endS: heard.onsetS + 0.4 })).toBeUndefined();
  });
});
