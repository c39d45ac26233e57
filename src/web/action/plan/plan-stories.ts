import type { PlanShifts, PlannedKey, TouchAnalysis } from '#action';
import { type ActionTerms, type QuantityName, type Reading, leadNumbers } from '#instrument';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';
import { type ReadingsAt, readingsAt } from '../origins.ts';
import { sectionRatioStory } from '../stories.ts';

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

/** Force of a stroke, and the time the key takes to come back: the operation `dynamic-touch`. */
export function strokeStory(title: string, output: 'forceN' | 'returnMs', strokeMs: number, { figures: { balanceWeightG, frictionG, mass, strokes } }: Planned): FigureStory | undefined {
  if (mass === undefined || strokes === undefined) return undefined;
  const ofPlan = { balanceWeightG, frictionG, effectiveMassG: mass.effectiveMassG, dipMm: strokes.travelMm };
  return { title, output, operation: 'dynamic-touch', input: { ...ofPlan, strokeMs }, origins: allFromPlan(ofPlan) };
}

/** What the stories of a key rest on beside its plan. */
export interface PlanBehind {
  readonly touch: TouchAnalysis;
  readonly readings: readonly Reading[];
  readonly shifts: PlanShifts;
  readonly terms: ActionTerms | null;
}

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly QuantityName[];
const armsOf = (colour: Planned['plan']['colour'], at: ReadingsAt): readonly Reading[] => ARMS.flatMap((arm) => at.ofColour(colour, arm));
const readOr = (readings: readonly Reading[], otherwise: Origin = PLAN): Origin => (readings.length === 0 ? otherwise : { readings });

/** Ratio by weights: that of the colour as found, opened to its notes; moved with the arms where something is tried, the operation `lever-shift`. */
export function weightRatioStory(title: string, { plan }: Planned, { touch, readings, shifts: { rollerOutMm, capstanAwayMm }, terms }: PlanBehind): FigureStory {
  const isStated = terms?.[plan.colour === 'natural' ? 'weightRatioNatural' : 'weightRatioSharp'] != null;
  if (!isStated && rollerOutMm === 0 && capstanAwayMm === 0) return sectionRatioStory(title, touch, plan.colour, readings);
  const input = { levers: plan.levers, rollerOutMm, capstanTowardPlayerMm: 0 - capstanAwayMm, jackFollows: false, weightRatio: plan.weightRatio };
  const weighed = isStated ? PLAN : { how: 'sectionRatio' } as const;
  return { title, output: 'weightRatio', operation: 'lever-shift', input, origins: { levers: { readings: armsOf(plan.colour, readingsAt(readings)) }, rollerOutMm: { how: 'tried' }, capstanTowardPlayerMm: { how: 'tried' }, jackFollows: PLAN, weightRatio: weighed } };
}

/** Hammer weight: as found, after the curve or the smoothed set, with what is tried put on: the operation `hammer-change`. */
export function hammerStory(title: string, { plan }: Planned, { readings, shifts: { hammerG, hammerPct }, terms }: PlanBehind): FigureStory {
  const from: Origin = terms?.hammerCurve == null ? readOr(readingsAt(readings).ofKey(plan.key, 'hammerWeightG')) : { how: terms.hammerCurve === 'anchors' ? 'hammerCurve' : 'hammerSmoothed' };
  const input = { hammerWeightG: plan.hammerWeightG, hammerChangeG: hammerG, hammerChangePct: hammerPct };
  return { title, output: 'hammerWeightG', operation: 'hammer-change', input, origins: { hammerWeightG: from, hammerChangeG: { how: 'tried' }, hammerChangePct: { how: 'tried' } } };
}

/** Weights with the leads as they are: the operation `balance-from-parts` with the ratio by weights. */
export function standingStory(title: string, output: 'balanceWeightG' | 'downWeightG' | 'upWeightG', { plan, figures }: Planned, { readings }: PlanBehind): FigureStory | undefined {
  const { levers, hammerWeightG, weightRatio, frictionG, standingFrontG: frontWeightG, top } = figures;
  if (frontWeightG === undefined) return undefined;
  const at = readingsAt(readings);
  const input = { levers, hammerWeightG, wippenWeightG: plan.wippenWeightG, frontWeightG, helperSpringG: plan.springG, weightRatio, frictionG };
  const front: Origin = { readings: at.ofKey(plan.key, 'frontWeightG'), ...(top === undefined ? {} : { how: 'newTop' as const }) };
  const origins = { ...allFromPlan(input), levers: { how: 'tried', readings: armsOf(plan.colour, at) } as const, frontWeightG: front, wippenWeightG: readOr(at.ofKey(plan.key, 'wippenWeightG')) };
  return { title, output, operation: 'balance-from-parts', input, origins };
}

/** Effective mass, and the share of the hammer: the operation `effective-mass`. */
export function massStory(title: string, output: 'effectiveMassG' | 'hammerG', { plan: { inertia, key, colour, regulation }, figures: { levers, hammerWeightG, mass, top } }: Planned, { readings, shifts }: PlanBehind): FigureStory | undefined {
  if (inertia?.bar === undefined || mass === undefined) return undefined;
  const { bar, wippenGMm2: wippenInertiaGMm2, shankG, shankLengthMm } = inertia;
  const added = top === undefined || shifts.top === undefined || regulation === undefined ? {} : { addedMassG: top.massChangeG, addedAtMm: regulation.keyEdgeMm - shifts.top.centroidMm };
  const input = { levers, ...bar, ...added, wippenInertiaGMm2, hammerHeadG: hammerWeightG - (shankG * shankLengthMm) / (2 * levers.hammerMm), shankG, shankLengthMm };
  const at = readingsAt(readings);
  const leads = leadNumbers.flatMap((number) => (['PositionMm', 'DiameterMm'] as const).flatMap((size) => at.ofKey(key, `lead${String(number)}${size}` as QuantityName)));
  const origins: Readonly<Record<string, Origin>> = {
    ...allFromPlan(input), levers: { how: 'tried', readings: armsOf(colour, at) }, keyMassG: { how: 'lessLeads', readings: at.ofKey(key, 'keyMassG') }, leads: readOr(leads),
    ...Object.fromEntries((['keyFrontLengthMm', 'keyBackLengthMm', 'keyWidthMm'] as const).map((name) => [name, { readings: at.ofColour(colour, name) }])),
    hammerHeadG: { how: 'lessShank', readings: at.ofKey(key, 'hammerWeightG') },
  };
  return { title, output, operation: 'effective-mass', input, origins };
}
