import { grams, ratio } from '#units';
import type { Cause, Evidence, Finding } from './analysis.ts';
import { type Departure, type KeyContext, departureOf, findingOf } from './analyse-context.ts';
import { frictionBiasOf } from './analyse-figures.ts';
import { type DeviationShares, type TouchTarget, shareUncertaintiesOf, splitDeviation } from './deviation.ts';
import { REMEDIES } from './remedy.ts';

type Part = 'ratio' | 'hammer' | 'wippen' | 'front';

const CAUSES = {
  ratio: ['ratioHigh', 'ratioLow'],
  hammer: ['hammerHeavy', 'hammerLight'],
  wippen: ['wippenHeavy', 'wippenLight'],
  front: ['frontLight', 'frontHeavy'],
} as const satisfies Readonly<Record<Part, readonly [Cause, Cause]>>;

/** What the parts of a key explain. */
export interface PartsView {
  readonly departures: Readonly<Partial<Record<Part, Departure>>>;
  /** All five shares, when every part is known. */
  readonly shares?: DeviationShares;
  /** What the shares are told against. */
  readonly reference?: TouchTarget;
}

/**
 * Splits a key's departure among its parts, each against its neighbours of the same colour.
 * With every part known the split is exact; with some, each weighed part is compared by itself and nothing is said of the rest.
 */
export function viewParts(context: KeyContext, usualFrictionG: number | undefined): PartsView {
  const { derived, expected, input } = context;
  if (input.kind === 'upright') return { departures: {} };
  const { weighed } = derived;
  const target = targetFor(context, usualFrictionG);
  if (weighed === undefined || target === undefined) return { departures: looseDepartures(context) };
  const { shares, weightRatio } = splitDeviation(weighed, target);
  const doubts = doubtsOf(context, target);
  const fenced = (name: Part, share: keyof DeviationShares, gramsPerUnit: number): Departure | undefined => {
    const line = expected[name].get(derived.key);
    if (line === undefined) return undefined;
    const doubt = doubts === undefined ? undefined : doubts[share] / Math.abs(gramsPerUnit);
    return departureOf(line.value + shares[share] / gramsPerUnit, line, gramsPerUnit, doubt);
  };
  const meanRatio = (weightRatio + target.weightRatio) / 2;
  const departures = {
    ratio: fenced('ratio', 'ratioG', (weighed.hammerWeightG + target.hammerWeightG) / 2),
    hammer: fenced('hammer', 'hammerG', meanRatio),
    wippen: fenced('wippen', 'wippenG', weighed.keyRatio),
    front: fenced('front', 'frontG', -1),
  };
  return { departures, shares, reference: target };
}

/** One finding for each part that stands out. */
export function partFindings({ departures }: PartsView): readonly Finding[] {
  return (['ratio', 'wippen', 'hammer', 'front'] as const).flatMap((part) => {
    const departure = departures[part];
    if (departure === undefined || !departure.told) return [];
    const [heavier, lighter] = CAUSES[part];
    const cause = departure.amountG > 0 ? heavier : lighter;
    const evidence: readonly [Evidence] = ['measured'];
    return [findingOf(cause, departure, evidence, REMEDIES[cause])];
  });
}

function targetFor({ input, derived, expected }: KeyContext, usualFrictionG: number | undefined): TouchTarget | undefined {
  const [weightRatio, hammer, wippen, front] = [expected.ratio, expected.hammer, expected.wippen, expected.front].map((map) => map.get(derived.key)?.value);
  if (weightRatio === undefined || hammer === undefined || wippen === undefined || front === undefined || usualFrictionG === undefined) return undefined;
  return {
    weightRatio: ratio(weightRatio),
    hammerWeightG: grams(hammer),
    wippenWeightG: grams(wippen),
    frontWeightG: grams(front),
    frictionG: grams(usualFrictionG + (frictionBiasOf(input, derived.figures) ?? 0)),
  };
}

function doubtsOf({ derived }: KeyContext, target: TouchTarget): DeviationShares | undefined {
  const { weighed, scaleUncertaintyG, standardUncertaintyG } = derived;
  if (weighed === undefined || scaleUncertaintyG === undefined || standardUncertaintyG === undefined) return undefined;
  return shareUncertaintiesOf(weighed, target, { balanceWeightUncertaintyG: standardUncertaintyG, scaleUncertaintyG, keyRatioUncertainty: ratio(0) });
}

/** Parts weighed by themselves: a front weight tells its grams at once; a hammer only once the ratio of its neighbours is known. */
function looseDepartures({ derived, expected }: KeyContext): PartsView['departures'] {
  const { frontWeightG, hammerWeightG, wippenWeightG } = derived.figures;
  const compare = (name: Part, part: typeof frontWeightG, gramsPerUnit: number | undefined): Departure | undefined => {
    const line = expected[name].get(derived.key);
    if (part === undefined || line === undefined || gramsPerUnit === undefined) return undefined;
    return departureOf(part.value, line, gramsPerUnit, part.standardUncertaintyG);
  };
  return {
    front: compare('front', frontWeightG, -1),
    hammer: compare('hammer', hammerWeightG, expected.ratio.get(derived.key)?.value),
    wippen: compare('wippen', wippenWeightG, derived.keyRatio),
  };
}
