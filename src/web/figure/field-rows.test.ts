import { operations } from '#catalogue';
import { fieldRowsOf } from '#operation';
import { createSay } from '#text';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { printField } from './print-field.ts';

const { knows: isMessageKey } = createSay('en');

describe('the fields of a figure', () => {
  it('all have words, whatever the operation', () => {
    const paths = operations.flatMap(({ input, output }) => [z.toJSONSchema(input, { io: 'input' }), z.toJSONSchema(output)].flatMap((schema) => fieldRowsOf(schema).map(({ path }) => path)));
    const names = new Set(paths.map((path) => path.replaceAll('[]', '').split('.').at(-1) ?? ''));
    expect(names.size).toBeGreaterThan(50);
    expect([...names].filter((name) => !isMessageKey(`quantity.${name}.name`) && !isMessageKey(`field.${name}`))).toEqual([]);
  });

  it('print with the unit their name ends in, in the figures of the reader', () => {
    expect(printField('balanceWeightG', 37.5, 'de-DE')).toBe('37,5\u00A0g');
    expect(printField('keyRatio', 0.511111111, 'en')).toBe('0.5111');
    expect(printField('wippenTorqueGMm', 60, 'en')).toBe('60\u00A0g·mm');
    expect(printField('upWeightG', undefined, 'en')).toBe('–');
  });
  it('tell a long list by its even stretches, nothing left out and nothing made up', () => {
    const grid = [...Array.from({ length: 40 }, (_, index) => index - 40), ...Array.from({ length: 60 }, (_, index) => index + 1), 70.5];
    expect(printField('gridMm', grid, 'en')).toBe('−40\u00A0mm … −1\u00A0mm; 1\u00A0mm … 60\u00A0mm; 70.5\u00A0mm');
    expect(printField('diametersMm', [9.5, 11.1, 12.7], 'en')).toBe('9.5\u00A0mm; 11.1\u00A0mm; 12.7\u00A0mm');
    expect(printField('valuesG', Array.from({ length: 14 }, () => 3), 'en')).not.toContain('NaN');
  });
});
