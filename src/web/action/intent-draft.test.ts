import { type TouchIntent, compass88 } from '#instrument';
import { describe, expect, it } from 'vitest';
import { draftOf, emptyIntentDraft, intentOf } from './intent-draft.ts';

const intents: readonly TouchIntent[] = [
  { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 },
  { even: 'balanceWeight', targetG: 37.5, toleranceG: 1.5, upWeightMinG: 22 },
  { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 0 },
  { even: 'curve', anchors: [{ key: 1, downWeightG: 52 }, { key: 40, downWeightG: 49.5 }, { key: 88, downWeightG: 46 }], toleranceG: 2, upWeightMinG: 20 },
];

describe('what is to be even, as typed', () => {
  it.each(['en-GB', 'de-DE'])('gives the same intent back in %s', (locale) => {
    for (const intent of intents) expect(intentOf(draftOf(intent, compass88, locale), compass88, locale)).toEqual({ ok: true, value: intent });
  });

  it('assumes nothing: an empty form names what it still needs', () => {
    expect(intentOf(emptyIntentDraft, compass88, 'en')).toMatchObject({ ok: false, issues: [{ path: 'even' }] });
    const result = intentOf({ ...emptyIntentDraft, even: 'downWeight' }, compass88, 'en');
    expect(result.ok ? [] : result.issues.map(({ path }) => path)).toEqual(['target', 'tolerance']);
  });

  it('asks for no up weight where the field was left empty', () => {
    expect(intentOf({ ...emptyIntentDraft, even: 'downWeight', target: '49', tolerance: '2' }, compass88, 'en')).toEqual({ ok: true, value: { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 0 } });
  });

  it('refuses anchors off the keyboard, out of order and out of range, each by name', () => {
    const draft = { ...emptyIntentDraft, even: 'curve' as const, tolerance: '2', upWeightMin: '20' };
    const paths = (anchors: readonly { key: string; weight: string }[]) => {
      const result = intentOf({ ...draft, anchors }, compass88, 'en');
      return result.ok ? [] : result.issues.map(({ path }) => path);
    };
    expect(paths([{ key: 'A0', weight: '52' }, { key: '89', weight: '900' }])).toEqual(['anchors[1].key', 'anchors[1].weight']);
    expect(paths([{ key: 'C4', weight: '50' }, { key: 'C4', weight: '49' }])).toEqual(['anchors[1].key']);
  });
});
