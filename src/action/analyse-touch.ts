import { type KeyColour, keysOf } from '#instrument';
import type { KeyTouch, TouchAnalysis, TouchInput } from './analysis.ts';
import { verdictOf } from './analyse-balance.ts';
import type { KeyContext } from './analyse-context.ts';
import { type ExpectedFigures, expectFigures } from './analyse-expected.ts';
import { type DerivedFigures, deriveFigures, leverRatioOf } from './analyse-figures.ts';
import { findingsOf } from './analyse-findings.ts';
import { viewFriction } from './analyse-friction.ts';
import { nextForAll, nextForKey } from './analyse-next.ts';
import { viewParts } from './analyse-parts.ts';
import { caveatsOf, summarise } from './analyse-summary.ts';
import { judgedFigureOf, upWeightShortOf } from './analyse-target.ts';
import { sectionWeightRatioOf } from './parts.ts';
import { registerOf } from './register.ts';

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
  return {
    keys,
    summary: summarise(input, keys),
    weightRatio: { natural: weightRatioOfColour(derived, 'natural'), sharp: weightRatioOfColour(derived, 'sharp') },
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
  const upWeight = upWeightShortOf(input.intent, register, derived.figures);
  const findings = findingsOf(context, { friction, parts, deviationG: verdict.deviationG, upWeight });
  const { key, colour, figures, balanceWeightG, frictionG, correctedFrictionG, standardUncertaintyG, keyRatio, weightRatio } = derived;
  return {
    key, colour, figures, balanceWeightG, frictionG, correctedFrictionG, standardUncertaintyG, keyRatio, weightRatio,
    shares: parts.shares,
    reference: parts.reference,
    usualFrictionG: friction?.usualG,
    ...verdict,
    upWeightLow: upWeight?.cause === 'upWeightLow',
    upAboveDown: derived.contradictory,
    findings,
    next: nextForKey(input, derived, findings, verdict.doubtful),
  };
}

function weightRatioOfColour(derived: readonly DerivedFigures[], colour: KeyColour): { readonly value?: number; readonly notes: number } {
  const ratios = derived.flatMap((each) => (each.colour === colour && each.weightRatio !== undefined ? [each.weightRatio] : []));
  return { notes: ratios.length, value: ratios.length === 0 ? undefined : sectionWeightRatioOf(ratios) };
}
