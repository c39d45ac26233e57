import { describe, expect, it } from 'vitest';
import { isWedgeTab } from './wedge.ts';

describe('a Tab at the end of a figure', () => {
  it('ends it when a scale sent both', () => {
    expect(isWedgeTab([100, 108, 115, 123], 131)).toBe(true);
  });
  it('leaves the field when a hand pressed it', () => {
    expect(isWedgeTab([100, 240, 380], 900)).toBe(false);
    expect(isWedgeTab([100, 108, 115], 400)).toBe(false);
  });
  it('leaves the field when hardly anything came before it', () => {
    expect(isWedgeTab([100], 108)).toBe(false);
    expect(isWedgeTab([], 108)).toBe(false);
  });
});
