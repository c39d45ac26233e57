import type { KeyPlan, LeastWork } from '#action';
import { type QuantityName, type Reading, quantityOf } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { derivedEntries } from '../terms/derived-entries.ts';

/**
 * What taking a plan notes as planned: the down and up weight every worked key is expected to show, from which balance and friction
 * follow, and the hammer and front weight that work changes. A figure that cannot be is left out.
 */
export function expectedEntriesOf({ keys }: Pick<LeastWork, 'keys'>, planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const wanted = keys.filter(({ verdict }) => verdict === 'planned').flatMap((plan) => figuresOf(plan).flatMap(([quantity, value]) => {
    const [least, most] = quantityOf(quantity).possible;
    return value === undefined || value < least || value > most ? [] : [{ quantity, scope: 'key' as const, index: plan.key, value }];
  }));
  return derivedEntries(wanted, planned, locale);
}

function figuresOf({ work, after }: KeyPlan): readonly (readonly [QuantityName, number | undefined])[] {
  const does = (kind: KeyPlan['work'][number]['changes']): boolean => work.some(({ changes }) => changes === kind);
  return [
    ['downWeightG', after.downWeightG], ['upWeightG', after.upWeightG],
    ...(does('hammer') ? [['hammerWeightG', after.hammerWeightG] as const] : []), ...(does('front') ? [['frontWeightG', after.frontWeightG] as const] : []),
  ];
}
