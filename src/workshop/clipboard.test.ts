import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseClipboard } from './index.ts';

describe('a block copied from a spreadsheet', () => {
  it.each<[string, string, string[][]]>([
    ['nothing', '', []],
    ['one cell', '49', [['49']]],
    ['one cell and the line end behind it', '49\r\n', [['49']]],
    ['two columns', '49\t26\n50\t27\n', [['49', '26'], ['50', '27']]],
    ['old line ends', '49\r50\r', [['49'], ['50']]],
    ['an empty cell in the middle', '49\n\n50\n', [['49'], [''], ['50']]],
    ['an empty last cell, copied on purpose', '49\n\n', [['49'], ['']]],
    ['one empty cell', '\n', [['']]],
    ['empty cells beside each other', '\t\n49\t', [['', ''], ['49', '']]],
    ['a line end inside quotes', '"two\nlines"\t49\n', [['two\nlines', '49']]],
    ['a tab inside quotes', '"a\tb"', [['a\tb']]],
    ['doubled quotes', '"say ""a""\n"\t1', [['say "a"\n', '1']]],
    ['inches are not quotes', '3 1/4"\t"half', [['3 1/4"', '"half']]],
    ['a quote that never closes', '"49\n50', [['"49'], ['50']]],
    ['the byte order mark and the closing zero some programs add', '\uFEFF49\t26\r\n\0', [['49', '26']]],
  ])('%s', (_, text, rows) => {
    expect(parseClipboard(text)).toEqual(rows);
  });

  it('trailing newline overwrites the cell below: it does not', () => {
    for (const end of ['', '\n', '\r\n', '\r']) expect(parseClipboard(`48\n49${end}`)).toHaveLength(2);
  });

  it('gives back any block, quoted as spreadsheets quote', () => {
    const cell = fc.string({ unit: fc.constantFrom('4', '9', ',', '"', '\t', '\n', '\r', 'a', ' ') });
    const block = fc.integer({ min: 1, max: 4 }).chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }));
    const quoted = (text: string) => (/["\t\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
    fc.assert(
      fc.property(block, fc.constantFrom('\n', '\r\n'), (rows, end) => {
        const text = rows.map((row) => row.map(quoted).join('\t') + end).join('');
        expect(parseClipboard(text)).toEqual(rows);
      }),
    );
  });
});
