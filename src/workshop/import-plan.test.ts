import { type Reading, compass85, compass88 } from '#instrument';
import { describe, expect, it } from 'vitest';
import { type ColumnMapping, type Table, batchOf, guessMapping, headerRowOf, planImport, previewOf, readingBatchSchema, readingsOfTable } from './index.ts';

const table = (rows: readonly (readonly string[])[], delimiter = ';'): Table => ({ encoding: 'utf-8', delimiter, sheet: null, sheets: [], rows });
const reading = (over: Partial<Reading>): Reading => ({
  id: 'r1', cycle: 1, state: 'found', quantity: 'downWeightG', scope: 'key', index: 1, repeat: 1, typed: '49', value: 49, outcome: null,
  uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '2026-01-05T10:00:00Z', by: 'p1', ...over,
});
interface Extra { standing?: readonly Reading[]; mapping?: ColumnMapping; locale?: string; compass?: typeof compass88 }
const plan = (rows: readonly (readonly string[])[], extra: Extra = {}) => planImport({ table: table(rows), compass: compass88, standing: [], cycle: 1, state: 'found', ...extra });
const HEADER = ['key', 'downWeightG', 'upWeightG'];

describe('what becomes of each row', () => {
  const standing = [
    reading({ id: 'a', index: 1, typed: '49,0', value: 49 }),
    reading({ id: 'b', index: 2, typed: '50', value: 50 }),
    reading({ id: 'other', index: 3, state: 'finished' }),
  ];
  const planned = plan([HEADER, ['1', '49', ''], ['2', '51', ''], ['3', '48', '25'], ['4', 'heavy', '25'], ['5', '', ''], ['', '', '']], { standing });

  it('is told row by row, as a spreadsheet counts rows', () => {
    expect(planned.rows.map(({ row, outcome }) => [row, outcome])).toEqual([[2, 'same'], [3, 'update'], [4, 'create'], [5, 'refused'], [6, 'empty'], [7, 'empty']]);
    expect(planned.counts).toEqual({ create: 1, update: 1, same: 1, refused: 1, empty: 2 });
  });

  it('writes what changes, typed text and all, and names the reading it was based on', () => {
    expect(planned.entries).toEqual([
      { quantity: 'downWeightG', scope: 'key', index: 2, repeat: 1, typed: '51', remark: '', basis: 'measured', basedOn: 'b' },
      { quantity: 'downWeightG', scope: 'key', index: 3, repeat: 1, typed: '48', basedOn: null },
      { quantity: 'upWeightG', scope: 'key', index: 3, repeat: 1, typed: '25', basedOn: null },
    ]);
  });

  it('makes one batch, or none when there is nothing to write', () => {
    const batch = { cycle: 1, state: 'found', sessionId: null } as const;
    expect(readingBatchSchema.safeParse(batchOf(planned, batch)).success).toBe(true);
    expect(batchOf(plan([HEADER, ['1', '49', '']], { standing }), batch)).toBeNull();
  });

  it('names the cell of a figure it cannot read', () => {
    expect(planned.rows[3]?.issues).toMatchObject([{ path: 'row 5, column B (downWeightG)', given: 'heavy', code: 'format' }]);
  });

  it('refuses a row whole: no half of a pair is taken', () => {
    expect(plan([HEADER, ['1', '49', 'x']]).entries).toEqual([]);
  });

  it('keeps a remark and a basis the file says nothing of', () => {
    const noted = [reading({ id: 'a', remark: 'bushing tight', basis: 'estimated' })];
    expect(plan([HEADER, ['1', '50', '']], { standing: noted }).entries).toMatchObject([{ typed: '50', remark: 'bushing tight', basis: 'estimated', basedOn: 'a' }]);
    expect(plan([['key', 'dw', 'remark'], ['1', '49', 'eased']], { standing: noted }).entries).toMatchObject([{ typed: '49', remark: 'eased' }]);
  });
});

describe('dry run that lies', () => {
  it('cannot: the preview counts the very entries the run writes', () => {
    const planned = plan([HEADER, ['1', '49', '26'], ['2', '??', '25'], ['3', '50', '']]);
    const preview = previewOf(planned, table([HEADER]), 'en');
    expect(preview.counts).toEqual(planned.counts);
    expect(batchOf(planned, { cycle: 1, state: 'found' })?.entries).toEqual(planned.rows.flatMap(({ entries }) => entries));
  });

  it('says in words of either language what is unlikely and what cannot be read', () => {
    const planned = plan([HEADER, ['1', '90', '26'], ['2', 'abc', '26'], ['3', '12 mm', '26'], ['4', '90', 'x']]);
    const said = (locale: string) => previewOf(planned, table([]), locale).rows.map(({ problems }) => problems.join(' | '));
    expect(said('en')).toEqual([
      'Column B: “90” is unlikely: usual is 35 to 75 g. It is taken as it is.',
      'Column B: “abc” cannot be read as a figure. Write a number such as 1.25 or 1,25, in g.',
      'Column B: “12 mm” has a unit that does not fit. A figure in g is needed.',
      'Column C: “x” cannot be read as a figure. Write a number such as 1.25 or 1,25, in g.',
    ]);
    expect(said('de')).toEqual([
      'Spalte B: „90“ ist unwahrscheinlich: Üblich sind 35 bis 75 g. Der Wert wird so übernommen.',
      'Spalte B: „abc“ ist nicht als Wert zu lesen. Bitte eine Zahl wie 1,25 oder 1.25 schreiben, in g.',
      'Spalte B: „12 mm“ hat eine Einheit, die nicht passt. Ein Wert in g wird gebraucht.',
      'Spalte C: „x“ ist nicht als Wert zu lesen. Bitte eine Zahl wie 1,25 oder 1.25 schreiben, in g.',
    ]);
  });

  it('shows the first ten rows and every refused one, with reasons in the reader’s language', () => {
    const rows = Array.from({ length: 30 }, (_, index) => [String(index + 1), index === 20 ? '5O' : '49', '26']);
    const planned = plan([HEADER, ...rows], { locale: 'de' });
    const preview = previewOf(planned, table([]), 'de');
    expect(preview.rows.map(({ row }) => row)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 22]);
    expect(preview.rows.at(-1)?.problems.join()).toContain('Spalte B');
    expect(preview.rows.at(-1)?.problems.join()).toContain('5O');
  });
});

describe('decimal comma dropped or multiplied by 100', () => {
  const values = (rows: readonly (readonly string[])[], locale?: string) => {
    const read = readingsOfTable({ table: table(rows, ','), compass: compass88, state: 'found', sessionId: null, at: '', by: '', ...(locale === undefined ? {} : { locale }) });
    return read.ok ? read.value.map(({ value, typed }) => [value, typed]) : read.issues.map(({ code }) => code);
  };

  it('is read as a decimal sign and kept as it was typed', () => {
    expect(values([HEADER, ['1', '49,5', '26,25']])).toEqual([[49.5, '49,5'], [26.25, '26,25']]);
  });

  it('is refused where it could also part thousands, and read where it cannot', () => {
    expect(values([HEADER, ['1', '49,125', '']], 'en')).toEqual(['ambiguous']);
    expect(values([HEADER, ['1', '49,125', '']], 'de')).toEqual([[49.125, '49,125']]);
  });

  it('never loses its decimals to the next column when the columns are parted by commas too', () => {
    expect(values([HEADER, ['1', '49', '5', '26', '5']])).toEqual(['length']);
  });
});

describe('overflow refused by count', () => {
  it('takes the keys there are and counts the rest as refused', () => {
    const rows = Array.from({ length: 90 }, (_, index) => [String(index + 1), '49', '26']);
    expect(plan([HEADER, ...rows]).counts).toEqual({ create: 88, update: 0, same: 0, refused: 2, empty: 0 });
    expect(plan([HEADER, ...rows], { compass: compass85 }).counts).toMatchObject({ create: 85, refused: 5 });
  });
});

describe('the key of a row', () => {
  const keyOf = (key: string, note = '', extra: Extra = {}) => {
    const [row] = plan([['key', 'note', 'dw'], [key, note, '49']], extra).rows;
    return row?.issues[0]?.code ?? (row?.place?.scope === 'key' ? row.place.index : undefined);
  };

  it.each([
    ['1', '', 1], ['88', '', 88], ['40.0', '', 40], [' 7 ', '', 7], ['', 'A0', 1], ['', 'c#4', 41], ['', 'D♭4', 41], ['', 'Cis4', 41], ['', 'Es4', 43], ['', 'As4', 48], ['', 'H3', 39], ['C4', '', 40],
    ['40', 'C4', 40], ['0', '', 'choice'], ['89', '', 'choice'], ['1.5', '', 'choice'], ['4O', '', 'choice'], ['mean', '', 'choice'], ['', 'X4', 'choice'], ['', '', 'required'], ['40', 'D4', 'conflict'],
  ])('%j with note %j is %s', (key, note, expected) => {
    expect(keyOf(key, note)).toBe(expected);
  });

  it('takes B for B♭ only in a file that writes H, and asks a German reader otherwise', () => {
    const notes = (rows: readonly string[], locale: string) => plan([['note', 'dw'], ...rows.map((note) => [note, '49'])], { locale }).rows.map(({ place, issues }) => place?.index ?? issues[0]?.code);
    expect(notes(['B3'], 'en')).toEqual([39]);
    expect(notes(['B3', 'H3'], 'en')).toEqual([38, 39]);
    expect(notes(['B3'], 'de')).toEqual(['ambiguous']);
    expect(keyOf('39', 'B3', { locale: 'de' })).toBe(39);
  });

  it('is refused in both rows when two name it, each naming the other', () => {
    const planned = plan([HEADER, ['7', '49', ''], ['8', '50', ''], ['7', '47', '']]);
    expect(planned.counts).toMatchObject({ create: 1, refused: 2 });
    expect(planned.rows.flatMap(({ issues }) => issues.map(({ code, params }) => [code, params?.['other']]))).toEqual([['duplicate', 4], ['duplicate', 2]]);
  });
});

describe('cells', () => {
  const entriesOf = (header: readonly string[], ...rows: readonly (readonly string[])[]) => plan([header, ...rows]).entries;

  it('hold outcomes in place of figures, in either language', () => {
    expect(entriesOf(HEADER, ['1', 'sticks', 'klemmt'], ['2', 'fehlt', 'Does not return'], ['3', 'nicht wägbar', 'overRange']).map(({ outcome, typed }) => [outcome, typed])).toEqual([
      ['sticks', undefined], ['sticks', undefined], ['missing', undefined], ['noReturn', undefined], ['unweighable', undefined], ['overRange', undefined],
    ]);
  });

  it('take the unit of the header for bare numbers, and keep a unit of their own', () => {
    expect(entriesOf(['key', 'DW (oz)'], ['1', '1.75'], ['2', '50 g']).map(({ typed }) => typed)).toEqual(['1.75 oz', '50 g']);
  });

  it('warn of what is unlikely and refuse what cannot be', () => {
    const planned = plan([HEADER, ['1', '90', ''], ['2', '4900', ''], ['3', '-5', '']]);
    expect(planned.rows.map(({ outcome, warnings }) => [outcome, warnings.length])).toEqual([['create', 1], ['refused', 0], ['refused', 0]]);
  });

  it('belong to the right kind of row: lever arms to naturals and sharps', () => {
    const header = ['key', 'downWeightG', 'keyFrontMm'];
    expect(entriesOf(header, ['naturals', '', '222'], ['Obertasten', '', '172,5'])).toMatchObject([{ scope: 'colour', index: 0, typed: '222' }, { scope: 'colour', index: 1, typed: '172,5' }]);
    expect(plan([header, ['1', '49', '222']]).rows[0]?.issues).toMatchObject([{ code: 'choice', path: 'row 2, column C (keyFrontMm)' }]);
    expect(plan([header, ['sharps', '49', '']]).rows[0]?.outcome).toBe('refused');
  });

  it('of a remark need a figure to belong to', () => {
    expect(plan([['key', 'dw', 'remark'], ['1', '', 'lead loose']]).rows[0]?.issues).toMatchObject([{ code: 'required' }]);
  });

  it('too long to keep are refused', () => {
    expect(plan([HEADER, ['1', Array(150).fill('1').join('+'), '']]).rows[0]?.issues).toMatchObject([{ code: 'length' }]);
    expect(plan([['key', 'dw', 'remark'], ['1', '49', 'x'.repeat(2001)]]).rows[0]?.issues).toMatchObject([{ code: 'length' }]);
  });
});

describe('what a column holds', () => {
  const targets = (...headers: readonly string[]) => guessMapping(headers).map(({ target, reason }) => target ?? reason);

  it('is guessed from registry names, catalogue names and spellings of the bench', () => {
    expect(targets('Key', 'Note', 'Down weight [g]', 'Up-Weight', 'front_weight', 'HAMMER', 'Wippen', 'Remarks')).toEqual(['key', 'note', 'downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG', 'remark']);
    expect(targets('Tasten-Nr.', 'Ton', 'Niedergewicht (g)', 'Aufgewicht in g', 'Vordergewicht', 'Hammergewicht', 'Hebeglied', 'Tastenreibung', 'Bemerkung')).toEqual(['key', 'note', 'downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG', 'keyFrictionG', 'remark']);
    expect(targets('downWeightG#2', 'downWeightG remark', 'upWeightG#3 basis')).toEqual(['downWeightG#2', 'downWeightG remark', 'upWeightG#3 basis']);
  });

  it('is left out with its reason when worked out, doubled, unknown, unnamed or of another kind of unit', () => {
    expect(targets('DW', 'dw', 'BW', 'Friction', 'Reibung', 'colour', ' ', 'UW (mm)')).toEqual(['downWeightG', 'repeated', 'derived', 'derived', 'derived', 'unknown', 'unnamed', 'unit']);
  });

  it('can be said by header or by letter, and the rest is still guessed', () => {
    const rows = [['Nummer', 'first', 'second', 'UW'], ['1', '49', '50', '26']];
    expect(plan(rows, { mapping: { first: 'downWeightG', C: 'downWeightG#2', UW: null } }).entries.map(({ quantity, repeat, typed }) => [quantity, repeat, typed])).toEqual([['downWeightG', 1, '49'], ['downWeightG', 2, '50']]);
  });

  it.each<[string, ColumnMapping, string]>([
    ['no such column', { third: 'upWeightG' }, 'unknown'],
    ['no such content', { B: 'touch' }, 'choice'],
    ['two columns for one content', { B: 'downWeightG', C: 'downWeightG' }, 'duplicate'],
    ['a unit of another kind', { 'size (mm)': 'upWeightG' }, 'unit'],
    ['no key', { key: null }, 'required'],
    ['no figure', { B: null, C: null }, 'required'],
  ])('refuses the whole file for %s, and plans nothing', (_, mapping, code) => {
    const planned = plan([['key', 'DW', 'size (mm)'], ['1', '49', '7']], { mapping });
    expect(planned.issues.map((issue) => issue.code)).toContain(code);
    expect([planned.entries, planned.rows]).toEqual([[], []]);
  });

  it('needs to be said by letter where the file has no header', () => {
    const rows = [['1', '49', '26']];
    expect(plan(rows).issues.map(({ code }) => code)).toEqual(['required', 'required']);
    expect(plan(rows, { mapping: { A: 'key', B: 'downWeightG', C: 'upWeightG' } }).entries).toHaveLength(2);
  });
});

describe('where the header stands', () => {
  it.each<[string, string[][], number | null]>([
    ['in the first row', [['key', 'dw'], ['1', '49']], 0],
    ['below titles and blank rows', [['Weights of June'], ['', ''], ['Key', 'Down'], ['1', '49']], 2],
    ['nowhere', [['1', '49'], ['2', '50']], null],
    ['nowhere, with note names', [['A0', '49']], null],
    ['in strange words', [['Pos', 'erste'], ['1', '49']], 0],
    ['nowhere in an empty table', [], null],
  ])('%s', (_, rows, index) => {
    expect(headerRowOf(rows)).toBe(index);
  });
});

describe('a table without a store', () => {
  const loose = { compass: compass88, state: 'finished', sessionId: 's', at: '2026-01-05T10:00:00Z', by: 'file' } as const;

  it('gives readings that name their rows', () => {
    const read = readingsOfTable({ table: table([HEADER, ['1', '49', 'sticks']]), ...loose });
    expect(read).toMatchObject({ ok: true, value: [{ id: 'row-2/downWeightG', value: 49, typed: '49', state: 'finished', sessionId: 's' }, { id: 'row-2/upWeightG', value: null, outcome: 'sticks' }] });
  });

  it('leaves nothing out in silence: one bad row refuses all, and all bad rows are named', () => {
    const read = readingsOfTable({ table: table([HEADER, ['1', '49', '26'], ['89', '49', '26'], ['3', 'x', '26']]), ...loose });
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual(['row 3', 'row 4, column B (downWeightG)']);
  });
});
