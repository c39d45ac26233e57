import { type Recording, instrumentSchema } from '#instrument';
import type { SoundingNote } from '#tone';
import { textOf } from '#report';
import { createSay } from '#text';
import { type WorkedSound, analysisVersions } from '#workshop';
import { describe, expect, it } from 'vitest';
import { hasAnythingToProve, proofInputOf } from './material.ts';
import { buildProof } from './proof.ts';

const KEYS = [30, 33, 36, 39, 42, 45, 48, 51];
/** Amplitudes fall by so many decibels a partial; as finished by more. */
const noteOf = (key: number, fallDb: number, loudnessDb: number, decayS: number): SoundingNote => {
  const partials = [1, 2, 3, 4, 5, 6].map((n) => ({ n, frequencyHz: 220 * n, levelDb: -20 - fallDb * (n - 1), lines: [] }));
  return {
    heard: true, key, f0Hz: 220, f0UncertaintyHz: 0.01, offsetCents: 0, fitMethod: 'one-term', fittedPartials: [1], scatterCents: 0, degreesOfFreedom: 3, firstPartialHz: 220, unisonSpreadCents: 0.2, partials, onsetS: 0.1, endS: 2,
    windowFromS: 0.1, windowToS: 1, quality: { clipped: false, warnings: [] }, methodVersion: 1, summedPartials: [1], refusals: [], loudnessDb, decay: { rangeDb: 50, observedS: 2, ending: 'recording', edt10S: decayS, edt10UncertaintyS: 0.1 },
    descriptors: { windowFromS: 0.1, windowS: 0.5, partials: [1], sharpnessLevelDb: 70, harmonicCentroid: 3 + 0.001 * key, betweenPartialsDb: key === 42 ? -20 : -50 + 0.01 * key },
  } as unknown as SoundingNote;
};

const soundOf = (state: 'found' | 'finished', key: number, note: SoundingNote, rest: Partial<Recording> = {}): WorkedSound => ({
  recording: { id: `${state} ${String(key)}`, cycle: 1, state, contents: 'note', file: { hash: 'h', byteCount: 1, format: 'wav' }, copy: null, fileName: '', key, place: 'over the tail', device: 'recorder, gain 5', remark: '', takenAt: null, ...rest } as Recording,
  analysis: { hash: 'h', method: 'tone-note', version: analysisVersions['tone-note'], input: { key, firstMidi: 21, lastMidi: 108, a4Hz: 440, isLadder: false }, answer: note, madeAt: '' },
});
const found = KEYS.map((key) => soundOf('found', key, noteOf(key, 4, -30, 4)));
const finished = (rest: Partial<Recording> = {}, louderDb = 0.5) => KEYS.map((key) => soundOf('finished', key, noteOf(key, 6, -30 + louderDb, 6), rest));

function materialOf(sounds: readonly WorkedSound[], locale = 'en') {
  const instrument = instrumentSchema.parse({ id: 'p', workshopId: 'w', name: 'Listened to', kind: 'grand', cycle: 1, demo: false });
  return { instrument, sessions: [], readings: [], cycle: 1, intent: null, head: null, printedAt: '2026-11-26T10:00:00Z', locale, say: createSay(locale), sounds };
}
const proofOf = (sounds: readonly WorkedSound[], locale?: string): string => textOf(buildProof(proofInputOf(materialOf(sounds, locale))));

/** Σ n·A/Σ A by hand, of six partials that fall evenly. */
const centroid = (fallDb: number): number => {
  const amplitudes = [0, 1, 2, 3, 4, 5].map((n) => 10 ** ((-fallDb * n) / 20));
  return amplitudes.reduce((sum, a, n) => sum + (n + 1) * a, 0) / amplitudes.reduce((sum, a) => sum + a, 0);
};

describe('the sound in a proof', () => {
  it('tells found against finished on shared partials at one level, with microphone, evenness and what stands out', () => {
    const text = proofOf([...found, ...finished()]);
    expect(text).toContain('over the tail\tover the tail');
    expect(text).toContain('recorder, gain 5');
    expect(text).toContain('sound between the partials (a buzz is to be looked for): D4');
    const change = centroid(6) - centroid(4);
    expect(text).toContain(`at one level: −${Math.abs(change).toFixed(2)} on the middle of 8 keys`);
    expect(text).toContain('Decay: 1.50 times as long on the middle of 8 keys');
    expect(text).toContain('D3\t6\t−30');
  });

  it.each([['another place', { place: 'elsewhere' }], ['another device', { device: 'telephone' }], ['no place told', { place: '' }]] as const)('compares nothing of %s, and says why', (_, rest) => {
    const text = proofOf([...found, ...finished(rest)]);
    expect(text).toContain('Not compared: both states need the same stated microphone place and device.');
    expect(text).not.toContain('on the middle of');
  });

  it('says where keys were not played alike, and where one state alone was recorded', () => {
    expect(proofOf([...found, ...finished({}, 9)])).toContain('8 keys were not played equally loud in both states');
    expect(proofOf(found)).toContain('One state alone was recorded');
  });

  it('is a proof by itself, in both languages, and says what is left out', () => {
    expect(hasAnythingToProve(materialOf(found))).toBe(true);
    expect(hasAnythingToProve(materialOf([]))).toBe(false);
    expect(proofOf(found)).toContain('Noted: sound; no weights have been taken');
    expect(proofOf(found)).toContain('touch, regulation, strings, bearing of the strings on the bridges, tuning, papers.');
    expect(proofOf([...found, ...finished()], 'de')).toContain('Helligkeit über die Tasten');
  });

  it('takes nothing of another stay', () => {
    expect(hasAnythingToProve(materialOf([soundOf('found', 40, noteOf(40, 4, -30, 4), { cycle: 2 })]))).toBe(false);
  });
});

it('counts a pitch or a figure of regulation read alone as something to prove, but not a plan', () => {
  const reading = (quantity: string, state: string) => [{ quantity, state, scope: 'key', index: 40, cycle: 1, value: 440 }] as never;
  expect(hasAnythingToProve({ readings: reading('pitchHz', 'found'), cycle: 1 })).toBe(true);
  expect(hasAnythingToProve({ readings: reading('blowMm', 'finished'), cycle: 1 })).toBe(true);
  expect(hasAnythingToProve({ readings: reading('pitchHz', 'planned'), cycle: 1 })).toBe(false);
  expect(hasAnythingToProve({ readings: reading('pitchHz', 'found'), cycle: 2 })).toBe(false);
});
