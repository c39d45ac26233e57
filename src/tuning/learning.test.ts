import { cents } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type RaisePass, learntDropsOf, nextVisitOf, raisePlanOf, tuningDriftOf } from './index.ts';

const pass = (from: number, set: number, settled: number): RaisePass => ({ section: 'treble', fromCents: cents(from), setCents: cents(set), settledCents: cents(settled) });
const treble = (passes: readonly RaisePass[]) => learntDropsOf(passes).find(({ section }) => section === 'treble');

describe('what a pitch raise loses', () => {
  it('is not said before there are enough passes over that section', () => {
    expect(treble([pass(-50, 10, -4), pass(-30, 6, -2), pass(-80, 20, -3)])).toEqual({ section: 'treble', passes: 3 });
    expect(raisePlanOf({ section: 'treble', passes: 3 }, -40)).toBeUndefined();
  });

  it('is found again whatever it was, and the plan then settles on the pitch wanted', () => {
    fc.assert(fc.property(fc.double({ min: -0.1, max: 0.6, noNaN: true }), fc.array(fc.double({ min: 5, max: 120, noNaN: true }), { minLength: 4, maxLength: 12 }), fc.double({ min: -150, max: -5, noNaN: true }), (share, raises, from) => {
      const learnt = treble(raises.map((raise) => pass(-raise, 0, -share * raise)));
      expect(learnt?.drop?.share).toBeCloseTo(share, 9);
      const set = learnt === undefined ? Number.NaN : raisePlanOf(learnt, from)?.setCents ?? Number.NaN;
      expect(set - share * (set - from)).toBeCloseTo(0, 7);
    }));
  });

  it('refuses to plan where everything raised is lost', () => {
    const learnt = treble([10, 20, 30, 40].map((raise) => pass(-raise, 0, -raise)));
    expect(learnt === undefined ? 'none' : raisePlanOf(learnt, -20)).toBeUndefined();
  });

  it('covers what the next pass does in about 95 of 100 shops', () => {
    let seed = 20261126;
    const uniform = (): number => { seed = (seed * 1103515245 + 12345) % 2147483648; return (seed + 0.5) / 2147483648; };
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const trials = 4000;
    let covered = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const learnt = treble([25, 40, 60, 80, 50].map((raise) => pass(-raise, 0, -(0.25 * raise + 2 * normal()))));
      const plan = learnt === undefined ? undefined : raisePlanOf(learnt, -45);
      if (plan === undefined) continue;
      const settled = plan.setCents - (0.25 * (plan.setCents + 45) + 2 * normal());
      if (Math.abs(settled) <= plan.settlesWithinCents) covered += 1;
    }
    // Binomial: 0.95 ± 4·√(0.95·0.05/4000).
    expect(Math.abs(covered / trials - 0.95)).toBeLessThan(0.0138);
  });
});

describe('the drift of new strings', () => {
  const days = [1, 8, 40, 110, 200, 330];
  const moisture = [8, 8.6, 7.4, 9.5, 7.8, 10];
  const visits = (a: number, h: number, without = false) => days.map((dayCount, i) => {
    const drop = i === 0 ? -9 : a * Math.log10((1 + dayCount) / (1 + (days[i - 1] ?? 0))) + h * ((moisture[i] ?? 0) - (moisture[i - 1] ?? 0));
    return { dayCount, foundCents: cents(drop), leftCents: cents(0), ...(without ? {} : { moisturePct: moisture[i] ?? 0 }) };
  });

  it('is found again with the share of moisture', () => {
    fc.assert(fc.property(fc.double({ min: -20, max: -1, noNaN: true }), fc.double({ min: -3, max: 5, noNaN: true }), (a, h) => {
      const { fit } = tuningDriftOf(visits(a, h));
      expect(fit?.tenfoldCents).toBeCloseTo(a, 8);
      expect(fit?.moistureCentsPerPct).toBeCloseTo(h, 8);
    }));
  });

  it('says why moisture was left out, and says nothing with too few visits', () => {
    expect(tuningDriftOf(visits(-8, 1, true)).withoutMoisture).toBe('notStated');
    expect(tuningDriftOf(visits(-8, 1).slice(0, 5)).withoutMoisture).toBe('tooFew');
    expect(tuningDriftOf(visits(-8, 1).map((visit) => ({ ...visit, moisturePct: 8 }))).withoutMoisture).toBe('alike');
    expect(tuningDriftOf(visits(-8, 1).slice(0, 4))).toEqual({ spans: 3 });
  });

  it('asks for the next visit when the drift comes to the tolerance', () => {
    const next = nextVisitOf(tuningDriftOf(visits(-8, 2)), 330, 3);
    const day = next?.dayCount ?? Number.NaN;
    expect(8 * Math.log10((1 + day) / 331)).toBeCloseTo(3, 7);
    expect(next?.earliestDayCount).toBeLessThanOrEqual(day);
    const noisy = tuningDriftOf(visits(-8, 2, true));
    const doubtful = nextVisitOf(noisy, 330, 3);
    expect(doubtful?.earliestDayCount).toBeLessThan(doubtful?.dayCount ?? 0);
    expect(nextVisitOf({ spans: 2 }, 330, 3)).toBeUndefined();
  });
});
