import { type Issue, type Result, ok, refuse, under } from '#result';
import { newtons, ratio } from '#units';
import { activeLimitsOf } from './active-limits.ts';
import { candidateFiguresOf } from './candidate-figures.ts';
import { loadIssues, problemIssues } from './check-problem.ts';
import { type Closed, closeGap } from './close-gap.ts';
import { type Held, holdLoad, isClose } from './hold-load.ts';
import { brokenLimitsOf, noneLeftIssues } from './limits.ts';
import { type LoadBand, isWithin, loadBandOf } from './load-band.ts';
import { intoBand } from './local-search.ts';
import { type CandidateFigures, PROVEN_GAP, type RescaleProblem, type RescaleProgress, type Rescaled } from './problem.ts';
import { reachLoad } from './reach-load.ts';
import { type Candidate, type OpenNote, type Row, rowsOf } from './row.ts';

/** Beginnings of ways that the last search keeps for each note, and how often it widens its threshold. */
const MOST_LABELS = 4000;
const MOST_WIDENINGS = 12;

/**
 * The best choice of string for each note of a scale, step by step, with progress on the way.
 *
 * Minimises Σ tensionDeviation·(ln T − ln T_target)² + sizeChange·[size differs from the note below]
 * + tensionSmoothness·(Δ² ln T)² + inharmonicitySmoothness·(Δ² ln B)² + impedanceSmoothness·(Δ² ln N·Z)²,
 * Δ² over a note and the two below it, T as of flexible strings, B pinned. Exact: without a limit on the total the bound is
 * the objective. A total that is held (± 0.1 %) or capped is pressed by a Lagrange multiplier, and the gap that whole
 * strings leave is searched through; then `proven` means that bound and objective lie within 0.1 %.
 * Refuses notes left out, candidates that cannot be, and limits that cannot be met, by limit, key and amount.
 * @source BELLMAN-1957 @source EVERETT-1963
 */
export function* rescaleSteps(problem: RescaleProblem): Generator<RescaleProgress, Result<Rescaled>> {
  const wrong = problemIssues(problem);
  if (wrong.length > 0) return refuse(...wrong);
  const opened = yield* openNotes(problem);
  if (!opened.ok) return opened;
  const rows = rowsOf(opened.value, problem.weights);
  const band = loadBandOf(problem.limits ?? {});
  const outOfReach = loadIssues(rows, band, problem.limits ?? {});
  if (outOfReach.length > 0) return refuse(...outOfReach);
  const say = (found: Candidate, lowerBound: number) => rescaledOf(problem, opened.value, rows, found, lowerBound);
  const held = yield* heldSteps(rows, band, say);
  const { best, lowerBound, nearestN } = yield* closedSteps(rows, band, held, say);
  return best === undefined ? refuse(noneInBand(problem, nearestN)) : ok(say(best, lowerBound));
}

/** Runs a rescale to its end, or until it is told to stop: then it answers with the best so far. */
export function rescale(problem: RescaleProblem, { onProgress, shouldStop = () => false }: RescaleWatch = {}): Result<Rescaled> {
  const steps = rescaleSteps(problem);
  let best: Rescaled | undefined;
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    best = step.value.best ?? best;
    onProgress?.(step.value);
    if (shouldStop()) return best === undefined ? refuse({ code: 'unsolvable', path: '', given: 'stopped', allowed: 'more time: nothing within the limits was found yet', params: { reason: 'stopped' } }) : ok(best);
  }
}

/** How a rescale is watched and stopped; both are asked after each step of some milliseconds. */
export interface RescaleWatch {
  readonly onProgress?: (progress: RescaleProgress) => void;
  readonly shouldStop?: () => boolean;
}

function* openNotes({ notes, limits = {} }: RescaleProblem): Generator<RescaleProgress, Result<readonly OpenNote[]>> {
  const issues: Issue[] = [];
  const open: OpenNote[] = [];
  for (const [place, note] of notes.entries()) {
    const results = note.candidates.map((candidate) => candidateFiguresOf(note, candidate));
    const bad = results.flatMap((result, index) => (result.ok ? [] : under(`notes[${String(place)}].candidates[${String(index)}]`, result.issues)));
    const figures: readonly CandidateFigures[] = results.flatMap((result) => (result.ok ? [result.value] : []));
    const broken = brokenLimitsOf(note, figures, limits);
    const left = figures.flatMap((_, index) => (broken[index]?.length === 0 ? [index] : []));
    issues.push(...(bad.length > 0 ? bad : left.length > 0 ? [] : noneLeftIssues(note, place, figures, limits)));
    open.push({ note, figures, open: left });
    yield { phase: 'figures', share: ratio((place + 1) / notes.length) };
  }
  return issues.length > 0 ? refuse(...issues) : ok(open);
}

type Say = (found: Candidate, lowerBound: number) => Rescaled;

function* heldSteps(rows: readonly Row[], band: LoadBand, say: Say): Generator<RescaleProgress, Held> {
  const steps = holdLoad(rows, band);
  let last: Candidate | undefined;
  let best: Rescaled | undefined;
  for (let done = 1; ; done += 1) {
    const step = steps.next();
    if (step.done === true) return step.value;
    const found = step.value?.best;
    if (found !== undefined && found !== last) best = say(found, step.value?.lowerBound ?? -Infinity);
    last = found;
    yield { phase: step.value === undefined ? 'optimum' : 'load', share: ratio((done % rows.length) / rows.length), best };
  }
}

interface Outcome {
  /** Nearest total found. */
  readonly nearestN: number | undefined;
  readonly best: Candidate | undefined;
  readonly lowerBound: number;
}

/** Better starts by moves of single notes, then thresholds that widen until the gap is closed or the search grows too wide. */
function* closedSteps(rows: readonly Row[], band: LoadBand, held: Held, say: Say): Generator<RescaleProgress, Outcome> {
  let { best, lowerBound } = held;
  const keep = (found: Candidate | undefined): void => {
    if (found !== undefined && (best === undefined || found.objective < best.objective)) best = found;
  };
  for (const start of [best, ...held.ends]) if (start !== undefined && !isProven(best, lowerBound)) keep(intoBand(rows, band, start));
  const reached = best === undefined ? reachLoad(rows, band) : undefined;
  if (reached !== undefined && isWithin(band, reached.loadN)) keep(intoBand(rows, band, reached));
  let isTwoSided = false;
  for (let round = 0; round < MOST_WIDENINGS && !isProven(best, lowerBound); round += 1) {
    const wide = lowerBound + PROVEN_GAP * 2 ** (round - 1) * Math.abs(held.lowerBound);
    const threshold = best === undefined ? wide : Math.min(wide, best.objective * (1 - PROVEN_GAP));
    const closed: Closed = yield* spoken(closeGap(rows, band, held, { threshold, most: MOST_LABELS, isTwoSided }), rows.length, best && say(best, lowerBound));
    keep(closed.best);
    if (closed.lowerBound < threshold && isTwoSided) {
      lowerBound = Math.max(lowerBound, closed.lowerBound);
      break;
    }
    isTwoSided = closed.lowerBound < threshold;
    lowerBound = Math.max(lowerBound, closed.lowerBound);
  }
  return { best, lowerBound: Math.min(lowerBound, best?.objective ?? lowerBound), nearestN: best?.loadN ?? reached?.loadN };
}

const isProven = (best: Candidate | undefined, lowerBound: number): boolean => best !== undefined && isClose(best.objective, lowerBound);

function* spoken<T>(steps: Generator<number, T>, rows: number, best: Rescaled | undefined): Generator<RescaleProgress, T> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    yield { phase: 'proof', share: ratio(step.value / rows), best };
  }
}

function rescaledOf(problem: RescaleProblem, notes: readonly OpenNote[], rows: readonly Row[], found: Candidate, lowerBound: number): Rescaled {
  const choices = notes.flatMap(({ note, figures }, place) => {
    const candidateIndex = rows[place + 1]?.candidates[found.path[place + 1] ?? 0] ?? 0;
    const chosen = figures[candidateIndex];
    return chosen === undefined ? [] : [{ key: note.key, candidateIndex, ...chosen }];
  });
  return {
    choices, objective: found.objective, lowerBound, proven: isClose(found.objective, lowerBound), totalTensionN: newtons(found.loadN),
    activeLimits: activeLimitsOf(problem, notes, choices),
  };
}

function noneInBand({ limits = {} }: RescaleProblem, nearest = Number.NaN): Issue {
  const name = limits.totalTensionN === undefined ? 'maxTotalTensionN' : 'totalTensionN';
  return {
    code: 'unreachable', path: `limits.${name}`, given: limits[name], allowed: `a total that whole strings can make: the nearest found is ${String(nearest)}`,
    params: { reason: 'totalBetweenStrings', nearest },
  };
}
