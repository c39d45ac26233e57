import type { KeyNumber, TouchIntent } from '#instrument';
import type { KeyFigures } from './analysis.ts';
import type { DerivedFigures } from './analyse-figures.ts';
import { type Register, SLOW_RETURN_G } from './register.ts';

/** The figure an intent speaks of, at one key. */
export interface JudgedFigure {
  readonly targetG: number;
  /** Absent when that figure was not measured. */
  readonly actualG?: number;
  readonly standardUncertaintyG?: number;
}

/** What the intent asks of a key and what stands there. The threshold of the weight step is left in: targets are as typed. */
export function judgedFigureOf(intent: TouchIntent, derived: DerivedFigures): JudgedFigure {
  const targetG = targetOf(intent, derived.key);
  const { downWeightG } = derived.figures;
  const [actualG, standardUncertaintyG] =
    intent.even === 'balanceWeight' ? [derived.balanceWeightG, derived.standardUncertaintyG] : [downWeightG?.value, downWeightG?.standardUncertaintyG];
  return { targetG, actualG, standardUncertaintyG };
}

/** Target of the intent at a key: level, or straight between anchors and level outside them; grams. */
export function targetOf(intent: TouchIntent, key: KeyNumber): number {
  return intent.even === 'curve' ? alongAnchors(intent.anchors, key) : intent.targetG;
}

function alongAnchors(anchors: readonly { readonly key: KeyNumber; readonly downWeightG: number }[], key: KeyNumber): number {
  const sorted = [...anchors].sort((a, b) => a.key - b.key);
  const above = sorted.find((anchor) => anchor.key >= key);
  const below = sorted.findLast((anchor) => anchor.key <= key);
  if (above === undefined || below === undefined) return (above ?? below)?.downWeightG ?? Number.NaN;
  if (above.key === below.key) return above.downWeightG;
  return below.downWeightG + ((above.downWeightG - below.downWeightG) * (key - below.key)) / (above.key - below.key);
}

/** Least up weight of a key, in grams, and who asks for it. */
export interface UpWeightLimit {
  readonly limitG: number;
  readonly evidence: 'target' | 'register';
}

/** Least up weight asked of a key: the restorer's own, never under what slow return makes of it; without an intent what is usual in the register. */
export function upWeightLimitOf(intent: TouchIntent | null, register: Register | undefined): UpWeightLimit {
  if (intent === null) return { limitG: register?.upWeightMinG ?? SLOW_RETURN_G, evidence: 'register' };
  return intent.upWeightMinG >= SLOW_RETURN_G ? { limitG: intent.upWeightMinG, evidence: 'target' } : { limitG: SLOW_RETURN_G, evidence: 'register' };
}

/** True when the up weight was read and lies under the limit. */
export function isUpWeightLow({ upWeightG }: KeyFigures, limitG: number): boolean {
  return upWeightG !== undefined && upWeightG.value < limitG;
}
