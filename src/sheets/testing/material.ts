import { type ActionTermsDraft, type QuantityName, type Reading, actionTermsSchema, instrumentSchema } from '#instrument';
import { createSay } from '#text';
import type { SheetMaterial } from '../sheet.ts';

const reading = (quantity: QuantityName, index: number, value: number, scope: Reading['scope'] = 'key'): Reading => ({
  id: `${quantity} ${String(index)}`, cycle: 1, state: 'found', quantity, scope, index, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2026-11-25T10:00:00Z', by: '',
});

const arms = { keyFrontMm: 225, keyBackMm: 112.5, wippenHeelMm: 65, wippenJackMm: 90, rollerMm: 17, hammerMm: 130, keyFrontLengthMm: 238, keyBackLengthMm: 200 } as const;

/** An invented grand with its arms, and the regulation of four keys, one of which blocks. */
export const grandReadings: readonly Reading[] = [
  ...(Object.entries(arms) as [QuantityName, number][]).flatMap(([name, value]) => [reading(name, 0, value, 'colour'), reading(name, 1, value, 'colour')]),
  ...[40, 41, 42, 43].flatMap((key) => [reading('blowMm', key, key === 42 ? 47.5 : 45), reading('letOffMm', key, key === 43 ? 0 : 1.5), reading('dipMm', key, 10), reading('dropMm', key, 1.75)]),
];

const spec = { blowMm: 45, letOffMm: 1.5, dropMm: 1.75, aftertouchMm: 1, checkMm: 14 };

/** What is asked of it: the dip follows. */
export const grandTerms: ActionTermsDraft = { regulationFloats: 'dip', keyLevelMm: 0, sharpHeightMm: 12, regulation: [{ register: 'bass', ...spec, letOffMm: 2.5 }, { register: 'middle', ...spec }, { register: 'treble', ...spec }] };

/** What a sheet of the invented grand is made of. */
export function sheetMaterial(locale = 'en', change: Partial<SheetMaterial> = {}): SheetMaterial {
  return {
    instrument: instrumentSchema.parse({ name: 'Workshop grand', kind: 'grand', id: 'g', workshopId: 'w', cycle: 1, demo: false, sections: [] }),
    readings: grandReadings, cycle: 1, state: 'found', action: actionTermsSchema.parse(grandTerms), scale: null, printedAt: '2026-11-25T10:00:00Z', locale, say: createSay(locale),
    head: { seq: 1234, hash: 'b94d27b9934d3e08a52e52d7da7dabfac484efe37a5380ee9088f7ace2efcde9' }, ...change,
  };
}
