import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { publishedFigures, validationPage } from './index.ts';

it('docs/validation.md is current; node scripts/validation.mjs renews it', () => {
  expect(readFileSync(new URL('../../docs/validation.md', import.meta.url), 'utf8')).toBe(validationPage(publishedFigures));
});

it('shows a figure that has gone astray', () => {
  const page = validationPage([{ source: 'PRACTICE', place: 'p', what: 'w', given: 'g', expected: 1, tolerance: 0, because: 'b', found: () => 2 }]);
  expect(page).toContain('| p | w | g | 1 | 2 | b |');
});
