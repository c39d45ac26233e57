import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatMeasure, parseMeasure, type UnitId } from './index.ts';

const read = (typed: string, unit: UnitId = 'g', locale?: string) => {
  const result = parseMeasure(typed, { unit, path: 'cell', ...(locale === undefined ? {} : { locale }) });
  return result.ok ? result.value.value : result.issues[0]?.code;
};

describe('figures as they are typed', () => {
  it.each([
    ['1,25', 'g', 1.25],
    ['1.25', 'g', 1.25],
    ['49', 'g', 49],
    ['.5', 'g', 0.5],
    [',5', 'g', 0.5],
    [' 49 g ', 'g', 49],
    ['12.5+0.3', 'g', 12.8],
    ['50+2 g', 'g', 52],
    ['+  25.50 g', 'g', 25.5],
    ['-3,5', 'g', -3.5],
    ['\u22123.5', 'g', -3.5],
    ['1.025,5', 'g', 1025.5],
    ['1,025.5', 'g', 1025.5],
    ["1'025.5", 'g', 1025.5],
    ['1,000,000', 'g', 1000000],
    ['0,975', 'mm', 0.975],
    ['3 1/4"', 'mm', 82.55],
    ['3 1/4 in', 'mm', 82.55],
    ['3¼"', 'mm', 82.55],
    ['1/8"', 'mm', 3.175],
    ['25.4mm', 'mm', 25.4],
    ['2,5 cm', 'mm', 25],
    ['68 °F', 'degC', 20],
    ['45 %', 'pct', 45],
    ['1e3', 'mm', 1000],
  ] as const)('%s in %s is %d', (typed, unit, expected) => {
    expect(read(typed, unit)).toBeCloseTo(expected, 10);
  });

  it('knows ounce and newton as weights', () => {
    expect(read('1 oz')).toBe(28.349523125);
    expect(read('0.5N')).toBeCloseTo(0.5 / 0.00980665, 9);
  });

  it.each([
    ['', 'required'],
    ['abc', 'format'],
    ['12 mm', 'unit'],
    ['1..2', 'format'],
    ['1,2,3', 'format'],
    ['Infinity', 'format'],
    ['NaN', 'format'],
    ['1e999', 'format'],
    ['1/0 g', 'format'],
    ['49/26', 'unit'],
    ['-1+2', 'format'],
    ['1,250', 'ambiguous'],
  ])('refuses %j as %s', (typed, code) => {
    expect(read(typed)).toBe(code);
  });

  it('takes 1,250 as a decimal where the comma never groups', () => {
    expect(read('1,250', 'mm', 'de-DE')).toBe(1.25);
  });

  it('names the cell and what is allowed', () => {
    expect(parseMeasure('12 mm', { unit: 'g', path: 'row 3' })).toEqual({
      ok: false,
      issues: [{ code: 'unit', path: 'row 3', given: '12 mm', allowed: 'a figure in g', params: { given: '12 mm', unit: 'g', reason: 'figure' } }],
    });
  });
});

describe('printing and reading back', () => {
  it.each(['en-GB', 'de-DE', 'de-CH', 'fr-FR'])('gives the same number in %s', (locale) => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), (thousandths) => {
        const value = thousandths / 1000;
        const printed = formatMeasure(value, { locale, decimals: 4, unit: 'g' });
        expect(read(printed, 'g', locale)).toBeCloseTo(value, 9);
      }),
    );
  });

  it('prints a true minus and keeps the unit on the line', () => {
    expect(formatMeasure(-1.25, { locale: 'de', decimals: 2, unit: 'g' })).toBe('\u22121,25\u00A0g');
  });
});
