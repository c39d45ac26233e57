import { grams, ratio } from '#units';
import type { LeastWorkProblem, WorkAmount, WorkKey, WorkOperation } from '../problem.ts';

/** Friction, ratio, weight amounts from bare numbers. */
export const amount = {
  friction: (change: number, uncertainty?: number): WorkAmount => ({ changeG: grams(change), ...(uncertainty === undefined ? {} : { uncertaintyG: grams(uncertainty) }) }),
  weight: (from: number, to: number, step?: number): WorkAmount => ({ fromG: grams(from), toG: grams(to), ...(step === undefined ? {} : { stepG: grams(step) }) }),
  ratio: (from: number, to: number): WorkAmount => ({ fromRatio: ratio(from), toRatio: ratio(to) }),
} as const;

/** A shop's list, invented: minutes, parts and set-ups of the usual order. */
export const SHOP: readonly WorkOperation[] = [
  { name: 'easeBushing', changes: 'friction', minutes: 2, group: 'bushing' },
  { name: 'rebushKey', changes: 'friction', minutes: 9, partsMinor: 60, setups: ['keysOff'], group: 'bushing', renews: true },
  { name: 'repinWippen', changes: 'friction', minutes: 7, partsMinor: 20, setups: ['stackOff'], renews: true },
  { name: 'repinHammer', changes: 'friction', minutes: 6, partsMinor: 20, setups: ['stackOff'], renews: true },
  { name: 'treatRoller', changes: 'friction', minutes: 3, setups: ['stackOff'], group: 'roller' },
  { name: 'replaceRoller', changes: 'friction', minutes: 12, partsMinor: 190, setups: ['stackOff'], group: 'roller', renews: true },
  { name: 'moveCapstan', changes: 'ratio', minutes: 14, setups: ['keysOff', 'stackOff'], amount: amount.ratio(-0.25, 0.15) },
  { name: 'trimHammer', changes: 'hammer', minutes: 4, setups: ['stackOff'], amount: amount.weight(-0.6, 0), group: 'hammer' },
  { name: 'changeHammer', changes: 'hammer', minutes: 15, partsMinor: 900, setups: ['stackOff'], amount: amount.weight(-1.5, 1.5), group: 'hammer', renews: true },
  { name: 'changeLead', changes: 'front', minutes: 8, partsMinor: 40, setups: ['keysOff'], amount: amount.weight(-9, 12) },
];

/** Bare numbers of a key; what is left out is usual. */
export interface PlainKey {
  readonly key?: number;
  readonly down: number;
  readonly up: number;
  readonly front?: number;
  readonly hammer?: number;
  readonly amounts?: WorkKey['amounts'];
  readonly without?: readonly string[];
}

/** A key from bare numbers. */
export function keyOf({ key = 40, down, up, front = 25, hammer = 9, amounts, without }: PlainKey): WorkKey {
  return {
    key, downWeightG: grams(down), upWeightG: grams(up), parts: { frontWeightG: grams(front), hammerWeightG: grams(hammer), wippenWeightG: grams(18), keyRatio: ratio(0.51) },
    ...(amounts === undefined ? {} : { amounts }), ...(without === undefined ? {} : { without }),
  };
}

/** The question whether a keyboard is even about a down weight of 49 g, by the shop's list, unless said otherwise. */
export function questionOf(keys: readonly WorkKey[], changed: Partial<LeastWorkProblem> = {}): LeastWorkProblem {
  return {
    keys, operations: SHOP, setups: [{ name: 'keysOff', minutes: 15 }, { name: 'stackOff', minutes: 25 }],
    target: { quantity: 'downWeight', targetG: grams(49), toleranceG: grams(2), minUpWeightG: grams(21) }, ...changed,
  };
}
