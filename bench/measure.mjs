/** Shared by the benchmarks: timing of a function in one process, and one line of JSON as the result. */

/** Median and 95th percentile of a list of figures. */
export function spreadOf(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return { median: at(0.5), p95: at(0.95), count: sorted.length };
}

/** Milliseconds of each of `runs` calls, after `warm` calls that are not counted. */
export async function timesOf(work, { runs = 50, warm = 5 } = {}) {
  for (let run = 0; run < warm; run += 1) await work(run);
  const times = [];
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now();
    await work(run);
    times.push(performance.now() - start);
  }
  return times;
}

/** Times two rivals in turns, so that what disturbs one disturbs the other; answers both spreads and the ratio of medians. */
export async function duel(ours, baseline, options = {}) {
  const { runs = 50, warm = 5 } = options;
  const mine = [];
  const theirs = [];
  for (let run = 0; run < runs + warm; run += 1) {
    const [a] = await timesOf(ours, { runs: 1, warm: 0 });
    const [b] = await timesOf(baseline, { runs: 1, warm: 0 });
    if (run >= warm) {
      mine.push(a);
      theirs.push(b);
    }
  }
  const [x, y] = [spreadOf(mine), spreadOf(theirs)];
  return { ours: x, baseline: y, ratio: x.median / y.median };
}

/** Prints the result of a benchmark as one line of JSON. */
export function report(name, result) {
  process.stdout.write(`${JSON.stringify({ name, ...result })}\n`);
}
