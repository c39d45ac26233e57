import { type KeyColour, keysOf } from '#instrument';
import { medianOf } from '#numerics';
import type { Finding, KeyFigures, KeyTouch, TouchAnalysis, TouchInput } from './analysis.ts';
import { balanceFindings, cancellingFinding, verdictOf } from './analyse-balance.ts';
import { type KeyContext, expandedOf, findingOf } from './analyse-context.ts';
import { type ExpectedFigures, expectFigures } from './analyse-expected.ts';
import { type DerivedFigures, deriveFigures, leverRatioOf } from './analyse-figures.ts';
import { frictionFindings, viewFriction } from './analyse-friction.ts';
import { nextForAll, nextForKey } from './analyse-next.ts';
import { partFindings, viewParts } from './analyse-parts.ts';
import { caveatsOf, summarise } from './analyse-summary.ts';
import { isUpWeightLow, judgedFigureOf, upWeightLimitOf } from './analyse-target.ts';
import { registerOf } from './register.ts';
import { KEY_REMEDIES, OUTCOME_REMEDIES, actionFrictionRemedies } from './remedy.ts';

/**
 * Works out the touch of a whole keyboard: figures, verdicts, findings with their evidence and remedies, and what to measure next.
 *
 * Three lines of evidence are read together: the exact split of a key's departure among its weighed parts, the usual friction of
 * the register, and the neighbours of the same colour. Only what was measured is claimed. Every key of the compass is in the answer,
 * bass to treble, the unmeasured ones too; figures of keys outside the compass are left out. No intent, no verdict.
 * Ignores compliance and inertia: weights describe soft playing. Holds for grands, dampers lifted; for uprights friction and balance only.
 * @source OWN how the lines are combined · PRACTICE usual ranges · JCGM-100 uncertainties
 */
export function analyseTouch(input: TouchInput): TouchAnalysis {
  const given = new Map(input.keys.map((figures) => [figures.key, figures]));
  const derived = keysOf(input.compass).map((key) => deriveFigures(input, given.get(key) ?? { key }));
  const expected = expectFigures(derived);
  const keys = derived.map((each) => touchOf(input, each, expected));
  const ofColour = (colour: KeyColour): { readonly value?: number; readonly notes: number } => {
    const ratios = derived.flatMap((each) => (each.colour === colour && each.weightRatio !== undefined ? [each.weightRatio] : []));
    return { notes: ratios.length, value: ratios.length === 0 ? undefined : medianOf(ratios) };
  };
  return {
    keys,
    summary: summarise(input, keys),
    weightRatio: { natural: ofColour('natural'), sharp: ofColour('sharp') },
    leverRatio: { natural: leverRatioOf(input.arms.natural), sharp: leverRatioOf(input.arms.sharp) },
    next: nextForAll(input, keys),
    partial: input.kind === 'upright',
    caveats: caveatsOf(input, keys),
  };
}

function touchOf(input: TouchInput, derived: DerivedFigures, expected: ExpectedFigures): KeyTouch {
  const register = input.kind === 'grand' && input.dampers !== 'resting' ? registerOf(input.compass, derived.key) : undefined;
  const judged = input.intent === null ? undefined : judgedFigureOf(input.intent, derived);
  const context: KeyContext = { input, derived, expected, register, judged };
  const friction = viewFriction(context);
  const parts = viewParts(context, friction?.usualG);
  const verdict = verdictOf(context);
  const upWeight = upWeightLimitOf(input.intent, register);
  const upWeightLow = isUpWeightLow(derived.figures, upWeight.limitG);
  const departures = departuresOf(context, friction, parts);
  const findings = [
    ...firstThings(derived),
    ...departures,
    ...(upWeightLow ? [upWeightFinding(context, upWeight, departures)] : []),
    ...cancellingFinding(departures, verdict.deviationG, input.intent?.toleranceG ?? DEFAULT_LIMIT_G),
  ].sort((a, b) => a.stage - b.stage);
  const { key, colour, figures, balanceWeightG, frictionG, correctedFrictionG, standardUncertaintyG, keyRatio, weightRatio } = derived;
  return {
    key, colour, figures, balanceWeightG, frictionG, correctedFrictionG, standardUncertaintyG, keyRatio, weightRatio,
    shares: parts.shares,
    usualFrictionG: friction?.usualG,
    ...verdict,
    upWeightLow,
    findings,
    next: nextForKey(input, derived, findings, verdict.doubtful),
  };
}

/** Without an intent causes cancel when they leave less than this; grams. @source OWN */
const DEFAULT_LIMIT_G = 2;

function departuresOf(context: KeyContext, friction: ReturnType<typeof viewFriction>, parts: ReturnType<typeof viewParts>): readonly Finding[] {
  const ofParts = partFindings(parts);
  return [...frictionFindings(context, friction), ...ofParts, ...balanceFindings(context, friction, ofParts)];
}

/** What is cleared before anything is judged: keys that gave no number, weights that contradict each other. */
function firstThings({ figures, contradictory, frictionG }: DerivedFigures): readonly Finding[] {
  const found: Finding[] = [];
  if (figures.outcome !== undefined) found.push(findingOf('outcome', {}, ['outcome'], OUTCOME_REMEDIES[figures.outcome]));
  if (contradictory) found.push(findingOf('upAboveDown', { amountG: frictionG }, ['measured'], ['weighAgain']));
  return found;
}

type Limit = ReturnType<typeof upWeightLimitOf>;

/** Up weight too low to return: follows from friction or balance where those were told, and asks for a remedy of its own only where they were not. */
function upWeightFinding({ input, derived: { figures } }: KeyContext, { limitG, evidence }: Limit, departures: readonly Finding[]): Finding {
  const amountG = (figures.upWeightG?.value ?? limitG) - limitG;
  const u = figures.upWeightG?.standardUncertaintyG;
  const explained = departures.some(({ cause, withinUncertainty }) => !withinUncertainty && EXPLAINS_LOW_UP_WEIGHT.has(cause));
  const remedies = explained ? [] : figures.keyFrictionG === undefined ? (['measureKeyFriction', ...KEY_REMEDIES] as const) : actionFrictionRemedies(input.kind);
  return findingOf('upWeightLow', { amountG, uncertaintyG: expandedOf(u) }, [evidence], remedies);
}

const EXPLAINS_LOW_UP_WEIGHT: ReadonlySet<Finding['cause']> = new Set([
  'frictionHigh', 'keyFrictionHigh', 'balanceLow', 'frontHeavy', 'ratioLow', 'hammerLight', 'wippenLight',
]);
