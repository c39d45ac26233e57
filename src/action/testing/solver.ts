import * as highs from 'highs';

interface Solver {
  readonly solve: (program: string, options: Readonly<Record<string, number>>) => { readonly Status: string; readonly Columns: Readonly<Record<string, object>> };
}

/** The package's types describe its CommonJS form, in which the loader is the module itself. */
const load = highs.default as unknown as () => Promise<Solver>;

/** Tolerances at their tightest: what counts as optimal is optimal. */
const OPTIONS = { mip_rel_gap: 0, mip_abs_gap: 1e-9, mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9 };

/**
 * Values of the variables of a mixed-integer program in LP format at its optimum, `undefined` when it has no solution.
 * @throws Error on any other answer than these two.
 */
export async function solveProgram(lines: readonly string[]): Promise<((variable: string) => number) | undefined> {
  const { Status, Columns } = (await load()).solve(lines.join('\n'), OPTIONS);
  if (Status === 'Infeasible') return undefined;
  if (Status !== 'Optimal') throw new Error(`the solver answered ${Status}`);
  return (variable) => {
    const column = Columns[variable];
    if (column === undefined || !('Primal' in column)) throw new Error(`the solver knows no ${variable}`);
    return Number(column.Primal);
  };
}

/** A sum of weighted variables as the LP format writes it. */
export function sumText(terms: readonly (readonly [weight: number, variable: string])[]): string {
  return terms.map(([weight, variable]) => `${weight < 0 ? '-' : '+'} ${String(Math.abs(weight))} ${variable}`).join(' ');
}
