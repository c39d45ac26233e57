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
  const uncertainty = derived.standardUncertaintyG;
  if (line === undefined) return { usualG, departure: alone(friction - usualG, uncertainty), evidence: isUnusual(register, friction) ? ['register'] : [] };
  const departure = departureOf(friction, { ...line, value: usualG }, 1, uncertainty);
  const byNeighbours = departureOf(friction, line, 1, uncertainty);
  const agrees = byNeighbours.told && departure.told && Math.sign(byNeighbours.amountG) === Math.sign(departure.amountG);
  const evidence: readonly (readonly [Evidence, boolean])[] = [['neighbours', agrees], ['register', isUnusual(register, friction)]];
  return { usualG, departure, evidence: evidence.flatMap(([name, holds]) => (holds ? [name] : [])) };
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

function isUnusual(register: Register | undefined, friction: number): boolean {
  if (register === undefined) return false;
  const { frictionG: [low, high], slackG } = register;
  return friction < low - slackG || friction > high + slackG;
}

function alone(amountG: number, standardUncertaintyG: number | undefined): Departure {
  return { amountG, told: true, uncertaintyG: expandedOf(standardUncertaintyG) };
}
