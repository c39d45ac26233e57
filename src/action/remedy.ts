import type { Outcome } from '#instrument';
import type { Cause, Finding, Remedy } from './analysis.ts';

type Stage = Finding['stage'];

/** Where each cause stands in the order of work: friction, ratio, hammer, lead; 0 is cleared before anything is judged. @source PRACTICE */
const STAGE_OF_CAUSE: Readonly<Record<Exclude<Cause, 'cancelling'>, Stage>> = {
  outcome: 0,
  upAboveDown: 0,
  frictionHigh: 1,
  frictionLow: 1,
  keyFrictionHigh: 1,
  upWeightLow: 1,
  upWeightSlow: 1,
  ratioHigh: 2,
  ratioLow: 2,
  wippenHeavy: 2,
  wippenLight: 2,
  balanceHigh: 2,
  balanceLow: 2,
  hammerHeavy: 3,
  hammerLight: 3,
  frontLight: 4,
  frontHeavy: 4,
};

/** Stage of the work a cause asks for. `cancelling` takes the first stage of what cancels. */
export function stageOf(cause: Exclude<Cause, 'cancelling'>): Stage {
  return STAGE_OF_CAUSE[cause];
}

const STAGE_OF_REMEDY: Readonly<Record<Remedy, Stage>> = {
  freeKey: 0, fitMissingPart: 0, weighAgain: 0,
  measureKeyFriction: 1, cleanKeyPins: 1, easeKeyBushing: 1, rebushKey: 1, checkSwollenLeads: 1, repinCentres: 1, tightenCentres: 1, treatRoller: 1,
  repinWippen: 1, repinHammer: 1, replaceRoller: 1,
  weighParts: 2, checkLevers: 2, moveCapstanOrRoller: 2, checkWippen: 2, checkHelperSpring: 2, checkSpringsAndDampers: 2,
  moveCapstan: 2, moveRoller: 2,
  lightenHammer: 3, replaceHammer: 3,
  addLead: 4, removeLead: 4, moveLead: 4,
};

/** Stage of the work at which a remedy is done. @source PRACTICE */
export function stageOfRemedy(remedy: Remedy): Stage {
  return STAGE_OF_REMEDY[remedy];
}

/** Remedies of the key itself, in the order they are tried. @source PRACTICE */
export const KEY_REMEDIES: readonly Remedy[] = ['cleanKeyPins', 'easeKeyBushing', 'checkSwollenLeads'];

/** Remedies of centres and contacts above the key. @source PRACTICE */
export function actionFrictionRemedies(kind: 'grand' | 'upright'): readonly Remedy[] {
  return kind === 'grand' ? ['repinCentres', 'treatRoller'] : ['repinCentres'];
}

/** Remedies of the causes that need no choice. @source PRACTICE */
export const REMEDIES = {
  frictionLow: ['tightenCentres', 'rebushKey'],
  ratioHigh: ['checkLevers', 'moveCapstanOrRoller'],
  ratioLow: ['checkLevers', 'moveCapstanOrRoller'],
  wippenHeavy: ['checkWippen', 'checkHelperSpring'],
  wippenLight: ['checkWippen', 'checkHelperSpring'],
  hammerHeavy: ['lightenHammer'],
  hammerLight: ['replaceHammer'],
  frontLight: ['addLead'],
  frontHeavy: ['removeLead'],
} as const satisfies Partial<Record<Cause, readonly Remedy[]>>;

/** What clears an outcome. @source PRACTICE */
export const OUTCOME_REMEDIES: Readonly<Record<Outcome, readonly Remedy[]>> = {
  sticks: ['freeKey'],
  noReturn: ['freeKey'],
  overRange: ['freeKey', 'weighAgain'],
  missing: ['fitMissingPart'],
  unweighable: ['weighAgain'],
};
