import { scaleTermsSchema } from '#instrument';
import { metricWireSizes } from '#materials';
import { mustBe } from '#result';
import { type ScaleNote, analyseScale, rescale } from '#strings';
import { hertz, millimetres, newtons, percent } from '#units';
import { describe, expect, it } from 'vitest';
import { type RescaleWish, MOST_WINDINGS, endsNear, rescaleProblemOf, wireOfCandidate } from './index.ts';

/** Twelve notes over a change from wound to plain between keys 34 and 35. */
const notes = Array.from({ length: 12 }, (_, place): ScaleNote => {
  const key = 29 + place;
  return {
    key, frequencyHz: hertz(440 * 2 ** ((key - 49) / 12)), isLengthEstimated: false, strings: key < 35 ? 2 : 3, speakingLengthMm: millimetres(850 * 0.96 ** place),
    wire: key < 35
      ? { kind: 'wound', coreDiameterMm: millimetres(1), wraps: [{ wireDiameterMm: millimetres(0.4) }], bareFrontMm: millimetres(key === 29 ? 30 : 15) }
      : { kind: 'plain', diameterMm: millimetres(1.1) },
  };
});
const sections = [{ name: 'bass', firstKey: 29, lastKey: 34 }, { name: 'tenor', firstKey: 35, lastKey: 40 }];
const scale = analyseScale({ notes, sections, asked: {} });
const wish: RescaleWish = {
  plainSizesMm: metricWireSizes.map(({ diameterMm }) => diameterMm), coreSizesMm: [0.9, 1, 1.1].map(millimetres), coreShape: 'round', wrapSizesMm: [0.3, 0.4, 0.5, 0.6].map(millimetres), layers: 'single',
  highestWoundKey: 34, lockedKeys: [31, 38], limits: { minBreakingPct: percent(20), maxBreakingPct: percent(70) }, weights: { tensionSmoothness: 1, inharmonicitySmoothness: 0.1 }, acrossBreaks: false,
};

describe('the problem of a rescale', () => {
  it('offers wound strings up to the note stated, plain ones above, and a kept note its own wire alone', () => {
    const { notes: row } = mustBe(rescaleProblemOf(scale, wish, null));
    expect(row.map(({ key }) => key)).toEqual(notes.map(({ key }) => key));
    for (const { key, candidates } of row) {
      const kinds = new Set(candidates.map((candidate) => wireOfCandidate(candidate).kind));
      expect([...kinds]).toEqual([key <= 34 ? 'wound' : 'plain']);
      expect(candidates.length).toBeLessThanOrEqual(MOST_WINDINGS);
      if (wish.lockedKeys.includes(key)) expect(candidates.map(wireOfCandidate)).toEqual([expect.objectContaining(notes[key - 29]?.wire ?? {})]);
    }
  });

  it('is solved within its limits, kept notes kept', () => {
    const problem = mustBe(rescaleProblemOf(scale, wish, null));
    const { choices, proven } = mustBe(rescale(problem));
    expect(proven).toBe(true);
    expect(choices.every(({ key, breakingPct }) => wish.lockedKeys.includes(key) || (breakingPct >= 20 && breakingPct <= 70))).toBe(true);
    const kept = choices.find(({ key }) => key === 38);
    expect(kept?.tensionN).toBeCloseTo(scale.notes[9]?.figures?.tensionN ?? 0, 9);
  });

  it('takes bare ends from the note itself, else from the nearest wound one', () => {
    expect(endsNear(scale.notes, 29)).toEqual({ bareFrontMm: 30 });
    expect(endsNear(scale.notes, 36)).toEqual({ bareFrontMm: 15 });
    const { notes: row } = mustBe(rescaleProblemOf(scale, { ...wish, highestWoundKey: 36, lockedKeys: [] }, null));
    expect(row.find(({ key }) => key === 36)?.candidates.every((candidate) => 'bareFrontMm' in candidate && candidate.bareFrontMm === 15)).toBe(true);
  });

  it('leaves unevenness across breaks out where that is wished: at the note above a break and the next', () => {
    const without = mustBe(rescaleProblemOf(scale, wish, null)).notes.filter(({ weights }) => weights !== undefined).map(({ key }) => key);
    expect(without).toEqual([35, 36]);
    expect(mustBe(rescaleProblemOf(scale, { ...wish, acrossBreaks: true }, null)).notes.every(({ weights }) => weights === undefined)).toBe(true);
  });

  it('aims at tensions as they stand, or at a line in ln T', () => {
    const standing = mustBe(rescaleProblemOf(scale, { ...wish, target: 'standing' }, null)).notes;
    expect(standing.map(({ targetTensionN }) => targetTensionN)).toEqual(scale.notes.map(({ figures }) => figures?.tensionN));
    const line = mustBe(rescaleProblemOf(scale, { ...wish, target: { lowestN: newtons(900), highestN: newtons(700) } }, null)).notes.map(({ targetTensionN }) => Number(targetTensionN));
    expect([line[0], line.at(-1)]).toEqual([900, 700]);
    expect(line.slice(2).every((value, place) => Math.abs((value * (line[place] ?? 0)) / (line[place + 1] ?? 1) ** 2 - 1) < 1e-12)).toBe(true);
  });

  it('reckons shop wire with its own strength and wraps with the metal stated', () => {
    const terms = scaleTermsSchema.parse({ wrapMetal: 'iron', wires: [{ name: 'Coil', use: 'plain', metal: 'steel', diameterMm: 1, certificateMPa: 2400 }] });
    const { notes: row } = mustBe(rescaleProblemOf(scale, wish, terms));
    const one = row.find(({ key }) => key === 40)?.candidates.find((candidate) => 'diameterMm' in candidate && candidate.diameterMm === 1);
    expect(one?.certificateMPa).toBe(2400);
    expect(row[0]?.candidates.every((candidate) => 'wraps' in candidate && candidate.wraps.every(({ densityKgM3 }) => densityKgM3 === 7860))).toBe(true);
  });

  it('refuses what is missing, and names the notes', () => {
    const gap = analyseScale({ notes: notes.map(({ speakingLengthMm, wire, strings, ...note }) => ({ ...note, ...(note.key === 33 ? {} : { speakingLengthMm }), ...(note.key === 31 ? {} : { wire }), ...(note.key >= 39 ? {} : { strings }) })), sections, asked: {} });
    const refused = rescaleProblemOf(gap, { ...wish, plainSizesMm: [], wrapSizesMm: [] }, null);
    expect(refused.ok ? [] : refused.issues.map(({ path, params }) => [path, params?.['reason'], params?.['keys']])).toEqual([
      ['speakingLengthMm', 'noLength', '33'], ['strings', 'noCount', '39 40'], ['lockedKeys', 'nothingToKeep', '31'],
      ['plainSizesMm', 'noPlainSizes', '35 36 37 39 40'], ['wrapSizesMm', 'noWindings', '29 30 32 33 34'],
    ]);
    expect(rescaleProblemOf(analyseScale({ notes: [], sections: [], asked: {} }), wish, null)).toMatchObject({ ok: false, issues: [{ params: { reason: 'noLengths' } }] });
  });
});
