import { mustBe } from '#result';
import { hertz, millimetres, newtons, percent } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type RescaleCandidate, type RescaleNote, type RescaleProblem, type RescaleWeights, candidateFiguresOf, rescale, rescaleSteps } from '../index.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const plain = fc.constantFrom(0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1).map((diameter): RescaleCandidate => ({ diameterMm: millimetres(diameter) }));
const wound = fc.record({ core: fc.constantFrom(0.9, 1, 1.1), wrap: fc.constantFrom(0.3, 0.4, 0.5) })
  .map(({ core, wrap }): RescaleCandidate => ({ coreDiameterMm: millimetres(core), wraps: [{ wireDiameterMm: millimetres(wrap) }], bareFrontMm: millimetres(14) }));
const weight = fc.oneof(fc.constant(0), within(0.01, 2));
const weights: fc.Arbitrary<RescaleWeights> = fc.record({ tensionSmoothness: weight, inharmonicitySmoothness: weight, impedanceSmoothness: weight, sizeChange: fc.oneof(fc.constant(0), within(0.0001, 0.05)), tensionDeviation: weight });
const notes = (most: number, choices: number) => fc.array(fc.record({
  wobble: within(0.97, 1.03), strings: fc.integer({ min: 1, max: 3 }), target: fc.option(within(500, 900), { nil: undefined }),
  candidates: fc.array(fc.oneof({ weight: 3, arbitrary: plain }, wound), { minLength: 1, maxLength: choices }), own: fc.option(weights, { nil: undefined, freq: 5 }),
}), { minLength: 1, maxLength: most }).map((list): readonly RescaleNote[] => list.map(({ wobble, strings, target, candidates, own }, place) => ({
  key: 30 + place, frequencyHz: hertz(440 * 2 ** ((30 + place - 49) / 12)), speakingLengthMm: millimetres(1100 * 0.95 ** place * wobble), strings,
  targetTensionN: target === undefined ? undefined : newtons(target), candidates, ...(own === undefined ? {} : { weights: own }),
})));
const problems = (most: number, choices: number): fc.Arbitrary<RescaleProblem> => fc.record({ notes: notes(most, choices), weights });

/** Notes alike with targets, where the bound without a multiplier may be the best there is. */
const alike: fc.Arbitrary<RescaleProblem> = fc.record({ wobbles: fc.array(within(0.99, 1.01), { minLength: 6, maxLength: 6 }), sizeChange: fc.constantFrom(0, 0.001, 0.05), tensionSmoothness: weight }).map(({ wobbles, ...some }) => ({
  weights: { ...some, tensionDeviation: 0.05, inharmonicitySmoothness: 0.3 },
  notes: wobbles.map((wobble, place) => ({
    key: 40 + place, frequencyHz: hertz(440 * 2 ** ((40 + place - 49) / 12)), speakingLengthMm: millimetres(640 * 0.947 ** place * wobble), targetTensionN: newtons(720),
    candidates: [0.95, 0.975, 1, 1.025].map((diameter) => ({ diameterMm: millimetres(diameter) })),
  })),
}));

const isWoundCandidate = (candidate: RescaleCandidate | undefined): boolean => candidate !== undefined && 'coreDiameterMm' in candidate;
const sizeOf = (candidate: RescaleCandidate | undefined): string => JSON.stringify(candidate);

/** The objective written down once more, straight from its definition. */
function costOf({ notes: row, weights: all }: RescaleProblem, choice: readonly number[]): { readonly objective: number; readonly loadN: number } {
  const at = row.map((note, i) => {
    const { tensionN, inharmonicityB, impedanceKgPerS } = mustBe(candidateFiguresOf(note, note.candidates[choice[i] ?? 0] as RescaleCandidate));
    return [Math.log(tensionN), Math.log(inharmonicityB), Math.log((note.strings ?? 3) * impedanceKgPerS), (note.strings ?? 3) * tensionN, tensionN] as const;
  });
  let objective = 0;
  for (const [i, note] of row.entries()) {
    const w = { ...all, ...note.weights };
    if (note.targetTensionN !== undefined) objective += (w.tensionDeviation ?? 0) * ((at[i]?.[0] ?? 0) - Math.log(note.targetTensionN)) ** 2;
    const [here, below] = [note.candidates[choice[i] ?? 0], row[i - 1]?.candidates[choice[i - 1] ?? 0]];
    if (below !== undefined && isWoundCandidate(here) === isWoundCandidate(below) && sizeOf(here) !== sizeOf(below)) objective += w.sizeChange ?? 0;
    if (i < 2) continue;
    for (const [f, each] of [w.tensionSmoothness, w.inharmonicitySmoothness, w.impedanceSmoothness].entries()) {
      objective += (each ?? 0) * ((at[i]?.[f] ?? 0) - 2 * (at[i - 1]?.[f] ?? 0) + (at[i - 2]?.[f] ?? 0)) ** 2;
    }
  }
  return { objective, loadN: at.reduce((sum, figures) => sum + figures[3], 0) };
}

function* choicesOf(counts: readonly number[]): Generator<readonly number[]> {
  const [count, ...rest] = counts;
  if (count === undefined) { yield []; return; }
  for (let first = 0; first < count; first += 1) for (const others of choicesOf(rest)) yield [first, ...others];
}

const bruteForce = (problem: RescaleProblem) => [...choicesOf(problem.notes.map(({ candidates }) => candidates.length))].map((choice) => costOf(problem, choice));
const least = (costs: readonly { readonly objective: number }[]): number => Math.min(...costs.map(({ objective }) => objective));

describe('a rescale', () => {
  it('is the best of all choices, by brute force', () => {
    fc.assert(fc.property(problems(5, 4), (problem) => {
      const { objective, lowerBound, proven, choices, totalTensionN } = mustBe(rescale(problem));
      const best = least(bruteForce(problem));
      expect(Math.abs(objective - best)).toBeLessThan(1e-12 + 1e-9 * best);
      expect([lowerBound, proven]).toEqual([objective, true]);
      const again = costOf(problem, choices.map(({ candidateIndex }) => candidateIndex));
      expect(Math.abs(again.objective - objective)).toBeLessThan(1e-12 + 1e-9 * best);
      expect(totalTensionN / again.loadN).toBeCloseTo(1, 12);
    }), { numRuns: 60 });
  });

  it('with a total to hold, or a cap, never claims more than brute force grants', () => {
    fc.assert(fc.property(fc.oneof(problems(5, 4), alike), within(0, 1), fc.boolean(), (problem, share, isCap) => {
      const all = bruteForce(problem);
      const loads = all.map(({ loadN }) => loadN).sort((a, b) => a - b);
      const total = loads[Math.floor(share * (loads.length - 1))] ?? 0;
      const within = all.filter(({ loadN }) => loadN <= total * (isCap ? 1 : 1.001) && (isCap || loadN >= total * 0.999));
      const result = rescale({ ...problem, limits: isCap ? { maxTotalTensionN: newtons(total * (1 + 1e-12)) } : { totalTensionN: newtons(total) } });
      if (!result.ok) {
        expect(result.issues).toEqual([]);
        return;
      }
      const { objective, lowerBound, proven, totalTensionN } = result.value;
      const best = least(within);
      expect(lowerBound).toBeLessThanOrEqual(best * (1 + 1e-9) + 1e-12);
      expect(objective).toBeGreaterThanOrEqual(best * (1 - 1e-9) - 1e-12);
      expect(totalTensionN).toBeLessThanOrEqual(total * 1.001 * (1 + 1e-12));
      if (proven) expect(objective).toBeLessThanOrEqual(best * 1.0011 + 1e-11);
    }), { numRuns: 150 });
  });

  it.each([0.1, 0.3, 0.4, 0.6, 0.8])('holds a total at %d of what can be reached, on nine notes, as an exhaustive search does', (share) => {
    const wobbles = [0.3, -0.5, 0.1, 0.6, -0.2, -0.6, 0.4, 0.2, -0.3];
    const row = wobbles.map((wobble, place): RescaleNote => ({
      key: 40 + place, frequencyHz: hertz(440 * 2 ** ((40 + place - 49) / 12)), speakingLengthMm: millimetres(642 * 0.9474 ** place * (1 + wobble / 100)), targetTensionN: newtons(720),
      candidates: [0.925, 0.95, 0.975, 1, 1.025].map((diameter) => ({ diameterMm: millimetres(diameter) })),
    }));
    const known = row.map((note) => note.candidates.map((candidate) => {
      const { tensionN, inharmonicityB } = mustBe(candidateFiguresOf(note, candidate));
      return { t: Math.log(tensionN), b: Math.log(inharmonicityB), loadN: 3 * tensionN, u: 0.05 * Math.log(tensionN / 720) ** 2 };
    }));
    const reach = (pick: (...loads: readonly number[]) => number) => known.reduce((sum, each) => sum + pick(...each.map(({ loadN }) => loadN)), 0);
    const total = (1 - share) * reach(Math.min) + share * reach(Math.max);
    let best = Infinity;
    const chosen: number[] = [];
    const enter = (i: number, cost: number, loadN: number): void => {
      if (cost >= best) return;
      if (i === row.length) {
        if (Math.abs(loadN / total - 1) <= 1e-3) best = cost;
        return;
      }
      for (const [m, here] of (known[i] ?? []).entries()) {
        const [one, two] = [known[i - 1]?.[chosen[i - 1] ?? 0], known[i - 2]?.[chosen[i - 2] ?? 0]];
        const change = one !== undefined && chosen[i - 1] !== m ? 0.001 : 0;
        const bend = one === undefined || two === undefined ? 0 : (two.t - 2 * one.t + here.t) ** 2 + 0.3 * (two.b - 2 * one.b + here.b) ** 2;
        chosen[i] = m;
        enter(i + 1, cost + here.u + change + bend, loadN + here.loadN);
      }
    };
    enter(0, 0, 0);
    const result = rescale({ notes: row, weights: { tensionSmoothness: 1, inharmonicitySmoothness: 0.3, sizeChange: 0.001, tensionDeviation: 0.05 }, limits: { totalTensionN: newtons(total) } });
    expect(result.ok).toBe(Number.isFinite(best));
    if (!result.ok) return;
    const found = result.value;
    expect(found.lowerBound).toBeLessThanOrEqual(best * (1 + 1e-9));
    expect(found.objective).toBeGreaterThanOrEqual(best * (1 - 1e-9));
    if (found.proven) expect(found.objective).toBeLessThanOrEqual(best * 1.0011);
  });

  it('is beaten by no random choice on long scales', () => {
    fc.assert(fc.property(problems(30, 12).filter(({ notes: row }) => row.length > 8), fc.array(fc.nat(), { minLength: 30, maxLength: 30 }), (problem, random) => {
      const { objective } = mustBe(rescale(problem));
      expect(costOf(problem, problem.notes.map(({ candidates }, i) => (random[i] ?? 0) % candidates.length)).objective).toBeGreaterThanOrEqual(objective - 1e-9);
    }), { numRuns: 30 });
  });
});

const even = (keys: readonly number[]): readonly RescaleNote[] => keys.map((key) => ({
  key, frequencyHz: hertz(440 * 2 ** ((key - 49) / 12)), speakingLengthMm: millimetres(404 * 0.947 ** (key - 49)), targetTensionN: newtons(720),
  candidates: [0.85, 0.9, 0.95, 1, 1.05].map((diameter) => ({ diameterMm: millimetres(diameter) })),
}));
const scale: RescaleProblem = { notes: even([49, 50, 51, 52, 53, 54]), weights: { tensionSmoothness: 1, tensionDeviation: 0.1, sizeChange: 0.001 } };
const faults = (problem: RescaleProblem) => {
  const result = rescale(problem);
  return result.ok ? [] : result.issues;
};

describe('limits of a rescale', () => {
  it('keep a locked note, and say that the lock holds back', () => {
    const locked = { ...scale, weights: { tensionDeviation: 1, tensionSmoothness: 0.01 }, notes: scale.notes.map((note, i) => (i === 2 ? { ...note, lockedCandidate: 4 } : note)) };
    const { choices, activeLimits } = mustBe(rescale(locked));
    expect(choices[2]?.candidateIndex).toBe(4);
    expect(activeLimits).toEqual([{ limit: 'lockedCandidate', keys: [51] }]);
  });

  it('are named with keys and amounts where they cannot be met', () => {
    const [first, ...rest] = faults({ ...scale, limits: { maxBreakingPct: percent(20) } });
    expect(first).toMatchObject({ code: 'unreachable', path: 'limits.maxBreakingPct', given: 20, params: { key: 49 } });
    expect(rest).toHaveLength(5);
    expect(Number(first?.params?.['nearest']) - 20).toBeCloseTo(Number(first?.params?.['short']), 9);
    const own = scale.notes.map((note, i) => (i === 1 ? { ...note, limits: { minTensionN: newtons(2000) } } : note));
    expect(faults({ ...scale, notes: own })).toMatchObject([{ path: 'notes[1].limits.minTensionN', given: 2000, params: { key: 50 } }]);
    expect(faults({ ...scale, limits: { minTensionN: newtons(701), maxTensionN: newtons(702) } }).map(({ path }) => path)).toContain('notes[0].candidates');
  });

  it('on the total are refused with the least and the most there is', () => {
    const low = faults({ ...scale, limits: { maxTotalTensionN: newtons(5000) } })[0];
    expect(low).toMatchObject({ code: 'unreachable', path: 'limits.maxTotalTensionN', given: 5000 });
    expect(Number(low?.params?.['min']) - 5000).toBeCloseTo(Number(low?.params?.['short']), 9);
    expect(faults({ ...scale, limits: { totalTensionN: newtons(50_000) } })).toMatchObject([{ path: 'limits.totalTensionN' }]);
    expect(faults({ ...scale, limits: { totalTensionN: newtons(13_000), maxTotalTensionN: newtons(12_000) } })).toMatchObject([{ code: 'order', path: 'limits.totalTensionN' }]);
  });

  it('refuse notes left out, locks on nothing, and candidates that cannot be', () => {
    expect(faults({ ...scale, notes: even([49, 51]) })).toMatchObject([{ code: 'order', path: 'notes[1].key', given: 51 }]);
    expect(faults({ ...scale, notes: [{ ...even([49])[0], lockedCandidate: 9 } as RescaleNote] })).toMatchObject([{ path: 'notes[0].lockedCandidate' }]);
    const bad: RescaleCandidate = { coreDiameterMm: millimetres(1.2), overallDiameterMm: millimetres(1.1) };
    expect(faults({ ...scale, notes: [{ ...even([49])[0], candidates: [bad] } as RescaleNote] })).toMatchObject([{ code: 'order', path: 'notes[0].candidates[0].overallDiameterMm' }]);
  });
});

describe('watching a rescale', () => {
  it('tells how far it is, and can be stopped with the best so far', () => {
    const held: RescaleProblem = { ...scale, limits: { totalTensionN: newtons(12_900) } };
    const whole = mustBe(rescale(held));
    const seen = [...rescaleSteps(held)];
    expect(new Set(seen.map(({ phase }) => phase))).toContain('load');
    const firstBest = seen.findIndex(({ best }) => best !== undefined);
    let asked = 0;
    const stopped = rescale(held, { shouldStop: () => (asked += 1) > firstBest });
    if (firstBest >= 0) expect(mustBe(stopped).objective).toBeGreaterThanOrEqual(whole.lowerBound);
    expect(rescale(scale, { shouldStop: () => true })).toMatchObject({ ok: false, issues: [{ code: 'unsolvable' }] });
  });
});
