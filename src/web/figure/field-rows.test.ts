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
});
