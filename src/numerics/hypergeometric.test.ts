import { describe, expect, it } from 'vitest';
import { noneDrawnProbability } from './index.ts';

/** Share of all samples that hold none of the first `marked` members, by drawing every sample there is. */
function byEnumeration(population: number, marked: number, drawn: number): number {
  let samples = 0;
  let clean = 0;
  for (let subset = 0; subset < 2 ** population; subset += 1) {
    const members = Array.from({ length: population }, (_, member) => (subset >> member) & 1);
    if (members.reduce((sum, member) => sum + member, 0) !== drawn) continue;
    samples += 1;
    if (members.slice(0, marked).every((member) => member === 0)) clean += 1;
  }
  return clean / samples;
}

describe('a sample without a marked one', () => {
  it.each([1, 2, 5, 9])('is as likely as counting every sample of %i says', (population) => {
    for (let marked = 0; marked <= population; marked += 1) {
      for (let drawn = 0; drawn <= population; drawn += 1) {
        expect(noneDrawnProbability({ population, marked, drawn })).toBeCloseTo(byEnumeration(population, marked, drawn), 12);
      }
    }
  });

  it('does not mind which of the two is called marked', () => {
    expect(noneDrawnProbability({ population: 88, marked: 7, drawn: 20 })).toBeCloseTo(noneDrawnProbability({ population: 88, marked: 20, drawn: 7 }), 14);
  });
});
