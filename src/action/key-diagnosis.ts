import { type Grams, grams } from '#units';
import type { Remedy } from './analysis.ts';
import { type Deviation, type DeviationShares, type KeyDoubt, type TouchTarget, type WeighedKey, shareUncertaintiesOf, splitDeviation } from './deviation.ts';
import { KEY_FRICTION_HIGH_G } from './register.ts';
import { KEY_REMEDIES, REMEDIES, actionFrictionRemedies, stageOf } from './remedy.ts';

/** A part that a departure is traced to. */
type Part = keyof DeviationShares;
/** What a part can be called when it departs. */
export type PartCause = keyof typeof CAUSE_REMEDIES;

/** A share smaller than this is nobody's business, however well it is known; grams. @source OWN */
const LEAST_TELLING_G = 1.5;

/** Coverage factor of the expanded uncertainty. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

/** What a share above nought and one below nought are called. */
const CAUSES: Readonly<Record<Part, readonly [PartCause, PartCause]>> = {
  frictionG: ['frictionHigh', 'frictionLow'],
  ratioG: ['ratioHigh', 'ratioLow'],
  wippenG: ['wippenHeavy', 'wippenLight'],
  hammerG: ['hammerHeavy', 'hammerLight'],
  frontG: ['frontLight', 'frontHeavy'],
};

const CAUSE_REMEDIES = { ...REMEDIES, frictionHigh: ['measureKeyFriction', ...KEY_REMEDIES, ...actionFrictionRemedies('grand')] } as const;

/** A cause, and the grams of down weight it accounts for; `cancelling` names the grams that hide each other. */
export interface KeyCause {
  readonly cause: PartCause | 'cancelling';
  readonly amountG: Grams;
  /** Expanded uncertainty (k = 2), when known. */
  readonly uncertaintyG?: Grams;
}

export interface KeyDiagnosis extends Deviation {
  /** In the order of the work: friction, ratio and wippen, hammer, lead. */
  readonly causes: readonly KeyCause[];
  readonly remedies: readonly Remedy[];
  /** Causes whose share is large enough to tell but not larger than its own expanded uncertainty: said, not acted on. */
  readonly withinUncertainty: readonly PartCause[];
  /** The faults hide each other: the down weight is as it should be, the key is not. */
  readonly cancelling: boolean;
}

export interface KeyQuestion {
  readonly key: WeighedKey;
  readonly target: TouchTarget;
  readonly doubt?: KeyDoubt;
  /** Friction of the key alone, if it was measured: tells the key's own friction from that of the action above it. */
  readonly keyFrictionG?: Grams;
}

/**
 * Says what makes a key depart from its target, and what to do first.
 * Shares of `splitDeviation`; a share is a cause when it exceeds 1.5 g and its expanded uncertainty. Grams.
 * Order of remedies: friction, ratio, hammer, lead; common practice, no source. A grand's action; dampers lifted.
 * @source OWN · PRACTICE
 */
export function diagnoseKey({ key, target, doubt, keyFrictionG }: KeyQuestion): KeyDiagnosis {
  const deviation = splitDeviation(key, target);
  const doubts = doubt === undefined ? undefined : shareUncertaintiesOf(key, target, doubt);
  const telling = tellingShares(deviation.shares, doubts);
  const told = telling.filter(({ amountG, uncertaintyG = 0 }) => Math.abs(amountG) > uncertaintyG);
  const hidden = cancelledBy(told);
  const noticedFrom = Math.max(LEAST_TELLING_G, COVERAGE * Math.SQRT2 * (doubt?.balanceWeightUncertaintyG ?? 0));
  const cancelling = hidden > 0 && Math.abs(deviation.downWeightChangeG) <= noticedFrom;
  return {
    ...deviation,
    causes: cancelling ? [...told, { cause: 'cancelling', amountG: hidden }] : told,
    remedies: [...new Set(told.flatMap(({ cause }) => remediesOf(cause, keyFrictionG)))],
    withinUncertainty: telling.filter((cause) => !told.includes(cause)).map(({ cause }) => cause),
    cancelling,
  };
}

interface TellingShare extends KeyCause {
  readonly cause: PartCause;
}

function tellingShares(shares: DeviationShares, doubts: DeviationShares | undefined): readonly TellingShare[] {
  const parts = Object.keys(CAUSES) as readonly Part[];
  return parts
    .filter((part) => Math.abs(shares[part]) > LEAST_TELLING_G)
    .map((part): TellingShare => {
      const [heavier, lighter] = CAUSES[part];
      const uncertainty = doubts === undefined ? {} : { uncertaintyG: grams(COVERAGE * doubts[part]) };
      return { cause: shares[part] > 0 ? heavier : lighter, amountG: shares[part], ...uncertainty };
    })
    .sort((a, b) => stageOf(a.cause) - stageOf(b.cause));
}

/** Grams by which heavier and lighter causes hide each other. */
function cancelledBy(causes: readonly KeyCause[]): Grams {
  const sumWhere = (sign: 1 | -1): number => causes.reduce((sum, { amountG }) => sum + Math.max(0, sign * amountG), 0);
  return grams(Math.min(sumWhere(1), sumWhere(-1)));
}

function remediesOf(cause: PartCause, keyFrictionG: Grams | undefined): readonly Remedy[] {
  if (cause !== 'frictionHigh' || keyFrictionG === undefined) return CAUSE_REMEDIES[cause];
  const above = actionFrictionRemedies('grand');
  return keyFrictionG > KEY_FRICTION_HIGH_G ? [...KEY_REMEDIES, ...above] : above;
}
