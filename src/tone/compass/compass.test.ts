import { linearRegression, linearRegressionLine } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { diceOf, drawnSeed } from '../testing/dice.ts';
import { alongKeysOf } from './along-keys.ts';
import { type ToneState, toneChangeOf } from './compare.ts';
import { toneEvennessOf } from './evenness.ts';
import { toneOutliersOf } from './outliers.ts';
import { brightnessAt, levelLineOf, softToLoudOf } from './soft-to-loud.ts';
import { sustainMapOf } from './sustain.ts';
import { voicingMapOf } from './voicing.ts';

const keys = Array.from({ length: 88 }, (_, index) => index + 1);
const course = (key: number): number => 4 - 0.03 * key + 0.0001 * key ** 2;

describe('along the keys', () => {
  it('finds the hammers that were made bright and dull and no others, and names as standing out both and next to none beside them, whatever the scatter thrown', () => {
    let beside = 0;
    for (let run = 0; run < 20; run++) {
      const seed = drawnSeed();
      const dice = diceOf(seed);
      const [bright, dull] = [10 + Math.floor(dice.between(0, 30)), 45 + Math.floor(dice.between(0, 40))];
      const figures = keys.map((key) => ({ key, value: course(key) + 0.03 * dice.between(-1, 1) + (key === bright ? 0.4 : key === dull ? -0.4 : 0) }));
      const map = voicingMapOf(figures, 0.03);
      expect(map, `seed ${String(seed)}`).toMatchObject({ ok: true, value: { bright: [bright], dull: [dull] } });
      const even = toneEvennessOf('brightness', figures);
      const outliers = even.ok ? even.value.outliers : [];
      expect(outliers, `seed ${String(seed)}`).toEqual(expect.arrayContaining([bright, dull]));
      beside += outliers.length - 2;
    }
    // A fence of 3.5 scatters names a key of a narrow draw now and then: 15 of 516 000 in 6000 draws. One in a hundred would be too many.
    expect(beside).toBeLessThan((20 * 86) / 100);
  });

  it('is not bent by a key that stands out: the curve is the one without it', () => {
    const figures = keys.map((key) => ({ key, value: course(key) + 0.01 * Math.sin(7 * key) }));
    const [clean, spoilt] = [figures, figures.map((one) => (one.key === 40 ? { ...one, value: 9 } : one))].map((list) => alongKeysOf(list));
    if (clean?.ok !== true || spoilt?.ok !== true) throw new Error('refused');
    for (const [index, { curve }] of clean.value.keys.entries()) expect(Math.abs(curve - (spoilt.value.keys[index]?.curve ?? 0))).toBeLessThan(0.005);
  });

  it('takes sustain by its ratio', () => {
    const figures = keys.map((key) => ({ key, value: 20 * 2 ** (-key / 14) * (key === 30 ? 0.5 : 1) }));
    const even = toneEvennessOf('sustain', figures);
    if (!even.ok) throw new Error('refused');
    expect(even.value.outliers).toContain(30);
    expect(even.value.ratios?.[29]).toBeCloseTo(0.5, 3);
    expect(even.value.keys[29]?.curve).toBeCloseTo(20 * 2 ** (-30 / 14), 2);
  });

  it('refuses a key twice, and too few', () => {
    expect(alongKeysOf([{ key: 4, value: 1 }, { key: 4, value: 1 }])).toMatchObject({ ok: false, issues: [{ code: 'duplicate', path: 'notes[1].key' }] });
    expect(alongKeysOf(keys.slice(0, 5).map((key) => ({ key, value: 1 })))).toMatchObject({ ok: false, issues: [{ code: 'length', path: 'notes' }] });
  });
});

describe('from soft to loud', () => {
  it('draws the line simple-statistics draws', () => {
    const dice = diceOf(drawnSeed());
    const strikes = Array.from({ length: 12 }, (_, index) => ({ key: 1, levelDb: -45 + 2.2 * index, brightness: 2 + 0.06 * index + 0.1 * dice.normal() }));
    const theirs = linearRegression(strikes.map(({ levelDb, brightness }) => [levelDb, brightness]));
    const line = levelLineOf(strikes);
    expect(line.slopePer10Db).toBeCloseTo(10 * theirs.m, 10);
    expect(brightnessAt(line, -33).brightness).toBeCloseTo(linearRegressionLine(theirs)(-33), 10);
  });

  it('states a standard error that holds: 95 of 100 within Student’s bounds', () => {
    const seed = drawnSeed();
    const dice = diceOf(seed);
    const inside = Array.from({ length: 2000 }, () => {
      const line = levelLineOf(Array.from({ length: 10 }, (_, index) => ({ levelDb: -40 + 2 * index, brightness: 0.05 * index + 0.1 * dice.normal() })));
      return Math.abs(line.slopePer10Db - 0.25) < 2.306 * line.slopeUncertaintyPer10Db;
    }).filter(Boolean).length;
    expect(Math.abs(inside / 2000 - 0.95), `seed ${String(seed)}`).toBeLessThan(0.02);
  });

  it('reads nothing outside what was played', () => {
    const row = (key: number, from: number) => [0, 4, 8].map((up) => ({ key, levelDb: from + up, brightness: up }));
    const { keys: [first, second, third], atLevelDb } = softToLoudOf([...row(1, -40), ...row(2, -36), { key: 3, levelDb: -35, brightness: 1 }], -38);
    expect(atLevelDb).toBe(-38);
    expect(first?.brightness).toBeCloseTo(2, 10);
    expect(second).toMatchObject({ refusals: [{ figure: 'brightness', reason: 'levels-apart' }] });
    expect(second?.brightness).toBeUndefined();
    expect(third).toMatchObject({ softestDb: -35, refusals: [{ reason: 'few-strikes', found: 1, needed: 3 }] });
    expect(softToLoudOf([...row(1, -60), ...row(2, -20)]).atLevelDb).toBeUndefined();
  });
});

describe('sustain', () => {
  const notes = keys.slice(20, 70).map((key) => ({ key, decayS: 18 * 2 ** (-key / 15) * (key >= 45 && key <= 49 ? 0.45 : 1), bearingDeg: key >= 45 && key <= 49 ? 0.1 : 1.1 }));

  it('tells the stretch that rings short, and to look at its bearing', () => {
    const map = sustainMapOf(notes, { shortRatio: 0.7, climate: { humidityPct: 30 } });
    expect(map).toMatchObject({ ok: true, value: { short: [{ fromKey: 45, toKey: 49, lookAt: ['bearing-low', 'bridge', 'dry-air'] }] } });
  });

  it('asks for what was not measured, and says where bearing is as elsewhere', () => {
    const bare = notes.map(({ key, decayS }) => ({ key, decayS }));
    expect(sustainMapOf(bare, { shortRatio: 0.7 })).toMatchObject({ ok: true, value: { short: [{ lookAt: ['measure-bearing', 'bridge', 'note-climate'] }] } });
    expect(sustainMapOf(bare.map((note) => ({ ...note, bearingDeg: 1 })), { shortRatio: 0.7, climate: { humidityPct: 50 } })).toMatchObject({ ok: true, value: { short: [{ lookAt: ['bearing-as-elsewhere', 'bridge'] }] } });
  });
});

it('names the keys that buzz or knock, and is quiet where none does', () => {
  const dice = diceOf(drawnSeed());
  const notes = keys.map((key) => ({ key, betweenPartialsDb: -40 + 0.1 * key + dice.normal() * 0.5 + (key === 33 ? 15 : 0), attackNoiseDb: -25 + dice.normal() * 0.5 }));
  expect(toneOutliersOf(notes)).toMatchObject({ ok: true, value: [{ key: 33, figure: 'betweenPartialsDb' }] });
  expect(toneOutliersOf(notes.filter(({ key }) => key !== 33))).toEqual({ ok: true, value: [] });
});

describe('two states', () => {
  const strike = (levelDb: number, slope: number, count = 6, key = 40) => ({ key, levelDb, decayS: 4, partials: Array.from({ length: count }, (_, index) => ({ n: index + 1, levelDb: levelDb - slope * Math.log2(index + 1) })) });
  const state = (strikes: ToneState['strikes'], microphonePlace = 'by the bend'): ToneState => ({ microphonePlace, recordedWith: 'recorder, gain 5', strikes });

  it('are not compared from another place of the microphone', () => {
    expect(toneChangeOf(state([strike(-20, 8)]), state([strike(-20, 8)], 'by the tail'))).toMatchObject({ ok: false, issues: [{ code: 'conflict', path: 'after.microphonePlace', given: 'by the tail' }] });
  });

  it('are compared on the partials both have: one more at the top changes nothing', () => {
    const change = toneChangeOf(state([strike(-20, 8, 6)]), state([strike(-20, 8, 9)]));
    expect(change).toMatchObject({ ok: true, value: [{ partials: [1, 2, 3, 4, 5, 6], decayRatio: 1 }] });
    if (change.ok) expect(change.value[0]?.change).toBeCloseTo(0, 12);
  });

  it('are compared at a level both hold, or not at all', () => {
    const levels = (from: number, slope: number) => [0, 4, 8].map((up) => strike(from + up, slope - 0.1 * up));
    const near = toneChangeOf(state(levels(-30, 8)), state(levels(-26, 6)));
    expect(near).toMatchObject({ ok: true, value: [{ atLevelDb: -24 }] });
    if (near.ok) expect(near.value[0]?.change).toBeGreaterThan(0);
    expect(toneChangeOf(state(levels(-50, 8)), state(levels(-20, 6)))).toMatchObject({ ok: true, value: [{ refusals: [{ reason: 'levels-apart' }] }] });
    expect(toneChangeOf(state([strike(-30, 8)]), state([strike(-27, 8)]))).toMatchObject({ ok: true, value: [{ refusals: [{ reason: 'levels-apart' }] }] });
  });
});
