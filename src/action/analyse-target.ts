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

/** Least up weight an intent asks for, in grams; undefined where it asks for none, and then no up weight is judged. */
export function askedUpWeightOf(intent: TouchIntent | null): number | undefined {
  return intent === null || intent.upWeightMinG === 0 ? undefined : intent.upWeightMinG;
}

/** Up weight under which a return is usually slow, in grams: what is usual in the register, else what holds anywhere. Advises, never judges. @source PRACTICE */
export function usualUpWeightOf(register: Register | undefined): number {
  return register?.upWeightMinG ?? SLOW_RETURN_G;
}

/** What an up weight lies under, in grams: what was asked, which fails, or, where nothing was asked, what is usual, which is advice. */
export interface UpWeightShort {
  readonly cause: 'upWeightLow' | 'upWeightSlow';
  readonly limitG: number;
}

/** The limit the up weight of a key lies under; undefined when it does not, or was not read. */
export function upWeightShortOf(intent: TouchIntent | null, register: Register | undefined, { upWeightG }: KeyFigures): UpWeightShort | undefined {
  const askedG = askedUpWeightOf(intent);
  const limitG = askedG ?? usualUpWeightOf(register);
  if (upWeightG === undefined || upWeightG.value >= limitG) return undefined;
  return { cause: askedG === undefined ? 'upWeightSlow' : 'upWeightLow', limitG };
}
