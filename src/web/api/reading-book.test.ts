import type { Reading } from '#instrument';
import { describe, expect, it } from 'vitest';
import type { Parcel, ParcelEntry } from '../outbox/parcel.ts';
import { bookOf } from './reading-book.ts';

const reading = (index: number, value: number, state: Reading['state'] = 'found'): Reading => ({
  id: `${state} ${String(index)} ${String(value)}`, cycle: 1, state, quantity: 'downWeightG', scope: 'key', index, repeat: 1, typed: String(value), value,
  outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2026-01-01T00:00:00Z', by: 'bench',
});
const parcel = (entries: readonly ParcelEntry[], rest: Partial<Parcel> = {}): Parcel => ({
  sendId: 'send-0001', pianoId: 'p', cycle: 1, state: 'found', sessionId: null, status: 'waiting', typedAt: 0, order: 1, entries, ...rest,
});
const typed = (index: number, text: string): ParcelEntry => ({ quantity: 'downWeightG', scope: 'key', index, typed: text });
const at = (index: number): string => `c1/found/downWeightG/key/${String(index)}/1`;
let piano = 0;
/** A piano of its own for each test, since a book remembers the last one of its piano. */
const fresh = (): string => `p${String((piano += 1))}`;

describe('the book of readings', () => {
  it('shows a figure still on its way, understood as typed, over what the server keeps', () => {
    const id = fresh();
    const book = bookOf(id, 1, [reading(1, 49), reading(2, 50)], [parcel([typed(1, '51,5')], { pianoId: id, locale: 'de' })]);
    expect(book.found.get(at(1))?.value).toBe(51.5);
    expect(book.found.get(at(2))?.value).toBe(50);
  });

  it('takes a cleared place out, and shows an outcome without a number', () => {
    const id = fresh();
    const entries: readonly ParcelEntry[] = [
      { quantity: 'downWeightG', scope: 'key', index: 1, clear: true },
      { quantity: 'downWeightG', scope: 'key', index: 2, outcome: 'sticks' },
    ];
    const book = bookOf(id, 1, [reading(1, 49), reading(2, 50)], [parcel(entries, { pianoId: id })]);
    expect(book.found.has(at(1))).toBe(false);
    expect(book.found.get(at(2))).toMatchObject({ value: null, outcome: 'sticks' });
  });

  it('does not show what the server refused, nor what belongs to another piano or stay', () => {
    const id = fresh();
    const parcels = [parcel([typed(1, '51')], { pianoId: id, status: 'refused' }), parcel([typed(1, '52')], { pianoId: 'other' }), parcel([typed(1, '53')], { pianoId: id, cycle: 2 })];
    expect(bookOf(id, 1, [reading(1, 49)], parcels).found.get(at(1))?.value).toBe(49);
  });

  it('keeps the identity of a state while nothing of it changes, so that its analysis is not worked out again', () => {
    const id = fresh();
    const kept = [reading(1, 49), reading(1, 48, 'finished')];
    const waiting = parcel([typed(1, '51')], { pianoId: id });
    const before = bookOf(id, 1, kept, [waiting]);
    expect(bookOf(id, 1, kept, [{ ...waiting, status: 'sending' }])).toMatchObject(before);
    expect(bookOf(id, 1, kept, [{ ...waiting, status: 'sending' }]).found).toBe(before.found);
    const after = bookOf(id, 1, kept, []);
    expect(after.found).not.toBe(before.found);
    expect(after.finished).toBe(before.finished);
  });
});
