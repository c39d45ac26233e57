import { describe, expect, it } from 'vitest';
import { studentFactorOf } from '#numerics';

describe('Student’s t', () => {
  it.each([[1, 12.706], [2, 4.303], [3, 3.182], [4, 2.776], [5, 2.571], [10, 2.228], [30, 2.042]])('has for %i degrees of freedom the 97.5 %% point %f of the usual tables (from memory)', (degrees, expected) => {
    expect(Math.abs(studentFactorOf(degrees) - expected)).toBeLessThan(0.001);
  });

  it('comes to the factor of the normal distribution with many', () => {
    expect(Math.abs(studentFactorOf(1e6) - 1.96)).toBeLessThan(0.003);
  });
});
