/** A general solver of mixed-integer programs for the benchmarks: LP text in, values of the variables out; only what it calls optimal counts. */
import highsOf from 'highs';

const highs = await highsOf();

/** A sum of weighted variables as the LP format writes it. */
export const sumOf = (terms) => terms.map(([weight, name]) => `${weight < 0 ? '-' : '+'} ${Math.abs(weight)} ${name}`).join(' ');

/** Milliseconds, status and values of one program, at gap 0 and within a time. */
export function solved(lines, seconds) {
  const begin = performance.now();
  const { Status: status, Columns: columns } = highs.solve(lines.join('\n'), { mip_rel_gap: 0, mip_abs_gap: 1e-9, mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9, time_limit: seconds });
  return { ms: performance.now() - begin, status, valueOf: (name) => columns[name].Primal };
}
