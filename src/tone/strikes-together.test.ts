import { describe, expect, it } from 'vitest';
import { medianOf, scaledMadOf } from '#numerics';
import { type PartialFrequency, sharedPartialsOf, stiffFitOf, strikesTogether } from '#tone';
import { type Dice } from './testing/dice.ts';
import { testDice } from './testing/compass-note.ts';
import { stiffPartialHz } from './testing/synthetic.ts';

/** A string whose partials stand beside its law by some cents of their own, struck several times: strikes differ a little in f0 and B, and miss partials. */
function struck(dice: Dice, { strikes, besideCents, scatterCents, missing = 0.15 }: { readonly strikes: number; readonly besideCents: number; readonly scatterCents: number; readonly missing?: number }) {
  const beside = Array.from({ length: 24 }, () => besideCents * dice.normal());
  const truths = Array.from({ length: strikes }, () => ({ f0Hz: 220 * 2 ** (0.1 * dice.normal() / 1200), b: 2e-4 * (1 + 0.002 * dice.normal()) }));
  const rows = truths.map(({ f0Hz, b }) => beside.flatMap((cents, at): readonly PartialFrequency[] =>
    dice.even() < missing ? [] : [{ n: at + 1, frequencyHz: stiffPartialHz(f0Hz, b, at + 1) * 2 ** ((cents + scatterCents * dice.normal()) / 1200), frequencyUncertaintyHz: 1e-4 }]));
  return { truths, rows };
}

describe('strikes of one string fitted together', () => {
  it('tell apart what differs between strikes, a hundred times below what each partial stands beside the law', () => {
    const { dice, said } = testDice();
    const { truths, rows } = struck(dice, { strikes: 12, besideCents: 3, scatterCents: 0.03 });
    const found = strikesTogether(rows, 'one-term')?.strikes ?? [];
    const off = found.map((fit, at) => (fit?.inharmonicityB ?? 0) / (truths[at]?.b ?? 1));
    expect(found).toHaveLength(12);
    expect(scaledMadOf(off), said).toBeLessThan(1e-3);
    const own = rows.map((partials, at) => (stiffFitOf(partials, 'one-term')?.inharmonicityB ?? 0) / (truths[at]?.b ?? 1));
    expect(scaledMadOf(off), said).toBeLessThan(scaledMadOf(own));
  });

  it('have the string’s own law in common, no nearer than its partials keep to it', () => {
    const { dice, said } = testDice();
    const { truths, rows } = struck(dice, { strikes: 8, besideCents: 1, scatterCents: 0.03 });
    const string = strikesTogether(rows, 'one-term')?.string;
    const [b, u] = [string?.inharmonicityB ?? 0, string?.inharmonicityUncertainty ?? 0];
    expect(Math.abs(b - medianOf(truths.map((truth) => truth.b))), said).toBeLessThan(5 * u);
    expect(string?.scatterCents, said).toBeGreaterThan(0.3);
  });

  it('need two, and of two count only the partials both have', () => {
    const { dice } = testDice();
    const { rows } = struck(dice, { strikes: 2, besideCents: 1, scatterCents: 0.03, missing: 0 });
    expect(strikesTogether(rows.slice(0, 1), 'one-term')).toBeUndefined();
    expect(sharedPartialsOf([rows[0]?.slice(0, 10) ?? [], rows[1]?.slice(2) ?? []])).toEqual([3, 4, 5, 6, 7, 8, 9, 10]);
  });
});
