import { solveProgram, sumText } from '../../testing/solver.ts';
import type { KeyLeadsProblem } from '../key-leads-problem.ts';
import { type PlainLead, costOf, everyLead, frontWeightOf } from './exhaust.ts';

/** Least cost of a key's leads by a general solver of mixed-integer programs, or `undefined` when it finds none; the answer is held against every constraint again. */
export async function costByMilp(p: KeyLeadsProblem): Promise<number | undefined> {
  const clear = (a: PlainLead, b: PlainLead): boolean => Math.abs(a.x - b.x) >= (a.d + b.d) / 2 + p.gapMm - 1e-7;
  const all = everyLead(p);
  const unset = costOf(p, []);
  const names = all.map((_, i) => `z${String(i)}`);
  const terms = (weight: (lead: PlainLead) => number): string => sumText(all.map((lead, i) => [weight(lead), `z${String(i)}`]));
  const one = (lead: PlainLead): number => frontWeightOf(p, [lead]) - p.bareFrontWeightG;
  const [low, high] = [p.targetFrontWeightG - p.toleranceG - p.bareFrontWeightG, p.targetFrontWeightG + p.toleranceG - p.bareFrontWeightG];
  const valueOf = await solveProgram([
    'Minimize', ` obj: ${terms((lead) => costOf(p, [lead]) - unset)}`, 'Subject To',
    ` low: ${terms(one)} >= ${String(low)}`, ` high: ${terms(one)} <= ${String(high)}`, ` count: ${terms(() => 1)} <= ${String(p.maxLeads)}`,
    ...cliquesOf(all, p.gapMm).map((members, i) => ` c${String(i)}: ${sumText(members.map((z) => [1, `z${String(z)}`]))} <= 1`),
    'Binary', ` ${names.join(' ')}`, 'End',
  ]);
  if (valueOf === undefined) return undefined;
  const set = all.filter((_, i) => valueOf(`z${String(i)}`) > 0.5);
  const legal = set.length <= p.maxLeads && set.every((a, i) => set.slice(i + 1).every((b) => clear(a, b)));
  if (!legal || Math.abs(frontWeightOf(p, set) - p.targetFrontWeightG) > p.toleranceG + 1e-6) throw new Error('the solver broke a constraint');
  return costOf(p, set);
}

/** Interval cliques: at the back end of each stretch a lead owns, the owners of that point, of whom one may stand. */
function cliquesOf(all: readonly PlainLead[], gapMm: number): readonly (readonly number[])[] {
  const half = ({ d }: PlainLead): number => (d + gapMm) / 2;
  const owners = all.map((lead) => all.flatMap((other, i) => (other.x - half(other) <= lead.x - half(lead) + 1e-7 && other.x + half(other) > lead.x - half(lead) + 1e-7 ? [i] : [])));
  return [...new Map(owners.map((members) => [members.join(','), members])).values()].filter(({ length }) => length > 1);
}
