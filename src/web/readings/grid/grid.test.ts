import { type Reading, compass88, keysOf } from '#instrument';
import { parseClipboard } from '#workshop';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outcomeWords, understandCell } from '../sheet/understand-cell.ts';
import { type BlockContext, clearBlock, copyBlock, fillDown, wholeNumber } from './grid-block.ts';
import { columnsOf, usualColumns } from './grid-columns.ts';
import { type GridSelection, boxOf, moveSelection, selectOne } from './grid-move.ts';
import { type PasteContext, planPaste } from './grid-paste.ts';

const keys = keysOf(compass88);
const columns = columnsOf(usualColumns, 1);
const words = outcomeWords([['sticks', 'klemmt'], ['noReturn', 'kehrt nicht zurück']]);
const context: PasteContext = { keys, columns, locale: 'en-GB', words };
const size = { rows: 88, columns: columns.length, page: 10 };
const boxAt = (row: number, column: number) => boxOf(selectOne({ row, column }, size));
const paste = (text: string, row = 0, column = 0, at: PasteContext = context) => planPaste(parseClipboard(text), boxAt(row, column), at);

describe('columns of the grid', () => {
  it('shows balance and friction behind the two weights', () => {
    expect(columns.map(({ id }) => id)).toEqual(['downWeightG/1', 'upWeightG/1', 'balanceWeightG', 'frictionG']);
  });
  it('gives every repeat a column of its own', () => {
    expect(columnsOf(['downWeightG', 'frontWeightG'], 2).map(({ id }) => id)).toEqual(['downWeightG/1', 'downWeightG/2', 'frontWeightG/1', 'frontWeightG/2']);
  });
});

describe('moving in the grid', () => {
  const from = (row: number, column: number): GridSelection => selectOne({ row, column }, size);
  it.each([
    ['ArrowDown', false, 1, 0],
    ['End', false, 0, 3],
    ['End', true, 87, 3],
    ['PageDown', false, 10, 0],
    ['ArrowUp', false, 0, 0],
    ['ArrowLeft', false, 0, 0],
  ])('%s with ctrl %s leads to row %d, column %d', (key, ctrl, row, column) => {
    expect(moveSelection(from(0, 0), { key, ctrl, shift: false }, size)?.focus).toEqual({ row, column });
  });
  it('leaves Tab, Escape and letters to others', () => {
    for (const key of ['Tab', 'Escape', 'a', 'Enter']) expect(moveSelection(from(0, 0), { key, ctrl: false, shift: false }, size)).toBeUndefined();
  });
  it('draws a selection out with shift and drops it without', () => {
    const wide = moveSelection(from(3, 0), { key: 'ArrowDown', ctrl: false, shift: true }, size);
    expect(wide === undefined ? undefined : boxOf(wide)).toEqual({ top: 3, bottom: 4, left: 0, right: 0 });
  });
  it('never leaves the grid', () => {
    const stroke = fc.record({ key: fc.constantFrom('ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Home', 'End', 'PageUp', 'PageDown'), ctrl: fc.boolean(), shift: fc.boolean() });
    fc.assert(
      fc.property(fc.array(stroke), (strokes) => {
        const { focus } = strokes.reduce<GridSelection>((at, next) => moveSelection(at, next, size) ?? at, from(0, 0));
        expect(focus.row >= 0 && focus.row < size.rows && focus.column >= 0 && focus.column < size.columns).toBe(true);
      }),
    );
  });
});

describe('what a cell means', () => {
  const read = (text: string) => understandCell('downWeightG', text, { path: 'cell', locale: 'de-DE', words });
  it('reads decimal commas, outcomes as words and nothing', () => {
    expect(read('49,5')).toMatchObject({ kind: 'figure', value: 49.5, typed: '49,5' });
    expect(read('Klemmt')).toEqual({ kind: 'outcome', outcome: 'sticks' });
    expect(read('  ')).toEqual({ kind: 'empty' });
    expect(read('4900')).toMatchObject({ kind: 'refused', typed: '4900' });
  });
});

describe('pasting a block', () => {
  it('a trailing newline overwrites nothing below', () => {
    const plan = paste('49\t26\r\n50\t27\r\n');
    expect(plan).toMatchObject({ kind: 'block', empty: 0, refused: [] });
    expect(plan.kind === 'block' && plan.writes.map(({ key, quantity, typed }) => `${String(key)} ${quantity} ${typed ?? ''}`)).toEqual([
      '1 downWeightG 49', '1 upWeightG 26', '2 downWeightG 50', '2 upWeightG 27',
    ]);
  });
  it('rows that would fall below the last key are counted, and nothing is written', () => {
    expect(paste('49\n'.repeat(20), 80)).toEqual({ kind: 'tooManyRows', over: 12, lastKey: 88 });
  });
  it('columns that would fall outside are counted', () => {
    expect(paste('1\t2\t3\t4\t5')).toEqual({ kind: 'tooManyColumns', over: 1 });
  });
  it('names every cell it cannot take and keeps the rest', () => {
    const plan = paste('49\t26\nx\t4900\n50\t27');
    expect(plan.kind === 'block' && plan.refused.map(({ key, column, text }) => [key, column.id, text])).toEqual([[2, 'downWeightG/1', 'x'], [2, 'upWeightG/1', '4900']]);
    expect(plan.kind === 'block' && plan.writes).toHaveLength(4);
  });
  it('never takes a figure for a column that is worked out', () => {
    expect(paste('37.5', 0, 2)).toMatchObject({ kind: 'block', writes: [], refused: [{ key: 1, text: '37.5' }] });
  });
  it('an empty cell leaves what stands', () => {
    expect(paste('49\t\n\t27')).toMatchObject({ kind: 'block', empty: 2, writes: [{ key: 1, typed: '49' }, { key: 2, typed: '27' }] });
  });
  it('leaves a heading row out, so that no figure lands on the next key', () => {
    expect(paste('DW\tUW\n49\t26')).toMatchObject({ kind: 'block', heading: ['DW', 'UW'], writes: [{ key: 1 }, { key: 1 }] });
  });
  it('tells unlikely figures but takes them', () => {
    const plan = paste('95');
    expect(plan.kind === 'block' && [plan.writes.length, plan.unlikely.length]).toEqual([1, 1]);
  });
  it('one cell fills the selection', () => {
    const box = { top: 4, bottom: 6, left: 0, right: 0 };
    const plan = planPaste([['klemmt']], box, context);
    expect(plan.kind === 'block' && plan.writes.map(({ key, outcome }) => [key, outcome])).toEqual([[5, 'sticks'], [6, 'sticks'], [7, 'sticks']]);
  });
  it('accounts for every cell of a block that fits', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.constantFrom('49', '26,5', '', 'x', 'klemmt', '4900'), { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 30 }), (block) => {
        const plan = planPaste(block, boxAt(0, 0), context);
        if (plan.kind !== 'block') throw new Error(plan.kind);
        const cells = block.length * 2 - (plan.heading?.length ?? 0);
        expect(plan.writes.length + plan.refused.length + plan.empty).toBe(cells);
      }),
    );
  });
});

describe('block commands', () => {
  const reading = (key: number, typed: string | null, value: number | null, outcome: Reading['outcome'] = null): Reading => ({
    id: `r${String(key)}`, cycle: 1, state: 'found', quantity: 'downWeightG', scope: 'key', index: key, repeat: 1,
    typed, value, outcome, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2024-01-01T00:00:00Z', by: 'someone',
  });
  const sheet = new Map([[1, reading(1, '49,5', 49.5)], [2, reading(2, '50', 50)], [4, reading(4, null, null, 'sticks')]]);
  const block: BlockContext = { keys, columns, standing: (key, column) => (column.id === 'downWeightG/1' ? sheet.get(key) : undefined), derived: (_, column) => (column.id === 'frictionG' ? 11.5 : undefined) };

  it('fills the top row down as it was typed, and leaves what is the same', () => {
    expect(fillDown({ top: 0, bottom: 2, left: 0, right: 3 }, block)).toEqual([
      { key: 2, quantity: 'downWeightG', repeat: 1, typed: '49,5' },
      { key: 3, quantity: 'downWeightG', repeat: 1, typed: '49,5' },
    ]);
  });
  it('fills a single row from the one above', () => {
    expect(fillDown({ top: 4, bottom: 4, left: 0, right: 0 }, block)).toEqual([{ key: 5, quantity: 'downWeightG', repeat: 1, outcome: 'sticks' }]);
    expect(fillDown({ top: 0, bottom: 0, left: 0, right: 0 }, block)).toEqual([]);
  });
  it('clears only what stands', () => {
    expect(clearBlock({ top: 0, bottom: 3, left: 0, right: 3 }, block).map(({ key, clear }) => [key, clear])).toEqual([[1, true], [2, true], [4, true]]);
  });
  it('copies unrounded figures with the decimal sign of the reader, and reads them back', () => {
    const text = copyBlock({ top: 0, bottom: 3, left: 0, right: 3 }, block, { number: (value) => wholeNumber(value, 'de-DE'), outcome: () => 'klemmt' });
    expect(text).toBe('49,5\t\t\t11,5\n50\t\t\t11,5\n\t\t\t11,5\nklemmt\t\t\t11,5');
    expect(parseClipboard(text)).toHaveLength(4);
  });
});
