import { type ActionTermsDraft, type QuantityName, type Reading, actionTermsSchema, instrumentSchema, sessionSchema } from '#instrument';
import { createSay } from '#text';
import { airHoursOf, careCardSchema, demoShop, minuteOf, paperRecordSchema, papersToldOf, roomRecordSchema, usualPlan } from '#workshop';
import type { CareMaterial, SheetMaterial } from '../sheet.ts';

/** An invented reading as found. */
export const reading = (quantity: QuantityName, index: number, value: number, scope: Reading['scope'] = 'key'): Reading => ({
  id: `${quantity} ${String(index)}`, cycle: 1, state: 'found', quantity, scope, index, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2026-11-25T10:00:00Z', by: '',
});

const arms = { keyFrontMm: 225, keyBackMm: 112.5, wippenHeelMm: 65, wippenJackMm: 90, rollerMm: 17, hammerMm: 130, keyFrontLengthMm: 238, keyBackLengthMm: 200 } as const;

/** Down and up weight of nine keys: three of them are to be worked on, one gave no number. */
const touch: readonly Reading[] = [[46, 49, 25], [47, 48.5, 25], [48, 49.5, 25.5], [49, 49, 25], [50, 57, 21], [51, 54, 30], [52, 49, 25], [53, 44.5, 21], [54, 49, 25]].flatMap(([key = 0, down = 0, up = 0]) => [
  { ...reading('downWeightG', key, down), sessionId: 's' }, { ...reading('upWeightG', key, up), sessionId: 's' }, reading('frontWeightG', key, 24), reading('hammerWeightG', key, 9), reading('wippenWeightG', key, 18),
]);
const stuck: Reading = { ...reading('downWeightG', 55, 0), typed: null, value: null, outcome: 'sticks' };

/** Leads of a key, from the front. */
const leadsOf = (key: number, state: Reading['state'], leads: readonly (readonly [positionMm: number, diameterMm: number])[]): readonly Reading[] => leads.flatMap(([position, diameter], index) => [
  { ...reading(`lead${String(index + 1)}PositionMm` as QuantityName, key, position), state, id: `${state} ${String(key)} ${String(index)} x` }, { ...reading(`lead${String(index + 1)}DiameterMm` as QuantityName, key, diameter), state, id: `${state} ${String(key)} ${String(index)} d` },
]);

/** An invented grand with its arms, the touch of ten keys, the regulation of four, one of which blocks. */
export const grandReadings: readonly Reading[] = [
  ...(Object.entries(arms) as [QuantityName, number][]).flatMap(([name, value]) => [reading(name, 0, value, 'colour'), reading(name, 1, value, 'colour')]),
  ...[40, 41, 42, 43].flatMap((key) => [reading('blowMm', key, key === 42 ? 47.5 : 45), reading('letOffMm', key, key === 43 ? 0 : 1.5), reading('dipMm', key, 10), reading('dropMm', key, 1.75)]),
  ...touch, stuck,
];

/** The same grand with the leads of three keys, found and planned: one drilled and plugged, one left, one without lead. */
export const leadedReadings: readonly Reading[] = [
  ...grandReadings,
  ...leadsOf(40, 'found', [[178, 12.7], [100, 11]]), ...leadsOf(40, 'planned', [[178, 12.7], [140, 12.7]]), ...leadsOf(41, 'found', [[150, 11]]), ...leadsOf(41, 'planned', [[150, 11]]),
  ...leadsOf(42, 'found', [[160, 12.7]]), { ...reading('lead1PositionMm', 42, 0), state: 'planned', typed: null, value: null, outcome: 'missing' },
  reading('frontWeightG', 40, 24), reading('frontWeightG', 42, 24), reading('keyWidthMm', 0, 13, 'colour'), reading('keyWidthMm', 1, 11.5, 'colour'),
];

/** Plain strings of two octaves and a half: lengths and wires in a smooth run, one B measured. */
export const strungReadings: readonly Reading[] = [
  ...Array.from({ length: 30 }, (_, index) => 35 + index).flatMap((key) => [reading('speakingLengthMm', key, Number((52 * 1.86 ** ((88 - key) / 12)).toFixed(1))), reading('wireDiameterMm', key, Number((1.1 - 0.004 * (key - 35)).toFixed(3)))]),
  reading('inharmonicityB', 49, 0.00072),
];

const spec = { blowMm: 45, letOffMm: 1.5, dropMm: 1.75, aftertouchMm: 1, checkMm: 14 };

/** What is asked of it: the dip follows; and the minutes of some jobs. */
export const grandTerms: ActionTermsDraft = {
  operationMinutes: [{ operation: 'easeKeyBushing', minutes: 2 }, { operation: 'repinHammer', minutes: 6 }, { operation: 'replaceRoller', minutes: 8 }, { operation: 'addLead', minutes: 6 }, { operation: 'removeLead', minutes: 4 }],
  setUpMinutes: [{ setUp: 'actionOut', minutes: 10 }, { setUp: 'keysOut', minutes: 20 }, { setUp: 'stackOff', minutes: 15 }],
  regulationFloats: 'dip', keyLevelMm: 0, sharpHeightMm: 12, regulation: [{ register: 'bass', ...spec, letOffMm: 2.5 }, { register: 'middle', ...spec }, { register: 'treble', ...spec }],
};

const kept = { id: 'k', madeAt: '2026-11-25T10:00:00Z' };

/** Three days of air, a plan of care, and a move with its arrival and what was seen before. */
export const careMaterial: CareMaterial = {
  passes: [],
  air: airHoursOf(Array.from({ length: 72 }, (_, hour) => ({ minute: minuteOf('2026-11-20T00:00') + 60 * hour, temperatureC: 20 + (hour % 2), humidityPct: hour < 48 ? 45 : 33 }))),
  cards: [
    careCardSchema.parse({ ...usualPlan, ...kept, strungOn: '2026-03-02', lastTunedOn: '2026-09-02', remark: 'Above 40 % in January.' }),
    careCardSchema.parse({
      kind: 'move', ...kept, on: '2026-11-28', status: 'planned', fromPlace: 'Shop', toPlace: '', mover: null, weightKg: 480, legs: 3, heaviestPct: 40, areaM2: 4.5, peopleKg: 90, footMm: 120, storey: 'upper', steps: 17, narrowestMm: 870, wrap: 'Quilts', remark: '',
      arrival: { temperatureC: 21, humidityPct: 45, surfaceC: 2, laterC: 6, betweenHours: 6 }, before: { on: '2026-11-25', points: [{ part: 'lid', grade: 'marked', words: 'Scratch, 40 mm' }], a4Hz: null, humidityPct: null, photos: [] }, after: null,
    }),
  ],
};

/** What a sheet of the invented grand is made of. */
export function sheetMaterial(locale = 'en', change: Partial<SheetMaterial> = {}): SheetMaterial {
  return {
    instrument: instrumentSchema.parse({ name: 'Workshop grand', kind: 'grand', id: 'g', workshopId: 'w', cycle: 1, demo: false, sections: [] }),
    readings: grandReadings, cycle: 1, state: 'found', action: actionTermsSchema.parse(grandTerms), scale: null, tuning: null, observations: [],
    intent: { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 }, sessions: [sessionSchema.parse({ id: 's', startedAt: '2026-11-25T09:00:00Z', cycle: 1, state: 'found', stepG: 0.5, rule: 'interpolated' })], printedAt: '2026-11-25T10:00:00Z', locale, say: createSay(locale),
    head: { seq: 1234, hash: 'b94d27b9934d3e08a52e52d7da7dabfac484efe37a5380ee9088f7ace2efcde9' }, ...change,
  };
}

/** Rooms of the invented grand: bare, and with rug and lining. */
export const demoRooms = (demoShop()[0]?.steps ?? []).flatMap((step, index) => (step.kind === 'room' ? [roomRecordSchema.parse({ ...step.draft, id: `room${String(index)}`, at: '2026-01-01T00:00:00Z' })] : []));

/** Papers of the invented grand, and a sale of it abroad. */
export function toldPapers() {
  const [grand] = demoShop();
  const records = (grand?.steps ?? []).flatMap((step, index) => (step.kind === 'paper' ? [paperRecordSchema.parse({ ...step.draft, id: `paper${String(index)}`, at: '2026-01-01T00:00:00Z' })] : []));
  return papersToldOf('demo', records, [{ kind: 'shipment', id: 'sold', workshopId: 'demo', at: '2026-01-01T00:00:00Z', changedAt: '2026-01-01T00:00:00Z', sequence: 0, person: null, pianoId: 'demo', on: '2027-03-15', action: 'ship-sold', from: 'DE', to: 'US', hasCrate: true, status: 'planned', details: null }]);
}
