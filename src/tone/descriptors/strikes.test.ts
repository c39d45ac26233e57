import { describe, expect, it } from 'vitest';
import { recordedLayers, recordedStrike } from '../testing/recordings.ts';
import { kendallTauOf, knownStringOf, strikeOf } from '../testing/strikes.ts';
import { toneDescriptorsOf } from './tone-descriptors.ts';

/** Every second of the sixteen strikes of some keys; bench/tone.mjs takes more of them. */
const layers = recordedLayers.filter((layer) => layer % 2 === 0);

describe('the strikes of the open set, soft to loud: brightness rises with the strike (bar: Kendall τ of 0.9)', () => {
  it.each(['A2', 'D#4', 'F#5', 'C6', 'A6'])('%s', async (note) => {
    const string = knownStringOf(await recordedStrike(note, 10));
    const found = await Promise.all(layers.map(async (layer) => {
      const heard = await strikeOf(note, layer, string);
      return { tone: toneDescriptorsOf(heard) };
    }));
    const balances = found.flatMap(({ tone }) => tone?.balanceDb?.value ?? []);
    const centroids = found.flatMap(({ tone }) => tone?.harmonicCentroid?.value ?? []);
    expect(balances).toHaveLength(layers.length);
    expect(kendallTauOf(balances)).toBeGreaterThanOrEqual(0.9);
    expect(centroids).toHaveLength(note === 'A6' ? 0 : layers.length);
    if (centroids.length > 0) expect(kendallTauOf(centroids)).toBeGreaterThanOrEqual(0.9);
  });
});
