import type { Recording } from '#instrument';
import type { SoundingNote } from '#tone';
import { describe, expect, it } from 'vitest';
import { type Analysis, analysisVersions } from './analysis.ts';
import { sustainInputOf } from './sustain-input.ts';
import { standOutsOf } from './tone-stand-outs.ts';
import { comparedStateOf, isComparable, stateTonesOf } from './tone-states.ts';
import { voicingInputOf } from './voicing-input.ts';

/** A note as listening answers it, as far as it is looked at here. */
const noteOf = (key: number, rest: Partial<SoundingNote> = {}): SoundingNote => ({
  heard: true, key, f0Hz: 440, f0UncertaintyHz: 0.01, offsetCents: 1, fitMethod: 'one-term', fittedPartials: [1, 2, 3], scatterCents: 0, degreesOfFreedom: 1, firstPartialHz: 440, unisonSpreadCents: 0.2,
  partials: [], onsetS: 0.1, endS: 2, windowFromS: 0.1, windowToS: 1, quality: { clipped: false, warnings: [] }, methodVersion: 1, summedPartials: [1], refusals: [], loudnessDb: -30,
  decay: { rangeDb: 50, observedS: 2, ending: 'recording', edt10S: 10 * 2 ** (-key / 20), edt10UncertaintyS: 0.1 },
  descriptors: { windowFromS: 0.1, windowS: 0.5, partials: [1, 2, 3], sharpnessLevelDb: 70, harmonicCentroid: 4 - 0.02 * key, betweenPartialsDb: -40 }, ...rest,
} as unknown as SoundingNote);

const worked = (id: string, rest: Partial<Recording>, answer: unknown, version?: string) => {
  const recording = { id, cycle: 1, state: 'found', contents: 'note', file: { hash: id, byteCount: 1, format: 'wav' }, copy: null, fileName: `${id}.wav`, key: null, place: 'tail', device: 'recorder', remark: '', takenAt: null, ...rest } as Recording;
  const method = recording.contents === 'note' ? 'tone-note' : 'tone-run';
  return { recording, analysis: { hash: id, method, version: version ?? analysisVersions[method], input: {}, answer, madeAt: '' } as unknown as Analysis };
};
const walk = (id: string, notes: readonly SoundingNote[], rest: Partial<Recording> = {}) => worked(id, { contents: 'walk', ...rest }, { kind: 'walk', notes, missingKeys: [], duplicateKeys: [], doubtful: [] });
const KEYS = Array.from({ length: 24 }, (_, index) => 30 + index);

describe('how a state sounds', () => {
  it('takes of each key the note that came last, a ladder only by its strikes, and none of a note told as another key', () => {
    const [tone] = stateTonesOf([walk('w', [noteOf(40), noteOf(41)]), worked('n', {}, noteOf(41, { offsetCents: 7 as never })), worked('wrong', { key: 50 }, noteOf(51)), walk('l', [noteOf(40), noteOf(60)], { contents: 'ladder' })]);
    expect([...(tone?.byKey.keys() ?? [])]).toEqual([40, 41, 50]);
    expect(tone?.byKey.get(41)?.heard.note.offsetCents).toBe(7);
    expect(tone?.notes.find(({ key }) => key === 50)?.figures).toEqual({});
    expect(tone?.strikes.map(({ heard }) => heard.key)).toEqual([40, 41, 41, 40, 60]);
  });

  it('takes nothing of what another version of the method worked out', () => {
    expect(stateTonesOf([worked('old', {}, noteOf(40), '0.0')])).toEqual([]);
  });

  it('is compared only of one stated place and one device', () => {
    const [same] = stateTonesOf([walk('a', [noteOf(40)]), worked('b', {}, noteOf(41))]);
    expect(same && comparedStateOf(same)?.strikes.map(({ key }) => key)).toEqual([40, 41]);
    expect(same && isComparable([same])).toBe(true);
    for (const rest of [{ place: 'elsewhere' }, { device: 'telephone' }, { place: '' }] as const) {
      const [mixed] = stateTonesOf([walk('a', [noteOf(40)]), worked('b', rest, noteOf(41))]);
      expect(mixed && comparedStateOf(mixed)).toBeUndefined();
    }
  });

  it('names a buzz: sound between the partials above that of the neighbours', () => {
    const [tone] = stateTonesOf([walk('w', KEYS.map((key) => noteOf(key, key === 41 ? { descriptors: { ...noteOf(key).descriptors, betweenPartialsDb: -22 } as never } : {})))]);
    expect(tone && standOutsOf(tone).others).toMatchObject([{ key: 41, figure: 'betweenPartialsDb', offset: expect.closeTo(18, 0) as number }]);
  });
});

describe('the voicing map', () => {
  const at = (key: number, loudnessDb: number, off = 0) => noteOf(key, { loudnessDb, descriptors: { ...noteOf(key).descriptors, harmonicCentroid: 4 - 0.02 * key + 0.04 * (loudnessDb + 30) + off } as never });
  const ladders = walk('l', [32, 40, 48].flatMap((key) => [-38, -34, -30, -26, -22].map((level) => at(key, level))), { contents: 'ladder' });

  it('takes every key at the level of the ladders, from one microphone alone', () => {
    const [tone] = stateTonesOf([walk('w', KEYS.map((key) => at(key, -33, key === 45 ? 0.5 : 0))), ladders, walk('far', [noteOf(40)], { place: 'elsewhere' })]);
    const gathered = tone && voicingInputOf(tone, 'brightness');
    expect(gathered).toMatchObject({ microphone: { place: 'tail', device: 'recorder' }, otherStrikes: 1, level: { atLevelDb: -30 } });
    expect(gathered?.input?.notes.length).toBe(24);
    for (const { key, brightness } of gathered?.input?.notes ?? []) expect(brightness, String(key)).toBeCloseTo(4 - 0.02 * key + (key === 45 ? 0.5 : 0), 9);
    expect(gathered?.bases.get(40)).toBe('line');
    expect(gathered?.bases.get(41)).toBe('moved');
  });

  it('judges nothing where no key was struck from soft to loud, and says so', () => {
    const [tone] = stateTonesOf([walk('w', KEYS.map((key) => at(key, -30)))]);
    expect(tone && voicingInputOf(tone, 'brightness')).toMatchObject({ lacks: 'no-ladder' });
    expect(tone && voicingInputOf(tone, 'balance')).toBeUndefined();
  });
});

it('lays the decay of a state beside its bearing and the humidity noted then', () => {
  const [tone] = stateTonesOf([walk('w', [noteOf(40), noteOf(41)])]);
  if (tone === undefined) throw new Error('no state');
  const readings = [{ cycle: 1, state: 'found', quantity: 'roomHumidityPct', value: 31, scope: 'instrument' }, { cycle: 1, state: 'finished', quantity: 'roomHumidityPct', value: 60, scope: 'instrument' }] as never;
  const belly = { notes: [{ key: 41, also: [], findings: [], figures: { totalDeg: 0.4 } }], sections: [], whole: { counted: 0, of: 0 } } as never;
  expect(sustainInputOf({ tone, belly, readings, cycle: 1 })).toEqual({ notes: [{ key: 40, decayS: 2.5, uncertaintyS: 0.1 }, { key: 41, decayS: expect.closeTo(2.415, 3) as number, uncertaintyS: 0.1, bearingDeg: 0.4 }], humidityPct: 31, shortPct: 70 });
});
