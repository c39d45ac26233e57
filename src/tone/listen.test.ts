import { describe, expect, it } from 'vitest';
import { listenToNote } from '#tone';
import { missOf, noteOfKey, rmsOf, testDice } from './testing/compass-note.ts';
import { cramerRaoOf } from './testing/cramer-rao.ts';
import { babble } from './testing/voice.ts';

const times = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index);
const mono = (channel: Float64Array) => ({ sampleRateHz: 48_000, channels: [channel] });

describe('a made-up note', () => {
  const clean = [[1, 40], [64, 40], [25, 20], [88, 20]] as const;
  it.each(clean)('of key %i at %i dB is heard within 0.01 cents and 0.05 per cent (at 20 dB 0.05 and 0.4), and mean errors stay within 5 times the Cramér–Rao bound', (key, snrDb) => {
    const { dice, said } = testDice();
    const misses = times(64).flatMap((trial) => {
      const made = noteOfKey(dice, key, { snrDb, seconds: key === 1 ? 4.6 : 3, partials: 24 });
      const miss = missOf(made);
      if (miss === undefined) return [];
      const bound = trial > 0 ? undefined : cramerRaoOf({ lines: made.lines[0] ?? [], f0Hz: made.f0Hz, inharmonicityB: made.inharmonicityB, noise: made.noise, onsetS: made.onsetS, fromS: miss.note.windowFromS, toS: miss.note.windowToS, sampleRateHz: 48_000 });
      return [{ ...miss, bound }];
    });
    expect(misses.length, said).toBeGreaterThanOrEqual(key === 88 ? 55 : 61);
    const bound = misses.find((miss) => miss.bound !== undefined)?.bound;
    expect(Math.max(...misses.map(({ cents }) => Math.abs(cents))), said).toBeLessThan(snrDb === 40 ? 0.01 : 0.05);
    expect(Math.max(...misses.map(({ relativeB }) => Math.abs(relativeB))), said).toBeLessThan(snrDb === 40 ? 5e-4 : 4e-3);
    expect(rmsOf(misses.map(({ cents }) => cents)) / (bound?.f0Cents ?? 0), said).toBeLessThan(5);
    expect(rmsOf(misses.map(({ relativeB }) => relativeB)) / (bound?.relativeB ?? 0), said).toBeLessThan(5);
  }, 600_000);

  it('with strings 0.6 cents apart is heard within 0.5 cents and 1.5 %', () => {
    const { dice, said } = testDice();
    for (const key of [13, 25, 37, 49, 61, 73]) {
      const miss = missOf(noteOfKey(dice, key, { snrDb: 40, unisonCents: [-0.6, 0.1, 0.5], late: { levelDb: -20, slower: 4 } }));
      expect(Math.abs(miss?.cents ?? Infinity), `${said}, key ${String(key)}`).toBeLessThan(0.5);
      expect(Math.abs(miss?.relativeB ?? Infinity), `${said}, key ${String(key)}`).toBeLessThan(0.015);
    }
  }, 600_000);

  /** Both bounds are widened by four standard deviations of their own: the share counts, and the spread of the misses in units of the uncertainty told. */
  it('whose partials scatter by 0.3 cents lies in the 95 % intervals at least 90 times in 100, and they are no wider than 98 in 100 need', () => {
    const { dice, said } = testDice();
    const pulls = times(200).flatMap((trial) => {
      const miss = missOf(noteOfKey(dice, [28, 40, 52, 64][trial % 4] ?? 40, { snrDb: 40, jitterCents: 0.3, seconds: 2.8 }));
      if (miss === undefined) return [];
      const { note, cents, relativeB } = miss;
      return [[(cents * note.f0Hz * Math.LN2) / (1200 * note.f0UncertaintyHz), (relativeB * (note.inharmonicityB ?? 1)) / (note.inharmonicityUncertainty ?? 0)] as const];
    });
    expect(pulls.length, said).toBe(200);
    for (const pull of [pulls.map(([f0]) => f0), pulls.map(([, b]) => b)]) {
      expect(pull.filter((z) => Math.abs(z) <= 1.96).length / pull.length, said).toBeGreaterThan(0.9 - 4 * Math.sqrt((0.9 * 0.1) / pull.length));
      expect(rmsOf(pull), said).toBeGreaterThan(1.96 / 2.326 - 4 / Math.sqrt(2 * pull.length));
    }
  }, 600_000);

  it('is named rightly, and a key told a semitone, a fifth or an octave off is doubted', () => {
    const { dice, said } = testDice();
    const told = times(60).map((trial) => {
      const key = 1 + Math.floor(dice.even() * 88);
      const off = [1, 7, 12, -1, -7, -12][trial % 6] ?? 1;
      const wrong = key + off >= 1 && key + off <= 88 ? key + off : key - off;
      const { note } = missOf(noteOfKey(dice, key, { snrDb: dice.between(20, 60), seconds: 2.5, knockDb: -10, slopeDbPerOctave: dice.between(3, 9), unisonCents: [-0.6, 0.1, 0.5] }), { key: wrong }) ?? {};
      return { key, heard: note?.key, doubted: note?.quality.warnings.includes('wrong-key') ?? false };
    });
    expect(told.filter(({ key, heard, doubted }) => key !== heard || !doubted).length, `${said} ${JSON.stringify(told.filter(({ key, heard }) => key !== heard))}`).toBeLessThanOrEqual(1);
  }, 600_000);

  it('sounding with another, a semitone to a major seventh up, is told to be two', () => {
    const { dice, said } = testDice();
    const missed = times(44).flatMap((trial) => {
      const [key, up] = [10 + Math.floor(dice.even() * 55), 1 + (trial % 11)];
      const [low, high] = [key, key + up].map((one) => noteOfKey(dice, one, { snrDb: 40, seconds: 2.5 }).samples.channels[0] ?? new Float64Array(0));
      const heard = listenToNote(mono((low ?? new Float64Array(0)).map((x, at) => (x + (high?.[at] ?? 0)) / 2)));
      return heard.heard && !heard.quality.warnings.includes('two-notes') ? [`${String(key)}+${String(up)}`] : [];
    });
    expect(missed.length, `${said} ${missed.join(' ')}`).toBeLessThanOrEqual(4);
  }, 600_000);

  /** One draw in sixteen of key 13 alone lies outside 0.2 cents: the root mean square of twelve, near half of that, does so in fewer than one run of 100,000. */
  it('clipped 6 dB down is told to be clipped each time, and still heard within 0.2 cents and 0.3 % in the root mean square; unclipped it is not', () => {
    const { dice, said } = testDice();
    for (const key of [13, 37, 64]) {
      const misses = times(12).map(() => {
        const made = noteOfKey(dice, key, { snrDb: 50 });
        expect(listenToNote(made.samples).quality.clipped, said).toBe(false);
        return missOf({ ...made, samples: { ...made.samples, channels: made.samples.channels.map((channel) => channel.map((x) => Math.max(-0.25, Math.min(0.25, x)))) } });
      });
      for (const miss of misses) expect(miss?.note.quality.warnings, said).toContain('clipped');
      expect(rmsOf(misses.map((miss) => miss?.cents ?? Infinity)), said).toBeLessThan(0.2);
      expect(rmsOf(misses.map((miss) => miss?.relativeB ?? Infinity)), said).toBeLessThan(3e-3);
    }
  }, 600_000);

  it('over mains hum 20 dB down is heard within 0.2 cents, and the hum is told', () => {
    const { dice, said } = testDice();
    for (const [key, frequencyHz] of [[30, 50], [49, 60], [64, 50]] as const) {
      const made = noteOfKey(dice, key, { snrDb: 50, hum: { frequencyHz, levelDb: -20, harmonics: 5 } });
      const miss = missOf(made);
      expect(miss?.note.quality.warnings, said).toContain('hum');
      expect(Math.abs(miss?.cents ?? Infinity), said).toBeLessThan(0.2);
    }
  }, 600_000);
});

describe('what is no note', () => {
  it('is told by name: silence, noise, a voice, a scrap, figures that are none', () => {
    const { dice, said } = testDice();
    expect(listenToNote(mono(new Float64Array(96_000)))).toMatchObject({ heard: false, reason: 'silence' });
    for (const level of [1e-5, 1e-3, 0.3]) expect(listenToNote(mono(new Float64Array(144_000).map(() => level * dice.normal()))), said).toMatchObject({ heard: false, reason: 'noise' });
    // Of a thousand made-up voices one is taken for a string: two of twelve are not.
    expect(times(12).filter(() => listenToNote(mono(babble(dice))).heard).length, said).toBeLessThanOrEqual(1);
    expect(listenToNote(mono(noteOfKey(dice, 40, { seconds: 0.3 }).samples.channels[0] ?? new Float64Array(0)))).toMatchObject({ heard: false, reason: 'short' });
    expect(listenToNote(mono(Float64Array.of(0, Number.NaN, 1)))).toMatchObject({ heard: false, reason: 'unusable' });
    expect(listenToNote({ sampleRateHz: 1, channels: [new Float64Array(10)] })).toMatchObject({ heard: false, reason: 'unusable' });
    expect(listenToNote({ sampleRateHz: 48_000, channels: [] })).toMatchObject({ heard: false, reason: 'unusable' });
  }, 600_000);
});
