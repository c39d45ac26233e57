import type { Finding, KeyTouch, Remedy } from './analysis.ts';
import { type KeyContext, departureOf, expandedOf, findingOf } from './analyse-context.ts';
import { frictionBiasOf } from './analyse-figures.ts';
import type { FrictionView } from './analyse-friction.ts';
import { isWithin, missOf } from './inside.ts';
import { stageOfRemedy } from './remedy.ts';

/** Balance departures under this are nobody's fault without an intent's tolerance; grams. @source OWN */
const LEAST_TOLD_G = 2;

/**
 * What is left of a key's departure once friction and the parts that stand out are taken from it.
 * With an intent: against the balance weight it asks for, at the friction usual here; told beyond its tolerance.
 * Without: against the neighbours. With every part weighed the rest is common to the neighbourhood and is put right by lead;
 * otherwise the parts are to be weighed first.
 */
export function balanceFindings(context: KeyContext, friction: FrictionView | undefined, parts: readonly Finding[]): readonly Finding[] {
  const { derived, expected, input } = context;
  const balance = derived.balanceWeightG;
  if (balance === undefined || derived.contradictory) return [];
  const explainedG = parts.reduce((sum, { amountG = 0 }) => sum + amountG, 0);
  const line = expected.balance.get(derived.key);
  const nearby = line === undefined ? undefined : departureOf(balance, line, 1, derived.standardUncertaintyG);
  const asked = askedBalanceOf(context, friction);
  const limitG = asked === undefined ? LEAST_TOLD_G : (input.intent?.toleranceG ?? LEAST_TOLD_G);
  const amountG = (asked === undefined ? (nearby?.amountG ?? 0) : balance - asked) - explainedG;
  if (Math.abs(amountG) <= limitG || (asked === undefined && nearby?.told !== true)) return [];
  const uncertaintyG = asked === undefined ? nearby?.uncertaintyG : expandedOf(derived.standardUncertaintyG);
  const cause = amountG > 0 ? 'balanceHigh' : 'balanceLow';
  const alsoNearby = nearby?.told === true && Math.sign(nearby.amountG) === Math.sign(amountG);
  const evidence = asked === undefined ? (['neighbours'] as const) : alsoNearby ? (['target', 'neighbours'] as const) : (['target'] as const);
  const remedies = remediesFor(context, amountG, limitG);
  return [{ ...findingOf(cause, { amountG, uncertaintyG }, [...evidence], remedies), stage: stageOfRemedy(remedies[0]) }];
}

/** Balance weight the intent asks for: its own, or its down weight less friction; friction of this key where that is ordinary. */
function askedBalanceOf({ input, judged, derived }: KeyContext, friction: FrictionView | undefined): number | undefined {
  if (input.intent === null || judged === undefined || derived.frictionG === undefined) return undefined;
  if (input.intent.even === 'balanceWeight') return judged.targetG;
  const unusual = friction !== undefined && friction.evidence.length > 0;
  return judged.targetG - (unusual ? friction.usualG + (frictionBiasOf(input, derived.figures) ?? 0) : derived.frictionG);
}

/** So many tolerances off, and lead would only hide what ratio and hammers do: they are looked at first. @source OWN */
const MORE_THAN_LEAD_HIDES = 2;

function remediesFor({ input, derived }: KeyContext, amountG: number, limitG: number): readonly [Remedy, ...Remedy[]] {
  if (input.kind === 'upright') return ['checkSpringsAndDampers'];
  if (derived.weightRatio === undefined) return ['weighParts'];
  const far = Math.abs(amountG) > MORE_THAN_LEAD_HIDES * limitG;
  if (amountG > 0) return far ? ['checkLevers', 'lightenHammer', 'addLead'] : ['addLead'];
  return far ? ['checkLevers', 'removeLead'] : ['removeLead'];
}

/** Two or more departures of opposite sign that leave the key looking right: told with the grams that cancel. */
export function cancellingFinding(findings: readonly Finding[], deviationG: number | undefined, limitG: number): readonly Finding[] {
  const weighing = findings.filter(({ amountG, withinUncertainty, stage }) => amountG !== undefined && !withinUncertainty && stage > 0);
  const heavier = weighing.filter(({ amountG = 0 }) => amountG > 0);
  const lighter = weighing.filter(({ amountG = 0 }) => amountG < 0);
  if (heavier.length === 0 || lighter.length === 0) return [];
  const total = (side: readonly Finding[]): number => Math.abs(side.reduce((sum, { amountG = 0 }) => sum + amountG, 0));
  const netG = deviationG ?? total(heavier) - total(lighter);
  if (Math.abs(netG) > limitG) return [];
  const first = weighing.reduce((best, finding) => (finding.stage < best.stage ? finding : best));
  return [{
    cause: 'cancelling',
    amountG: Math.min(total(heavier), total(lighter)),
    evidence: first.evidence,
    supportedBy: [],
    withinUncertainty: false,
    remedies: [],
    stage: first.stage,
  }];
}

/** The verdict by simple acceptance. */
export function verdictOf({ input, judged, derived }: KeyContext): Pick<KeyTouch, 'targetG' | 'deviationG' | 'verdict' | 'doubtful'> {
  const targetG = judged?.targetG;
  const deviationG = judged?.actualG === undefined ? undefined : missOf(judged.actualG, judged.targetG);
  const figures = { targetG, deviationG };
  if (derived.figures.outcome !== undefined) return { ...figures, verdict: 'outcome', doubtful: false };
  if (input.intent === null) return { ...figures, verdict: derived.figures.downWeightG === undefined ? 'unmeasured' : 'noTarget', doubtful: false };
  if (deviationG === undefined) return { ...figures, verdict: 'unmeasured', doubtful: false };
  const { toleranceG } = input.intent;
  const distance = Math.abs(deviationG);
  const expandedG = expandedOf(judged?.standardUncertaintyG) ?? 0;
  return { ...figures, verdict: isWithin(deviationG, 0, toleranceG) ? 'inside' : 'outside', doubtful: Math.abs(distance - toleranceG) < expandedG };
}
