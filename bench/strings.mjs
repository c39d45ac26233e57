/**
 * Strings. Partials: 88 notes × 20 exact partials (28 of them with bare ends) against finite elements with
 * banded matrices and Lanczos (finite-elements.mjs), each of three strings with as many elements as it takes to come within 1e-6 of
 * them. Both accuracies are told: ours against the analytic pinned string, theirs against ours.
 * Rescale: 88 notes, 21 plain sizes, 150 and more wound candidates, the total held: time from bare sizes to the proven gap; the
 * objective against a rule of thumb, the nearest size, simulated annealing given the same time, and a MILP given 60 s
 * (a hundred times would be minutes) on what of the scale it can take in; growth with notes and candidates.
 */
import { candidateFiguresOf, partialsOf, plainFiguresOf, rescale, steppedPartialsOf } from '#strings';
import highsOf from 'highs';
import { finiteElementPartials } from './finite-elements.mjs';
import { inventedScale, plainSizes, repeatable } from './invented-scale.mjs';
import { duel, report, spreadOf, timesOf } from './measure.mjs';

const must = (result) => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues[0]));
  return result.value;
};

// ---- partials

const STEEL = { ei: (d) => (200e9 * Math.PI * (d * 1e-3) ** 4) / 64, mass: (d) => (7.85 * Math.PI * d ** 2) / 4 };

/** Every note as a stepped string: the bass with 18 mm bare at either end. */
const strings = inventedScale().map((note) => {
  const { diameterMm = note.candidates[0].coreDiameterMm } = note.candidates.at(-1).diameterMm ? note.candidates.at(-1) : {};
  const isBass = note.key <= 28;
  const core = STEEL.mass(diameterMm);
  const full = isBass ? (note.targetTensionN * 1e3) / (4 * (note.speakingLengthMm * 1e-3) ** 2 * note.frequencyHz ** 2) : core;
  const tensionN = isBass ? note.targetTensionN : plainFiguresOf({ ...note, diameterMm }).exactTensionN;
  const piece = (lengthMm, linearDensityGPerM) => ({ lengthMm, linearDensityGPerM, bendingStiffnessNm2: STEEL.ei(diameterMm) });
  return { tensionN, segments: isBass ? [piece(18, core), piece(note.speakingLengthMm - 36, full), piece(18, core)] : [piece(note.speakingLengthMm, core)] };
});

const worst = (found, exact) => Math.max(...exact.map((value, n) => Math.abs(found[n] / value - 1)));

/** How near the rival must come to count as a solve of the same partials. */
const CLAIMED = 1e-6;
const MESHES = [40, 60, 80, 110, 150, 200, 280, 400, 560, 800];

/** The least number of elements with which finite elements come as near as is claimed; undefined where none of the meshes does. */
function elementsFor(string) {
  const exact = steppedPartialsOf(string, 20);
  return MESHES.find((elements) => worst(finiteElementPartials(string, elements), exact) <= CLAIMED);
}

async function partials() {
  const sample = [strings[0], strings[39], strings[87]];
  const elements = sample.map(elementsFor);
  if (elements.includes(undefined)) throw new Error(`finite elements do not come within ${String(CLAIMED)}`);
  const agreement = Math.max(...sample.map((string, at) => worst(finiteElementPartials(string, elements[at]), steppedPartialsOf(string, 20))));
  const c4 = { frequencyHz: 261.6256, speakingLengthMm: 622, diameterMm: 1.016 };
  const { exactTensionN, exactInharmonicityB, linearDensityGPerM } = plainFiguresOf(c4);
  const analytic = partialsOf({ frequencyHz: c4.frequencyHz, inharmonicityB: exactInharmonicityB });
  const ours = steppedPartialsOf({ tensionN: exactTensionN, segments: [{ lengthMm: 622, linearDensityGPerM, bendingStiffnessNm2: STEEL.ei(1.016) }] }, 20);
  const eighty = spreadOf(await timesOf(() => { for (const string of strings) steppedPartialsOf(string, 20); }, { runs: 10, warm: 2 }));
  const some = await duel(() => { for (const string of sample) steppedPartialsOf(string, 20); }, () => { for (const [at, string] of sample.entries()) finiteElementPartials(string, elements[at]); }, { runs: 20, warm: 3 });
  return {
    exact88x20Ms: eighty.median, exactFarthestOffAnalytic: worst(ours, analytic), finiteElementsClaimed: CLAIMED, finiteElements: elements, finiteElementsFarthestOff: agreement,
    threeStringsExactMs: some.ours.median, threeStringsFiniteElementsMs: some.baseline.median, finiteElementsOverExact: 1 / some.ratio,
  };
}

// ---- rescale

const WEIGHTS = { tensionSmoothness: 1, inharmonicitySmoothness: 0.3, sizeChange: 0.001, tensionDeviation: 0.05 };
const TOTAL = 170_000;

/** The objective and the load of any choice, straight from the definition, from figures worked out once. */
function evaluator(notes) {
  const known = notes.map((note) => note.candidates.map((candidate) => {
    const { tensionN, inharmonicityB } = must(candidateFiguresOf(note, candidate));
    const size = candidate.diameterMm === undefined ? `w${candidate.coreDiameterMm}+${candidate.wraps.map(({ wireDiameterMm }) => wireDiameterMm).join('+')}` : `p${candidate.diameterMm}`;
    return { t: Math.log(tensionN), b: Math.log(inharmonicityB), load: note.strings * tensionN, u: WEIGHTS.tensionDeviation * Math.log(tensionN / note.targetTensionN) ** 2, size };
  }));
  const second = (a, b, c) => (a - 2 * b + c) ** 2;
  const step = (choice, i) => {
    const here = known[i][choice[i]];
    const one = known[i - 1]?.[choice[i - 1]];
    const two = known[i - 2]?.[choice[i - 2]];
    const change = one !== undefined && one.size !== here.size && one.size[0] === here.size[0] ? WEIGHTS.sizeChange : 0;
    return here.u + change + (two === undefined ? 0 : WEIGHTS.tensionSmoothness * second(two.t, one.t, here.t) + WEIGHTS.inharmonicitySmoothness * second(two.b, one.b, here.b));
  };
  const objective = (choice) => choice.reduce((sum, _, i) => sum + step(choice, i), 0);
  const load = (choice) => choice.reduce((sum, at, i) => sum + known[i][at].load, 0);
  return { known, step, objective, load };
}

/** The candidate of each note whose tension is nearest to its target. */
const nearestSize = ({ known }) => known.map((row) => row.reduce((best, { u }, at) => (u < row[best].u ? at : best), 0));

/** Half a size thicker every four notes down from the top, and of the wound the nearest to the target of a core of one size each octave. */
function ruleOfThumb(notes, measured) {
  const near = nearestSize(measured);
  const top = 1;
  return notes.map(({ key, candidates }, i) => {
    const plain = candidates.flatMap(({ diameterMm }, at) => (diameterMm === undefined ? [] : [at]));
    if (plain.length === 0) return near[i];
    return plain[Math.min(plain.length - 1, top + Math.floor((88 - key) / 4))] ?? near[i];
  });
}

/** Simulated annealing on the objective with a penalty on the total, for a time. */
function annealed(measured, start, forMs) {
  const random = repeatable(11);
  const choice = [...start];
  let load = measured.load(choice);
  const off = (value) => Math.max(Math.abs(value / TOTAL - 1) - 1e-3, 0) * 50;
  const local = (i) => [i, i + 1, i + 2].reduce((sum, at) => sum + (at < choice.length ? measured.step(choice, at) : 0), 0);
  let best = Infinity;
  const begin = performance.now();
  for (let left = 1; left > 0; left = 1 - (performance.now() - begin) / forMs) {
    const heat = 0.02 * left ** 2;
    for (let move = 0; move < 500; move += 1) {
      const i = Math.floor(random() * choice.length);
      const was = choice[i];
      const before = local(i) + off(load);
      choice[i] = Math.floor(random() * measured.known[i].length);
      const moved = load + measured.known[i][choice[i]].load - measured.known[i][was].load;
      if (random() < Math.exp((before - local(i) - off(moved)) / heat)) load = moved;
      else choice[i] = was;
    }
    if (off(measured.load(choice)) === 0) best = Math.min(best, measured.objective(choice));
  }
  return best;
}

/** Time and outcome of the rescale itself. */
function rescaled(notes, limits) {
  const begin = performance.now();
  const { objective, lowerBound, proven, totalTensionN } = must(rescale({ notes, weights: WEIGHTS, limits }));
  return { ms: performance.now() - begin, objective, lowerBound, proven, gapPct: 100 * (1 - lowerBound / objective), totalTensionN };
}

/** The rescale as a MILP on indicators of triples, and what a general solver makes of it in a time; only an optimum that keeps every constraint counts. */
async function milp(notes, seconds) {
  const measured = evaluator(notes);
  const rows = measured.known;
  const highs = await highsOf();
  const terms = [];
  const constraints = [];
  const names = [];
  const y = (i, a, b, c) => `y${i}_${a}_${b}_${c}`;
  const sum = (list) => list.join(' + ');
  const range = (row) => row.map((_, at) => at);
  for (let i = 2; i < rows.length; i += 1) {
    for (const a of range(rows[i - 2])) for (const b of range(rows[i - 1])) for (const c of range(rows[i])) {
      const choice = [];
      [choice[i - 2], choice[i - 1], choice[i]] = [a, b, c];
      const first = i === 2 ? rows[0][a].u + rows[1][b].u + (rows[0][a].size !== rows[1][b].size && rows[0][a].size[0] === rows[1][b].size[0] ? WEIGHTS.sizeChange : 0) : 0;
      terms.push(`${measured.step(choice, i) + first} ${y(i, a, b, c)}`);
      names.push(y(i, a, b, c));
    }
  }
  constraints.push(`one: ${sum(range(rows[0]).flatMap((a) => range(rows[1]).flatMap((b) => range(rows[2]).map((c) => y(2, a, b, c)))))} = 1`);
  for (let i = 3; i < rows.length; i += 1) {
    for (const b of range(rows[i - 2])) for (const c of range(rows[i - 1])) {
      const into = range(rows[i - 3]).map((a) => y(i - 1, a, b, c));
      const out = range(rows[i]).map((d) => y(i, b, c, d));
      constraints.push(`f${i}_${b}_${c}: ${sum(into)} - ${out.join(' - ')} = 0`);
    }
  }
  const total = [];
  for (let i = 2; i < rows.length; i += 1) for (const a of range(rows[i - 2])) for (const b of range(rows[i - 1])) for (const c of range(rows[i])) {
    total.push(`${rows[i][c].load + (i === 2 ? rows[0][a].load + rows[1][b].load : 0)} ${y(i, a, b, c)}`);
  }
  const reach = (pick) => rows.reduce((all, row) => all + pick(...row.map(({ load }) => load)), 0);
  const target = 0.6 * reach(Math.min) + 0.4 * reach(Math.max);
  const limits = { totalTensionN: target };
  constraints.push(`low: ${sum(total)} >= ${target * 0.999}`, `high: ${sum(total)} <= ${target * 1.001}`);
  const begin = performance.now();
  const solution = highs.solve(`Minimize\n obj: ${sum(terms)}\nSubject To\n ${constraints.join('\n ')}\nBinary\n ${names.join(' ')}\nEnd`, { time_limit: seconds });
  const ms = performance.now() - begin;
  const own = rescaled(notes, limits);
  const out = { notes: rows.length, candidates: rows[0].length, solverMs: ms, status: solution.Status, ownMs: own.ms, ownObjective: own.objective, ownBound: own.lowerBound };
  if (solution.Status !== 'Optimal') return out;
  const choice = rows.map(() => 0);
  for (const name of names) {
    if (solution.Columns[name].Primal < 0.5) continue;
    const [i, a, b, c] = name.slice(1).split('_').map(Number);
    [choice[i - 2], choice[i - 1], choice[i]] = [a, b, c];
  }
  const [objective, load] = [measured.objective(choice), measured.load(choice)];
  const holds = Math.abs(load / target - 1) <= 1e-3 * (1 + 1e-6) && Math.abs(objective / solution.ObjectiveValue - 1) < 1e-6;
  return { ...out, solverObjective: holds ? objective : 'does not keep its constraints', ownOverSolver: own.objective / objective, boundHolds: own.lowerBound <= objective * (1 + 1e-9) };
}

const notes = inventedScale();
const measured = evaluator(notes);
rescaled(notes.slice(40, 60));
const runs = [0, 1, 2].map(() => rescaled(notes, { totalTensionN: TOTAL }));
const whole = { ...runs[0], ms: spreadOf(runs.map(({ ms }) => ms)).median };
const free = rescaled(notes);
const plainNotes = inventedScale({ from: 29 });
const plainMeasured = evaluator(plainNotes);
const plain = rescaled(plainNotes);
const rivals = (list, of, best) => ({ ruleOfThumbOverOurs: of.objective(ruleOfThumb(list, of)) / best.objective, nearestSizeOverOurs: of.objective(nearestSize(of)) / best.objective });
const growth = {
  notes22Ms: rescaled(inventedScale({ from: 7, to: 28 })).ms, notes44Ms: rescaled(inventedScale({ to: 44 })).ms, notes88Ms: free.ms,
  wound40Ms: rescaled(inventedScale({ wound: 40 })).ms, wound80Ms: rescaled(inventedScale({ wound: 80 })).ms, wound160Ms: rescaled(inventedScale({ wound: 160 })).ms,
};

report('strings', {
  partials: await partials(),
  wholeScaleTotalHeld: whole,
  wholeScaleFree: free,
  againstRivals: { whole: rivals(notes, measured, free), plainOnly: rivals(plainNotes, plainMeasured, plain), annealingSameTimeOverOurs: annealed(measured, nearestSize(measured), whole.ms) / whole.objective, annealing8xTimeOverOurs: annealed(measured, nearestSize(measured), 8 * whole.ms) / whole.objective },
  growth,
  milp: { small: await milp(inventedScale({ from: 40, to: 48, plain: plainSizes.slice(6, 11) }), 60), larger: await milp(inventedScale({ from: 40, to: 57, plain: plainSizes.slice(4, 12) }), 60), note: 'capped at 60 s; of the whole scale it would need 1e8 columns' },
});
