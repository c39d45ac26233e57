import type { Evidence, Finding } from './analysis.ts';
import { type Departure, type KeyContext, departureOf, expandedOf, findingOf } from './analyse-context.ts';
import { comparedFrictionOf } from './analyse-expected.ts';
import { KEY_FRICTION_HIGH_G, KEY_FRICTION_LOW_G, type Register } from './register.ts';
import { KEY_REMEDIES, REMEDIES, actionFrictionRemedies } from './remedy.ts';

/** Friction of one key against what is usual there. */
export interface FrictionView {
  readonly usualG: number;
  readonly departure: Departure;
  /** Lines of evidence that call it unusual; empty when it is ordinary. */
  readonly evidence: readonly Evidence[];
}

/**
 * Judges friction by its neighbours and by its register. What is usual is the neighbours' line held to the usual range of the register,
 * so that a whole section gone tight does not hide itself. Absent when friction was not read, or nothing is there to compare with.
 */
export function viewFriction({ derived, expected, register }: KeyContext): FrictionView | undefined {
  const friction = comparedFrictionOf(derived);
  const line = expected.friction.get(derived.key);
  if (friction === undefined || derived.contradictory || (line === undefined && register === undefined)) return undefined;
  const usualG = heldTo(register, line?.value ?? friction);
  const evidence: Evidence[] = [];
  const byNeighbours = line === undefined ? undefined : departureOf(friction, line, 1, derived.standardUncertaintyG);
  if (byNeighbours?.told === true) evidence.push('neighbours');
  if (register !== undefined && isUnusual(register, friction)) evidence.push('register');
  const departure = line === undefined ? alone(friction - usualG, derived.standardUncertaintyG) : departureOf(friction, { ...line, value: usualG }, 1, derived.standardUncertaintyG);
  const agrees = Math.sign(byNeighbours?.amountG ?? 0) === Math.sign(departure.amountG);
  return { usualG, departure, evidence: agrees ? evidence : evidence.filter((line) => line !== 'neighbours') };
}

/** What friction says: too high or too low, in the key or above it as far as the key was weighed alone. */
export function frictionFindings(context: KeyContext, view: FrictionView | undefined): readonly Finding[] {
  const keyOnly = keyFrictionFinding(context);
  const [first, ...rest] = view?.evidence ?? [];
  if (view === undefined || first === undefined) return keyOnly;
  const { kind } = context.input;
  if (view.departure.amountG < 0) return [findingOf('frictionLow', view.departure, [first, ...rest], REMEDIES.frictionLow), ...keyOnly];
  const keyKnown = context.derived.figures.keyFrictionG !== undefined;
  const inKey = keyOnly[0]?.amountG ?? 0;
  const above = { ...view.departure, amountG: view.departure.amountG - inKey };
  if (inKey > 0 && above.amountG < LEAST_LEFT_G) return keyOnly;
  const action = actionFrictionRemedies(kind);
  const remedies = keyKnown ? action : (['measureKeyFriction', 'cleanKeyPins', 'easeKeyBushing', ...action, 'checkSwollenLeads'] as const);
  return [...keyOnly, findingOf('frictionHigh', above, [first, ...rest], remedies)];
}

/** Friction left after the key's own is taken out is told from here on; grams. @source OWN */
const LEAST_LEFT_G = 2;

function keyFrictionFinding({ derived: { figures } }: KeyContext): readonly Finding[] {
  const { keyFrictionG: alone } = figures;
  if (alone === undefined || alone.value <= KEY_FRICTION_HIGH_G) return [];
  const uncertaintyG = expandedOf(alone.standardUncertaintyG);
  return [findingOf('keyFrictionHigh', { amountG: alone.value - KEY_FRICTION_LOW_G, uncertaintyG }, ['measured'], KEY_REMEDIES)];
}

function heldTo(register: Register | undefined, value: number): number {
  if (register === undefined) return value;
  const [low, high] = register.frictionG;
  return Math.min(high, Math.max(low, value));
}

function isUnusual({ frictionG: [low, high], slackG }: Register, friction: number): boolean {
  return friction < low - slackG || friction > high + slackG;
}

function alone(amountG: number, standardUncertaintyG: number | undefined): Departure {
  return { amountG, told: true, uncertaintyG: expandedOf(standardUncertaintyG) };
}
