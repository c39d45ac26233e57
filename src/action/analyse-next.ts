import type { Finding, KeyTouch, NextMeasurement, TouchInput } from './analysis.ts';
import type { DerivedFigures } from './analyse-figures.ts';

/** Order in which measurements tell most for their trouble: weights on the key, then what comes off with the key, then the stack. @source PRACTICE */
const ORDER: readonly NextMeasurement[] = [
  'downUp', 'dampersLifted', 'step', 'repeat', 'keyFriction', 'frontWeight', 'hammerWeight', 'levers', 'wippenWeight', 'helperSpring',
];

/** What would tell more about one key, most telling first; nothing where nothing is amiss. */
export function nextForKey(input: TouchInput, derived: DerivedFigures, findings: readonly Finding[], doubtful: boolean): readonly NextMeasurement[] {
  const { figures } = derived;
  if (figures.outcome !== undefined) return [];
  if (figures.downWeightG === undefined || figures.upWeightG === undefined) return ['downUp'];
  const causes = new Set(findings.map(({ cause }) => cause));
  const wanted = new Set<NextMeasurement>();
  if (doubtful || derived.contradictory || findings.some(({ withinUncertainty }) => withinUncertainty)) wanted.add('repeat');
  if (causes.has('frictionHigh') && figures.keyFrictionG === undefined) wanted.add('keyFriction');
  const balanceAmiss = causes.has('balanceHigh') || causes.has('balanceLow');
  if (balanceAmiss && input.kind === 'grand' && derived.weightRatio === undefined) missingParts(input, derived).forEach((part) => wanted.add(part));
  return ORDER.filter((name) => wanted.has(name));
}

/** What would tell most about the whole keyboard: what most keys ask for, in the order of trouble where equally many ask. */
export function nextForAll(input: TouchInput, keys: readonly KeyTouch[]): readonly NextMeasurement[] {
  const counts = new Map<NextMeasurement, number>();
  for (const { next } of keys) for (const name of next) counts.set(name, (counts.get(name) ?? 0) + 1);
  const weighed = keys.filter(({ frictionG }) => frictionG !== undefined);
  if (input.dampers === 'resting') counts.set('dampersLifted', keys.length);
  if (weighed.some(({ standardUncertaintyG }) => standardUncertaintyG === undefined)) counts.set('step', keys.length);
  const rank = (name: NextMeasurement): number => ORDER.indexOf(name);
  return [...counts.entries()].sort(([a, many], [b, others]) => others - many || rank(a) - rank(b)).map(([name]) => name);
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
