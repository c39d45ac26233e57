import { describe, expect, it } from 'vitest';
import { student95 } from '#numerics';

describe('Student’s t', () => {
  it.each([[1, 12.706], [2, 4.303], [3, 3.182], [4, 2.776], [5, 2.571], [10, 2.228], [30, 2.042], [1e6, 1.96]])('has for %i degrees of freedom the 97.5 %% point %f of the usual tables (from memory)', (degrees, expected) => {
    expect(Math.abs(student95(degrees) - expected)).toBeLessThan(0.005);
  });

  it('says nothing without a degree of freedom', () => {
    expect(student95(0)).toBe(Infinity);
  });
});
