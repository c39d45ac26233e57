import { type Finding, type KeyTouch, type NextMeasurement, type TouchInput, isAdvice, nextMeasurements } from './analysis.ts';
import type { DerivedFigures } from './analyse-figures.ts';

/** What would tell more about one key, most telling first; nothing where nothing is amiss. */
export function nextForKey(input: TouchInput, derived: DerivedFigures, findings: readonly Finding[], doubtful: boolean): readonly NextMeasurement[] {
  const { figures } = derived;
  if (figures.outcome !== undefined) return [];
  if (figures.downWeightG === undefined || figures.upWeightG === undefined) return ['downUp'];
  const causes = new Set(findings.map(({ cause }) => cause));
  const wanted = new Set<NextMeasurement>();
  const judging = findings.filter((finding) => !isAdvice(finding));
  const certain = judging.some(({ stage, withinUncertainty }) => stage > 0 && !withinUncertainty);
  if (derived.contradictory || (!certain && (doubtful || judging.length > 0))) wanted.add('repeat');
  if (causes.has('frictionHigh') && figures.keyFrictionG === undefined) wanted.add('keyFriction');
  const balanceAmiss = causes.has('balanceHigh') || causes.has('balanceLow');
  if (balanceAmiss && input.kind === 'grand' && derived.weightRatio === undefined) missingParts(input, derived).forEach((part) => wanted.add(part));
  return nextMeasurements.filter((name) => wanted.has(name));
}

/** What would tell most about the whole keyboard: everything some key asks for, most telling first, and what every weighing should state. */
export function nextForAll(input: TouchInput, keys: readonly KeyTouch[]): readonly NextMeasurement[] {
  const wanted = new Set(keys.flatMap(({ next }) => next));
  if (input.dampers === 'resting') wanted.add('dampersLifted');
  if (keys.some(({ frictionG, standardUncertaintyG }) => frictionG !== undefined && standardUncertaintyG === undefined)) wanted.add('step');
  return nextMeasurements.filter((name) => wanted.has(name));
}

function missingParts(input: TouchInput, { figures, keyRatio, colour }: DerivedFigures): readonly NextMeasurement[] {
  const parts: NextMeasurement[] = [];
  if (figures.frontWeightG === undefined) parts.push('frontWeight');
  if (figures.hammerWeightG === undefined) parts.push('hammerWeight');
  if (keyRatio === undefined || input.arms[colour].rollerMm === undefined) parts.push('levers');
  if (figures.wippenWeightG === undefined) parts.push('wippenWeight');
  if (input.helperSprings === 'engaged' && figures.helperSpringG === undefined) parts.push('helperSpring');
  return parts;
}
