import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { routes } from './index.ts';
import { changeOf } from './change.ts';

describe('a change to something kept', () => {
  it('leaves out what was left out: changing a name empties nothing', () => {
    expect(routes.changePiano.body.parse({ name: 'Grand in the hall' })).toEqual({ name: 'Grand in the hall' });
    expect(routes.changeSession.body.parse({ stepG: 1 })).toEqual({ stepG: 1 });
  });

  it('keeps the ranges, and takes null for not stated', () => {
    expect(routes.changePiano.body.safeParse({ year: 1 }).success).toBe(false);
    expect(routes.changePiano.body.parse({ year: null })).toEqual({ year: null });
    expect(routes.changePiano.body.safeParse({ yaer: 1900 }).success).toBe(false);
  });

  it('states no default in its JSON Schema', () => {
    expect(JSON.stringify(z.toJSONSchema(changeOf({ remark: z.string().default('') })))).not.toContain('default');
  });
});
