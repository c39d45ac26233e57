import type { PlanShifts, PlannedKey } from '#action';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';

const PLAN: Origin = { how: 'plan' };
const allFromPlan = (input: Readonly<Record<string, unknown>>): Readonly<Record<string, Origin>> => Object.fromEntries(Object.keys(input).map((path) => [path, PLAN]));

/** What of a key the stories are told of. */
export type Planned = Pick<PlannedKey, 'plan' | 'figures'>;

/** Front weight needed, and the weights that follow: the operation `front-weight-target`. */
export function frontStory(title: string, output: 'frontWeightG' | 'downWeightG' | 'upWeightG', { plan, figures }: Planned): FigureStory {
  const { balanceWeightG, hammerWeightG, keyRatio, weightRatio, frictionG } = figures;
  const input = { balanceWeightG, hammerWeightG, wippenWeightG: plan.wippenWeightG, keyRatio, weightRatio, helperSpringG: plan.springG, frictionG };
  return { title, output, operation: 'front-weight-target', input, origins: allFromPlan(input) };
}

/** Ratios after the shifts: the operation `lever-shift`. */
export function shiftStory(title: string, output: 'keyRatio' | 'wippenRatio' | 'hammerRatio' | 'actionRatio', { plan: { levers } }: Planned, { rollerOutMm, capstanAwayMm }: PlanShifts): FigureStory {
  const input = { levers, rollerOutMm, capstanTowardPlayerMm: 0 - capstanAwayMm, jackFollows: false };
  return { title, output, operation: 'lever-shift', input, origins: { levers: { how: 'leverArms' }, rollerOutMm: { how: 'tried' }, capstanTowardPlayerMm: { how: 'tried' }, jackFollows: PLAN } };
}

/** Dip or blow needed: the operation `regulation`, with two of the three given. */
export function regulationStory(title: string, output: 'aftertouchMm' | 'dipMm' | 'blowMm', { plan, figures }: Planned): FigureStory | undefined {
  if (plan.regulation === undefined || figures.regulation === undefined) return undefined;
  const { letOffMm, lossMm, keyEdgeMm, dipMm, aftertouchMm } = plan.regulation;
  const given = { aftertouchMm: { blowMm: figures.regulation.blowMm, dipMm }, dipMm: { blowMm: figures.regulation.blowMm, aftertouchMm }, blowMm: { dipMm, aftertouchMm } }[output];
  const input = { letOffMm, distanceRatio: figures.distanceRatio, keyEdgeMm, keyFrontMm: plan.levers.keyFrontMm, lossMm, ...given };
  return { title, output, operation: 'regulation', input, origins: allFromPlan(input) };
}
