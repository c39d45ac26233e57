import { sourceOf } from '#sources';
import { describe, expect, it } from 'vitest';
import { publishedClimateFigures } from './published.ts';

describe('climate against figures worked out elsewhere', () => {
  it.each(publishedClimateFigures.map((figure) => [`${sourceOf(figure.source).title}, ${figure.place}: ${figure.what} for ${figure.given} is ${String(figure.expected)}`, figure] as const))('%s', (_, { found, expected, tolerance }) => {
    expect(Math.abs(found() - expected)).toBeLessThanOrEqual(tolerance);
  });
});
