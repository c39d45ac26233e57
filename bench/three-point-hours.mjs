/**
 * Hours of a job of 100 tasks by 10,000 runs, correlated by a Gaussian copula, in turns against a vectorised baseline: whole columns of
 * NumPy and SciPy doing the same (normal scores, norm.cdf, beta.ppf), and columns of NumPy doing less (independent beta draws, no correlation).
 * Needs python3 with NumPy and SciPy for the baseline; without them only our own time is told. Both answers are compared before times are.
 */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { threePointHoursOperation } from '../dist/estimate/index.js';
import { report, spreadOf, timesOf } from './measure.mjs';

const RUNS = 10_000;
const tasks = Array.from({ length: 100 }, (_, i) => ({ low: 1 + (i % 7), likely: 3 + (i % 7) + (i % 11), high: 16 + (i % 7) + (i % 13), chancePct: 100 }));
const question = { tasks, correlation: 0.3, runs: RUNS, seed: 1 };

const BASELINE = `
import sys, json, time
import numpy as np
from scipy.stats import norm, beta
tasks = json.loads(sys.stdin.readline())
a, m, b = (np.array([t[k] for t in tasks], float) for k in ('low', 'likely', 'high'))
al = 1 + 4 * (m - a) / (b - a)
n = ${RUNS}
rng = np.random.default_rng(1)
def same():
    z = np.sqrt(.3) * rng.standard_normal((n, 1)) + np.sqrt(.7) * rng.standard_normal((n, len(tasks)))
    total = (a + (b - a) * beta.ppf(norm.cdf(z), al, 6 - al)).sum(axis=1)
    return total.mean(), total.std(ddof=1), np.quantile(total, [.5, .8, .9])
def less():
    total = (a + (b - a) * rng.beta(al, 6 - al, (n, len(tasks)))).sum(axis=1)
    return total.mean(), total.std(ddof=1), np.quantile(total, [.5, .8, .9])
for line in sys.stdin:
    work = same if line.strip() == 'same' else less
    begin = time.perf_counter()
    mean, sd, q = work()
    print(json.dumps({'ms': 1000 * (time.perf_counter() - begin), 'meanH': mean, 'sdH': sd, 'p80H': q[1]}), flush=True)
`;

/** The baseline in a process of its own, asked line by line; undefined where there is no NumPy. */
async function baseline() {
  const child = spawn('python3', ['-c', BASELINE], { stdio: ['pipe', 'pipe', 'ignore'] });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const died = new Promise((resolve) => { child.on('error', () => resolve(undefined)); child.on('exit', () => resolve(undefined)); });
  child.stdin.on('error', () => undefined);
  child.stdin.write(`${JSON.stringify(tasks)}\n`);
  const ask = async (what) => {
    child.stdin.write(`${what}\n`);
    const line = await Promise.race([lines.next(), died]);
    return line?.value === undefined ? undefined : JSON.parse(line.value);
  };
  return (await ask('less')) === undefined ? undefined : { ask, end: () => child.stdin.end() };
}

const rival = await baseline();
const ours = [];
const theirs = { same: [], less: [] };
let figures;
let rivals;
for (let turn = 0; turn < 12; turn += 1) {
  const [ms] = await timesOf(() => { figures = threePointHoursOperation.run(question).value; }, { runs: 1, warm: 0 });
  const same = await rival?.ask('same');
  const less = await rival?.ask('less');
  if (turn < 2) continue;
  ours.push(ms);
  if (same !== undefined) { theirs.same.push(same.ms); theirs.less.push(less.ms); rivals = same; }
}
rival?.end();
const median = (list) => (list.length === 0 ? undefined : spreadOf(list).median);
report('three-point-hours', {
  oursMs: spreadOf(ours),
  ...(rivals === undefined ? { baseline: 'python3 with NumPy and SciPy is not here' } : {
    baselineSameMs: spreadOf(theirs.same), ratioToSame: median(ours) / median(theirs.same),
    baselineIndependentMs: spreadOf(theirs.less), ratioToIndependent: median(ours) / median(theirs.less),
    agreement: { meanOffPct: 100 * Math.abs(figures.meanH / rivals.meanH - 1), sdOffPct: 100 * Math.abs(figures.sdH / rivals.sdH - 1), p80OffPct: 100 * Math.abs(figures.p80H / rivals.p80H - 1) },
  }),
});
