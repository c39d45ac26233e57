import { describe, expect, it } from 'vitest';
import { quantitiesOf, quantityNames, quantityOf, understandFigure } from './index.ts';

describe('the registry of quantities', () => {
  it('gives every quantity to one part', () => {
    const byPart = (['touch', 'strings', 'belly', 'leads', 'regulation', 'hammers', 'tuning'] as const).flatMap((part) => quantitiesOf(part));
    expect(new Set(byPart)).toEqual(new Set(quantityNames));
    expect(byPart).toHaveLength(quantityNames.length);
    expect(quantitiesOf('belly', 'instrument')).toEqual(['crownMm', 'roomTemperatureC', 'roomHumidityPct']);
  });

  it.each(quantityNames.map(quantityOf))('$name ends in its unit and calls nothing plausible that it refuses', ({ name, unit, whole = false, plausible, possible }) => {
    const end = { g: 'G', mm: 'Mm', N: 'N', Hz: 'Hz', s: 'S', gmm: 'GMm', gcm3: 'GPerCm3', Nm: 'Nm', ct: 'Ct', deg: 'Deg', degC: 'C', pct: 'Pct', '1': whole ? 'Count' : '' }[unit];
    expect(name.endsWith(end)).toBe(true);
    expect(plausible[0]).toBeGreaterThanOrEqual(possible[0]);
    expect(plausible[1]).toBeLessThanOrEqual(possible[1]);
  });

  it('refuses a fraction of a string', () => {
    expect(understandFigure('stringCount', '2.5', { path: 'C4' })).toMatchObject({ ok: false, issues: [{ code: 'type', path: 'C4', given: '2.5', allowed: 'a whole number' }] });
    expect(understandFigure('stringCount', '3', { path: 'C4' })).toMatchObject({ ok: true, value: { value: 3 } });
  });
});
