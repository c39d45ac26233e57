import { mustBe } from '#result';
import { type NoteQuestion, type ScaleWire, noteFiguresOf } from '#strings';
import { hertz, kilogramsPerCubicMetre, millimetres } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { receiptCheckOf } from './receipt-check.ts';

type Wound = Extract<ScaleWire, { readonly kind: 'wound' }>;
const [core, wrap] = [1, 1.2];
const wire: Wound = { kind: 'wound', coreDiameterMm: millimetres(core), wraps: [{ wireDiameterMm: millimetres(wrap) }] };
const question = (change: Partial<Wound> = {}): NoteQuestion & { wire: Wound } => ({ frequencyHz: hertz(55), speakingLengthMm: millimetres(1400), wire: { ...wire, ...change } });
const check = (coreMm: number, overallMm: number, asked = question()) => mustBe(receiptCheckOf(asked, { coreDiameterMm: millimetres(coreMm), overallDiameterMm: millimetres(overallMm) }));

/** Mass of a metre by hand: steel core 7850 kg/m³, close-laid copper 8960 kg/m³ (remembered densities), a turn of length π(d + w) on a pitch of w. */
const byHand = (coreMm: number, overallMm: number): number => {
  const wrapMm = (overallMm - coreMm) / 2;
  return 7850 * (Math.PI / 4) * coreMm ** 2 + 8960 * (Math.PI / 4) * wrapMm ** 2 * ((Math.PI * (coreMm + wrapMm)) / wrapMm);
};

describe('a delivered wound string against the order', () => {
  it('that came as ordered deviates by nothing', () => {
    const { deviationN, deviationCt } = check(core, core + 2 * wrap);
    expect(deviationN).toBeCloseTo(0, 9);
    expect(deviationCt).toBeCloseTo(0, 9);
  });

  it('deviates in cents as the masses by hand say (T = 4μL²f², f ∝ √(T/μ)), the stiffness of the core aside', () => {
    for (const [coreMm, overallMm] of [[1, 3.5], [1, 3.3], [1.05, 3.4], [0.95, 3.4]] as const) {
      const wanted = 600 * Math.log2(byHand(core, core + 2 * wrap) / byHand(coreMm, overallMm));
      expect(Math.abs(check(coreMm, overallMm).deviationCt - wanted)).toBeLessThan(0.8);
    }
  });

  it('that is heavier pulls more at pitch, and sounds flat at the tension planned', () => {
    fc.assert(fc.property(fc.double({ min: 0.01, max: 0.5, noNaN: true }), (more) => {
      const { deviationN, deviationCt, deliveredN, orderedN } = check(core, core + 2 * wrap + more);
      expect(deviationN).toBeGreaterThan(0);
      expect(deviationCt).toBeLessThan(0);
      expect(deliveredN - orderedN).toBeCloseTo(deviationN, 9);
    }));
  });

  it('keeps the metal of the wrap and the bare ends that were ordered', () => {
    const iron = question({ wraps: [{ wireDiameterMm: millimetres(wrap), densityKgM3: kilogramsPerCubicMetre(7870) }], bareFrontMm: millimetres(20), bareRearMm: millimetres(15) });
    const { orderedN, deliveredN, deviationCt } = check(core, core + 2 * wrap, iron);
    expect(orderedN).toBeCloseTo(mustBe(noteFiguresOf(iron)).tensionN, 9);
    expect(deliveredN).toBeCloseTo(orderedN, 6);
    expect(deviationCt).toBeCloseTo(0, 6);
  });

  it('is refused by field where the overall diameter is no more than the core', () => {
    const refused = receiptCheckOf(question(), { coreDiameterMm: millimetres(1), overallDiameterMm: millimetres(0.9) });
    expect(refused).toMatchObject({ ok: false, issues: [{ path: 'overallDiameterMm' }] });
  });
});
