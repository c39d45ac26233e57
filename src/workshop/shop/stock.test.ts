import { describe, expect, it } from 'vitest';
import { type ShopCard, shopCardSchema } from './records.ts';
import { shortOf, stockLevels, sumOfAmounts } from './stock.ts';

const kept = { workshopId: 'shop', at: '', changedAt: '', sequence: 0, details: null };
const card = (body: object): ShopCard => shopCardSchema.parse({ ...kept, ...body });
const wire = card({ kind: 'stock', id: 'w', what: 'wire', name: 'Wire', sizeMm: 0.9, unit: 'm', reorderAt: 0.3 });
const move = (amount: number): ShopCard => card({ kind: 'stockMove', id: String(amount), stock: 'w', on: '2031-01-01', amount, reason: 'used' });
const order = (status: string): ShopCard => card({ kind: 'purchase', id: status, status, lines: [{ stock: 'w', name: 'Wire', amount: 50, unit: 'm' }, { name: 'Other', amount: 7, unit: 'm' }] });

describe('what is in stock', () => {
  it('is the sum of what was put in and taken out, to the last decimal typed', () => {
    expect(stockLevels([wire, move(0.1), move(0.2)])).toMatchObject([{ level: 0.3, isLow: true, onOrder: 0 }]);
    expect(stockLevels([wire, move(40), move(-39.6)])).toMatchObject([{ level: 0.4, isLow: false }]);
    expect(stockLevels([wire])).toMatchObject([{ level: 0, isLow: true }]);
  });

  it('counts as on order what is ordered, and neither drafts nor what has come', () => {
    expect(stockLevels([wire, order('ordered'), order('draft'), order('received'), order('cancelled')])).toMatchObject([{ onOrder: 50 }]);
  });

  it('refuses to take out more than there is, and says how much that is', () => {
    const taking = (amount: number) => shortOf({ kind: 'stockMove', stock: 'w', on: '2031-01-01', amount, reason: 'used', pianoId: null, work: null, purchase: null, details: { words: '' } }, sumOfAmounts([0.1, 0.2]));
    expect(taking(-0.3)).toEqual([]);
    expect(taking(-0.31)).toMatchObject([{ code: 'range', path: 'amount', given: -0.31, params: { there: 0.3 } }]);
  });
});
