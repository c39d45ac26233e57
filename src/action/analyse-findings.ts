import type { Finding } from './analysis.ts';
import { balanceFindings, cancellingFinding } from './analyse-balance.ts';
import { type KeyContext, expandedOf, findingOf } from './analyse-context.ts';
import type { DerivedFigures } from './analyse-figures.ts';
import { type FrictionView, frictionFindings } from './analyse-friction.ts';
import { type PartsView, partFindings } from './analyse-parts.ts';
import type { UpWeightShort } from './analyse-target.ts';
import { KEY_REMEDIES, OUTCOME_REMEDIES, actionFrictionRemedies } from './remedy.ts';

/** Without an intent causes cancel when they leave less than this; grams. @source OWN */
const DEFAULT_LIMIT_G = 2;

/** What was seen of one key, before it is put into findings. */
export interface Views {
  readonly friction?: FrictionView;
  readonly parts: PartsView;
  readonly deviationG?: number;
  /** The limit the up weight lies under; absent when it does not. */
  readonly upWeight?: UpWeightShort;
}

/** Everything told of one key, in the order of work. */
export function findingsOf(context: KeyContext, { friction, parts, deviationG, upWeight }: Views): readonly Finding[] {
  const ofParts = partFindings(parts);
  const departures = [...frictionFindings(context, friction), ...ofParts, ...balanceFindings(context, friction, ofParts)];
  return [
    ...firstThings(context.derived),
    ...departures,
    ...(upWeight === undefined ? [] : [upWeightFinding(context, upWeight, departures)]),
    ...cancellingFinding(departures, deviationG, context.input.intent?.toleranceG ?? DEFAULT_LIMIT_G),
  ].sort((a, b) => a.stage - b.stage);
}

/** What is cleared before anything is judged: keys that gave no number, weights that contradict each other. */
function firstThings({ figures, contradictory }: DerivedFigures): readonly Finding[] {
  const found: Finding[] = [];
  if (figures.outcome !== undefined) found.push(findingOf('outcome', {}, ['outcome'], OUTCOME_REMEDIES[figures.outcome]));
  if (contradictory) found.push(findingOf('upAboveDown', {}, ['measured'], ['weighAgain']));
  return found;
}

/** Up weight too low to return: follows from friction or balance where those were told, and asks for a remedy of its own only where they were not. */
function upWeightFinding({ input, derived: { figures } }: KeyContext, { cause, limitG }: UpWeightShort, departures: readonly Finding[]): Finding {
  const amountG = (figures.upWeightG?.value ?? limitG) - limitG;
  const u = figures.upWeightG?.standardUncertaintyG;
  const explained = departures.some(({ cause, withinUncertainty }) => !withinUncertainty && EXPLAINS_LOW_UP_WEIGHT.has(cause));
  const remedies = explained ? [] : figures.keyFrictionG === undefined ? (['measureKeyFriction', ...KEY_REMEDIES] as const) : actionFrictionRemedies(input.kind);
  return findingOf(cause, { amountG, uncertaintyG: expandedOf(u) }, [cause === 'upWeightLow' ? 'target' : 'register'], remedies);
}

const EXPLAINS_LOW_UP_WEIGHT: ReadonlySet<Finding['cause']> = new Set([
  'frictionHigh', 'keyFrictionHigh', 'balanceLow', 'frontHeavy', 'ratioLow', 'hammerLight', 'wippenLight',
]);
