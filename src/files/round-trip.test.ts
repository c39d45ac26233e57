import { type Outcome, type Reading, compass85, compass88, keysOf, outcomes, quantityNames, quantityOf } from '#instrument';
import { mustBe } from '#result';
import { planImport, tableOfReadings } from '#workshop';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable, tableFormats, writeTable } from './index.ts';

const at = { cycle: 2, state: 'finished' } as const;

/** A value anywhere in what is possible, with as many digits as a double holds. */
const figure = ([min, max]: readonly [number, number]) =>
  fc.oneof(fc.double({ min, max, noNaN: true }), fc.integer({ min: Math.ceil(min * 10), max: Math.floor(max * 10) }).map((tenths) => tenths / 10)).map((value) => (value === 0 ? 0 : value));

const remark = fc.oneof(fc.constant(''), fc.string({ maxLength: 12 }), fc.constantFrom('=1+1', '+49', '-3,5', '@home', "'=quoted", '"tight"', 'two\nlines', 'two\r\nlines', 'a;b,c\td', 'über ♯', ' space ', 'toString', '__proto__', '_x0041_', 'bell\u0007'));

const readings: fc.Arbitrary<readonly Reading[]> = fc
  .array(
    fc.constantFrom(...quantityNames).chain((quantity) => {
      const { scope, possible, whole } = quantityOf(quantity);
      return fc.record({
        quantity: fc.constant(quantity),
        scope: fc.constant(scope),
        index: scope === 'key' ? fc.constantFrom(...keysOf(compass85)) : scope === 'colour' ? fc.constantFrom(0, 1) : fc.constant(0),
        repeat: fc.integer({ min: 1, max: 3 }),
        content: fc.oneof({ weight: 4, arbitrary: (whole === true ? fc.integer({ min: possible[0], max: possible[1] }) : figure(possible)).map((value) => ({ value, outcome: null })) }, { weight: 1, arbitrary: fc.constantFrom(...outcomes).map((outcome: Outcome) => ({ value: null, outcome })) }),
        basis: fc.constantFrom('measured', 'measured', 'estimated', 'derived'),
        remark: remark.filter((text) => text === '' || text.trim() !== ''),
      });
    }),
    { maxLength: 40 },
  )
  .map((cells) => [...new Map(cells.map((cell) => [`${cell.quantity}/${String(cell.index)}/${String(cell.repeat)}`, cell])).values()])
  .map((cells) =>
    cells.map(({ content, ...cell }, id): Reading => ({ ...at, ...cell, ...content, id: `r${String(id)}`, typed: content.value === null ? null : String(content.value), uncertainty: null, sessionId: null, at: '2026-01-05T10:00:00Z', by: 'p1' })),
  );

describe('an export read back in', () => {
  const cases = tableFormats.flatMap((format) => ['en-GB', 'de-DE'].map((locale) => ({ format, locale })));

  it.each(cases)('asks for no change at all: $format in $locale', async ({ format, locale }) => {
    await fc.assert(
      fc.asyncProperty(readings, fc.constantFrom(compass85, compass88), async (standing, compass) => {
        const bytes = await writeTable(tableOfReadings({ readings: standing, compass, locale, ...at }), format, { locale });
        const plan = planImport({ table: mustBe(await readTable({ bytes })), compass, standing, locale, ...at });
        if (standing.length === 0) return;
        expect(plan.issues).toEqual([]);
        expect(plan.rows.flatMap(({ issues }) => issues)).toEqual([]);
        expect(plan.entries).toEqual([]);
        expect(plan.counts.same).toBe(new Set(standing.map(({ scope, index }) => `${scope}/${String(index)}`)).size);
      }),
      { numRuns: 60 },
    );
  });

  it.each(cases)('gives an empty instrument the same values: $format in $locale', async ({ format, locale }) => {
    await fc.assert(
      fc.asyncProperty(readings, async (standing) => {
        const bytes = await writeTable(tableOfReadings({ readings: standing, compass: compass88, locale, ...at }), format, { locale });
        const table = mustBe(await readTable({ bytes }));
        const { entries, counts } = planImport({ table, compass: compass88, standing: [], locale, ...at });
        expect([entries.length, counts.refused, counts.update]).toEqual([standing.length, 0, 0]);
        const valueOf = (typed: string | undefined): number | null => (typed === undefined ? null : Number(typed.replace(',', '.')));
        const shown = (place: { quantity: string; index: number; repeat?: number | undefined }, value: number | null, outcome: string | null | undefined, remark: string | undefined): string =>
          JSON.stringify([place.quantity, place.index, place.repeat, value, outcome ?? null, remark ?? '']);
        expect(entries.map((entry) => shown(entry, valueOf(entry.typed), entry.outcome, entry.remark)).sort()).toEqual(standing.map((reading) => shown(reading, reading.value, reading.outcome, reading.remark)).sort());
      }),
      { numRuns: 30 },
    );
  });

  it('is a form to fill in when nothing was read yet: a row for every key', () => {
    const table = tableOfReadings({ readings: [], compass: compass88, locale: 'en', ...at });
    expect([table.header, table.rows.length, table.rows[0], table.rows[40], table.rows[87]]).toEqual([['key', 'note', 'downWeightG', 'upWeightG'], 88, [1, 'A0', '', ''], [41, 'C#4', '', ''], [88, 'C8', '', '']]);
  });
});

describe('a written file', () => {
  const table = { header: ['key', 'downWeightG', 'remark'], rows: [[1, 49.5, ''], [2, -3.25, 'tight, since "winter"']] };
  const textOf = async (...args: Parameters<typeof writeTable>) => new TextDecoder('utf-8', { ignoreBOM: true }).decode(await writeTable(...args));

  it('has points and commas by default, semicolons and decimal commas where the locale has them', async () => {
    expect(await textOf(table, 'csv')).toBe('key,downWeightG,remark\r\n1,49.5,\r\n2,-3.25,"tight, since ""winter"""\r\n');
    expect(await textOf(table, 'csv', { locale: 'de-DE' })).toBe('key;downWeightG;remark\r\n1;49,5;\r\n2;-3,25;"tight, since ""winter"""\r\n');
    expect(await textOf(table, 'tsv', { locale: 'en-GB' })).toContain('2\t-3.25\t');
  });

  it('starts with a byte order mark only where there is more than ASCII in it', async () => {
    expect((await textOf(table, 'csv')).startsWith('\uFEFF')).toBe(false);
    expect((await textOf({ header: ['key', 'remark'], rows: [[1, 'hängt']] }, 'csv')).startsWith('\uFEFF')).toBe(true);
  });

  it('guards remarks that a spreadsheet would run, and leaves negative figures alone', () => {
    const base = { ...at, scope: 'key', repeat: 1, typed: '-3.5', value: -3.5, outcome: null, uncertainty: null, basis: 'measured', sessionId: null, at: '', by: '' } as const;
    const standing: readonly Reading[] = [{ ...base, id: 'a', quantity: 'frontWeightG', index: 1, remark: '=HYPERLINK("x")' }, { ...base, id: 'b', quantity: 'frontWeightG', index: 2, remark: 'fine' }];
    const { header, rows } = tableOfReadings({ readings: standing, compass: compass88, locale: 'en', ...at });
    expect(header.slice(4)).toEqual(['frontWeightG', 'frontWeightG remark']);
    expect(rows.slice(0, 2).map((row) => row.slice(4))).toEqual([[-3.5, '\'=HYPERLINK("x")'], [-3.5, 'fine']]);
  });
});
