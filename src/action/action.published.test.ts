import { sourceOf } from '#sources';
import { describe, expect, it } from 'vitest';
import { publishedActionFigures } from './index.ts';

describe('leads, inertia, regulation and geometry against figures worked out elsewhere', () => {
  it.each(publishedActionFigures.map((figure) => [`${sourceOf(figure.source).title}, ${figure.place}: ${figure.what} for ${figure.given} is ${String(figure.expected)}`, figure] as const))('%s', (_, { found, expected, tolerance }) => {
    expect(Math.abs(found() - expected)).toBeLessThanOrEqual(tolerance);
  });
});
