import { analyseTouch } from '#action';
import { type ActionTerms, type QuantityName, type Reading, type TouchIntent, actionTermsSchema } from '#instrument';
import type { KeyLeadsMaterial } from '../key-leads-input.ts';
import { touchInputOf } from '../touch-input.ts';

type Place = readonly [scope: Reading['scope'], index: number, quantity: QuantityName, value: number];

const NATURAL: readonly Place[] = [
  ['colour', 0, 'keyFrontMm', 225], ['colour', 0, 'keyBackMm', 115], ['colour', 0, 'wippenHeelMm', 65], ['colour', 0, 'wippenJackMm', 95], ['colour', 0, 'rollerMm', 17],
  ['colour', 0, 'hammerMm', 130], ['colour', 0, 'keyWidthMm', 13], ['colour', 0, 'keyFrontLengthMm', 238], ['colour', 0, 'keyBackLengthMm', 190],
];

/** An invented reading of one size. */
export const readingOf = ([scope, index, quantity, value]: Place, state: Reading['state'] = 'found'): Reading => ({
  id: `${state} ${scope} ${String(index)} ${quantity}`, cycle: 1, state, quantity, scope, index, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '',
  sessionId: null, at: '2026-01-01T00:00:00Z', by: 'p',
});

/** Two naturals of an invented grand, of one ratio by weights: C4 with two leads, D4 with none noted. */
export const twoKeys: readonly Reading[] = [
  ...NATURAL,
  ['key', 40, 'downWeightG', 52], ['key', 40, 'upWeightG', 26], ['key', 40, 'frontWeightG', 24.6], ['key', 40, 'hammerWeightG', 8.9], ['key', 40, 'wippenWeightG', 18],
  ['key', 40, 'lead1PositionMm', 178], ['key', 40, 'lead1DiameterMm', 12.7], ['key', 40, 'lead2PositionMm', 100], ['key', 40, 'lead2DiameterMm', 11],
  ['key', 42, 'downWeightG', 52], ['key', 42, 'upWeightG', 26], ['key', 42, 'frontWeightG', 3], ['key', 42, 'hammerWeightG', 5.366], ['key', 42, 'wippenWeightG', 18],
].map((place) => readingOf(place as Place));

/** An even down weight. */
export const evenAt49: TouchIntent = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 };

/** What the leads are gathered from. */
export function materialOf(readings: readonly Reading[], { terms = null, intent = evenAt49 }: { readonly terms?: Partial<ActionTerms> | null; readonly intent?: TouchIntent | null } = {}): KeyLeadsMaterial {
  const instrument = { kind: 'grand' as const, firstMidi: 21, lastMidi: 108, sections: [] };
  const touch = analyseTouch(touchInputOf({ instrument, sessions: [], readings, cycle: 1, state: 'found', intent }));
  return { instrument, readings, cycle: 1, intent, touch, terms: terms === null ? null : actionTermsSchema.parse(terms) };
}
