import { carriedUncertaintiesOf } from '#numerics';
import { mustBe } from '#result';
import { gigapascals, hertz, millimetres, newtons, ratio } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendingStiffnessOf, fittedInharmonicityOf, partialsOf, plainFiguresOf, steppedPartialsOf, steppedTensionFor, stringUncertaintyOf, woundFiguresOf } from './index.ts';

const within = (range: readonly [number, number]) => fc.double({ min: range[0], max: range[1], noNaN: true });
/** Any string of a piano: the last treble notes come to B = 0.03; what lies far above is a bar under little tension, where digits are lost. */
const wire = fc.record({ diameter: within([0.7, 1.6]), length: within([50, 2000]), pitch: within([27, 4200]) })
  .map(({ diameter, length, pitch }) => ({ diameterMm: millimetres(diameter), speakingLengthMm: millimetres(length), frequencyHz: hertz(pitch) }))
  .filter((string) => plainFiguresOf(string).exactTensionN > 20 && plainFiguresOf(string).exactInharmonicityB < 0.05);
/** What rounding leaves of the digits: next to a piece of the share s the stiffness of the string is a small difference of terms of 12·B/(π²·s³). */
const roundingOf = (inharmonicityB: number, parts: readonly number[]): number =>
  10 * Number.EPSILON * (12 / Math.PI ** 2) * inharmonicityB * parts.reduce((sum, part) => sum + part ** -3, 0);
const cuts = fc.array(within([0.01, 1]), { minLength: 1, maxLength: 6 }).map((parts) => parts.map((part) => part / parts.reduce((sum, each) => sum + each, 0)));

const piecesOf = (string: { readonly diameterMm: ReturnType<typeof millimetres>; readonly speakingLengthMm: number; readonly frequencyHz: ReturnType<typeof hertz> }, parts: readonly number[]) => {
  const { linearDensityGPerM } = plainFiguresOf({ ...string, speakingLengthMm: millimetres(string.speakingLengthMm) });
  const bendingStiffnessNm2 = bendingStiffnessOf({ diameterMm: string.diameterMm, youngsModulusGPa: gigapascals(200) });
  return parts.map((part) => ({ lengthMm: millimetres(part * string.speakingLengthMm), linearDensityGPerM, bendingStiffnessNm2 }));
};

describe('exact partials', () => {
  it('of a plain wire, however it is cut up in thought, are those of the analytic pinned stiff string to 1e-10 (2e-7 cent) and rounding', () => {
    fc.assert(fc.property(wire, cuts, (string, parts) => {
      const { exactTensionN, exactInharmonicityB } = plainFiguresOf(string);
      const found = steppedPartialsOf({ tensionN: exactTensionN, segments: piecesOf(string, parts) }, 20);
      const expected = partialsOf({ frequencyHz: string.frequencyHz, inharmonicityB: exactInharmonicityB });
      const allowed = 1e-10 + roundingOf(exactInharmonicityB, parts);
      for (const [index, partial] of expected.entries()) expect(Math.abs((found[index] ?? 0) / partial - 1)).toBeLessThan(allowed);
    }), { numRuns: 60 });
  });

  it('give the tension back that they came from', () => {
    fc.assert(fc.property(wire, cuts, (string, parts) => {
      const { tensionN, exactTensionN, exactInharmonicityB } = plainFiguresOf(string);
      const found = steppedTensionFor({ segments: piecesOf(string, parts), frequencyHz: string.frequencyHz, guessN: tensionN });
      // A string that is nearly a bar owes most of its pitch to stiffness: its tension is a small difference.
      expect(Math.abs((found ?? 0) - exactTensionN)).toBeLessThan((1e-13 + roundingOf(exactInharmonicityB, parts)) * tensionN);
    }), { numRuns: 60 });
  });

  it('of clamped ends lie above the pinned ones by (2/π)·√B + (4/π²)·B, which Fletcher gives to second order', () => {
    const string = { diameterMm: millimetres(1.016), speakingLengthMm: millimetres(622), frequencyHz: hertz(261.6256) };
    const { exactTensionN, exactInharmonicityB: b } = plainFiguresOf(string);
    const segments = piecesOf(string, [0.4, 0.6]);
    const clamped = steppedPartialsOf({ tensionN: exactTensionN, segments, endStiffnessNm: 1e6 }, 4);
    const pinned = steppedPartialsOf({ tensionN: exactTensionN, segments }, 4);
    for (const [index, partial] of clamped.entries()) {
      expect(Math.abs(partial / (pinned[index] ?? 0) - (1 + (2 / Math.PI) * Math.sqrt(b) + (4 / Math.PI ** 2) * b))).toBeLessThan(60 * b ** 1.5);
    }
  });
});

describe('a wound string', () => {
  const ends = fc.record({ bareFrontMm: within([0, 40]), bareRearMm: within([0, 40]), stepFrontMm: within([0, 20]), stepRearMm: within([0, 20]) })
    .map((each) => ({ bareFrontMm: millimetres(each.bareFrontMm), bareRearMm: millimetres(each.bareRearMm), stepFrontMm: millimetres(each.stepFrontMm), stepRearMm: millimetres(each.stepRearMm) }));
  const wraps = [{ wireDiameterMm: millimetres(0.5) }, { wireDiameterMm: millimetres(1.2) }];
  const bass = { coreDiameterMm: millimetres(1.5), wraps, frequencyHz: hertz(32.7), speakingLengthMm: millimetres(1500) };

  it('has partial 1 at its pitch, whatever its bare ends', () => {
    fc.assert(fc.property(ends, (bare) => {
      const { partialsHz } = mustBe(woundFiguresOf({ ...bass, ...bare }));
      expect(Math.abs((partialsHz[0] ?? 0) / bass.frequencyHz - 1)).toBeLessThan(1e-11);
    }), { numRuns: 25 });
  });

  it('without bare ends has the B of its core', () => {
    const { inharmonicityB, coreOnlyInharmonicityB } = mustBe(woundFiguresOf(bass));
    expect(inharmonicityB / coreOnlyInharmonicityB).toBeCloseTo(1, 8);
  });

  it('agrees with the first order where the bare ends are short', () => {
    const { inharmonicityB, coreOnlyInharmonicityB, firstOrderInharmonicityB } = mustBe(woundFiguresOf({ ...bass, bareFrontMm: millimetres(12), bareRearMm: millimetres(10) }));
    expect(inharmonicityB).toBeGreaterThan(1.02 * coreOnlyInharmonicityB);
    expect(Math.abs(inharmonicityB / firstOrderInharmonicityB - 1)).toBeLessThan(0.02);
  });

  it('refuses by field what cannot be wound', () => {
    const refused = (more: object) => { const found = woundFiguresOf({ ...bass, ...more }); return found.ok ? [] : found.issues.map(({ path }) => path); };
    expect(refused({ bareFrontMm: 900, bareRearMm: 600 })).toEqual(['bareFrontMm', 'bareRearMm']);
    expect(refused({ wraps: [{ wireDiameterMm: 0.5 }], stepRearMm: 5 })).toEqual(['stepRearMm']);
    const measured = { coreDiameterMm: millimetres(1.5), frequencyHz: hertz(32.7), speakingLengthMm: millimetres(1500) };
    for (const overall of [1.5, 1.2, 1.55]) expect(woundFiguresOf({ ...measured, overallDiameterMm: millimetres(overall) })).toMatchObject({ ok: false, issues: [{ path: 'overallDiameterMm' }] });
  });
});

describe('plain wire', () => {
  it('bears a stress that does not know its gauge', () => {
    fc.assert(fc.property(wire, within([0.5, 2]), (string, other) => {
      expect(plainFiguresOf({ ...string, diameterMm: millimetres(other) }).stressMPa / plainFiguresOf(string).stressMPa).toBeCloseTo(1, 12);
    }));
  });

  it('fits its own B back', () => {
    const partials = partialsOf({ frequencyHz: hertz(440), inharmonicityB: ratio(7e-4), count: 8 });
    expect(fittedInharmonicityOf(partials) / 7e-4).toBeCloseTo(1, 9);
  });

  it('carries its size errors as the closed forms say', () => {
    const string = { diameterMm: millimetres(1), speakingLengthMm: millimetres(600), frequencyHz: hertz(262) };
    const { tensionN, inharmonicityB } = plainFiguresOf(string);
    const found = stringUncertaintyOf(string, { lengthUncertaintyMm: millimetres(0.6), diameterUncertaintyMm: millimetres(0.002) });
    expect((found?.tensionUncertaintyN ?? newtons(0)) / tensionN).toBeCloseTo(2 * Math.hypot(0.002, 0.001), 6);
    expect((found?.inharmonicityUncertainty ?? 0) / inharmonicityB).toBeCloseTo(2 * Math.hypot(0.002, 0.002), 6);
    expect(carriedUncertaintiesOf(([x = 0]) => [3 * x], [5], [0.1])[0]).toBeCloseTo(0.3, 12);
  });
});
