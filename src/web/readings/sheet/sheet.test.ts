import { type Reading, compass88 } from '#instrument';
import { describe, expect, it } from 'vitest';
import type { Parcel } from '../../outbox/parcel.ts';
import { Sheet } from './sheet.ts';

const reading = (key: number, quantity: Reading['quantity'], value: number, id = `${String(key)} ${quantity}`): Reading => ({
  id, cycle: 1, state: 'found', quantity, scope: 'key', index: key, repeat: 1, typed: String(value), value, outcome: null,
  uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2024-01-01T00:00:00Z', by: 'someone',
});
const parcel = (typed: string, status: Parcel['status'] = 'waiting', key = 1): Parcel => ({
  cycle: 1, state: 'found', sessionId: null, locale: 'de-DE', sendId: `send ${typed}`, pianoId: 'p', status, typedAt: 0, order: 1,
  entries: [{ quantity: 'downWeightG', scope: 'key', index: key, typed }],
});
const acknowledged = [reading(1, 'downWeightG', 49), reading(1, 'upWeightG', 26), reading(2, 'downWeightG', 50)];

describe('the sheet', () => {
  it('works balance and friction out of the two weights: 49/26 gives 37.5 and 11.5', () => {
    // common practice, no source
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show(acknowledged, []);
    expect(sheet.row('found', 1)).toMatchObject({ balanceWeightG: 37.5, frictionG: 11.5, upAboveDown: false });
    expect(sheet.row('found', 2).balanceWeightG).toBeUndefined();
  });

  it('leaves balance and friction open where the up weight stands above the down weight, and keeps both', () => {
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show([reading(1, 'downWeightG', 26), reading(1, 'upWeightG', 49)], []);
    expect(sheet.row('found', 1)).toMatchObject({ downWeightG: 26, upWeightG: 49, upAboveDown: true });
    expect([sheet.row('found', 1).balanceWeightG, sheet.row('found', 1).frictionG]).toEqual([undefined, undefined]);
  });

  it('shows what is on its way over what stands, and keeps what stands beside it', () => {
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show(acknowledged, [parcel('51,5', 'conflict')]);
    const cell = sheet.row('found', 1).cells.get('downWeightG/1');
    expect(cell).toMatchObject({ sync: 'conflict', reading: { value: 51.5 }, acknowledged: { value: 49 } });
    expect(sheet.row('found', 1).frictionG).toBe((51.5 - 26) / 2);
  });

  it('draws one row and not the table', () => {
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show(acknowledged, []);
    const before = sheet.rows('found');
    sheet.show(acknowledged, [parcel('51')]);
    const after = sheet.rows('found');
    expect(after.filter((row, index) => row !== before[index]).map(({ key }) => key)).toEqual([1]);
    expect(sheet.rows('finished')).toBe(sheet.rows('finished'));
  });

  it('stays as it is when the same readings come again', () => {
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show(acknowledged, []);
    const before = sheet.rows('found');
    let told = 0;
    sheet.subscribe(() => { told += 1; });
    sheet.show(acknowledged.map((one) => ({ ...one })), []);
    expect([sheet.rows('found') === before, told]).toEqual([true, 0]);
  });

  it('an outcome is no number: nothing is worked out of it', () => {
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show(acknowledged, [{ ...parcel(''), entries: [{ quantity: 'upWeightG', scope: 'key', index: 1, outcome: 'noReturn' }] }]);
    expect(sheet.row('found', 1)).toMatchObject({ outcome: true, downWeightG: 49 });
    expect(sheet.row('found', 1).balanceWeightG).toBeUndefined();
  });

  it('a clear on its way shows an empty cell and still knows what stood there', () => {
    const sheet = new Sheet({ pianoId: 'p', compass: compass88, cycle: 1 });
    sheet.show(acknowledged, [{ ...parcel(''), entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, clear: true }] }]);
    expect(sheet.row('found', 1).cells.get('downWeightG/1')).toMatchObject({ reading: undefined, acknowledged: { value: 49 } });
  });
});
