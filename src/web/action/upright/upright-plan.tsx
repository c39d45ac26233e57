import type { AnalysedUpright } from '#action';
import { type Reading, quantityOf } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { useMemo } from 'react';
import { useEnter, useReadings } from '../../api/use-readings.ts';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import { toast } from '../../toast/toasts.ts';

/** The plan of one key in words: spring, front weight, and what the key then shows. */
export function UprightPlanLines({ analysed: { plan }, upWeightMinG = 0 }: { readonly analysed: AnalysedUpright; readonly upWeightMinG: number | undefined }) {
  const say = useSay();
  const figure = useFigures();
  if (plan === undefined) return <p className="soft">{say('upright.plan.none')}</p>;
  const grams = (value: number, signed = false): string => figure(value, 1, 'g', signed);
  return (
    <ul className="assumed">
      <li>{say('upright.plan.spring', { torque: figure(plan.springTorqueGMm, 0, 'gmm') })}</li>
      <li>{say('upright.plan.front', { front: grams(plan.frontWeightG), change: grams(plan.frontWeightChangeG, true) })}</li>
      <li>{say('upright.plan.shows', { down: grams(plan.downWeightG), up: grams(plan.upWeightG), balance: grams(plan.balanceWeightG) })}</li>
      {plan.upWeightG < upWeightMinG && <li>{say('upright.plan.low', { by: grams(upWeightMinG - plan.upWeightG) })}</li>}
    </ul>
  );
}

const KEPT = ['springTorqueGMm', 'frontWeightG', 'downWeightG', 'upWeightG'] as const;

/** What keeping the plan writes, to a hundredth; what stands there in the same figure is left alone, and what no reading can be is left out with its key. */
export function uprightEntriesOf(keys: readonly AnalysedUpright[], planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const standing = [...planned];
  return keys.flatMap(({ key, plan }) => {
    if (plan === undefined || KEPT.some((name) => plan[name] < quantityOf(name).possible[0] || plan[name] > quantityOf(name).possible[1])) return [];
    return KEPT.flatMap((quantity): readonly ReadingEntry[] => {
      const rounded = Math.round(plan[quantity] * 100) / 100;
      const here = standing.filter((reading) => reading.quantity === quantity && reading.scope === 'key' && reading.index === key);
      const place = { quantity, scope: 'key', index: key } as const;
      const further = here.filter(({ repeat }) => repeat > 1).map(({ repeat }): ReadingEntry => ({ ...place, repeat, clear: true }));
      return here.some(({ repeat, value }) => repeat === 1 && value === rounded) ? further : [{ ...place, typed: wholeNumber(rounded, locale), basis: 'derived' }, ...further];
    });
  });
}

/** Writes the plan of every key as one step; `undefined` where there is nothing to write. */
export function useKeepUpright(keys: readonly AnalysedUpright[]): { readonly count: number; readonly keep: () => void } | undefined {
  const say = useSay();
  const locale = useLocale();
  const enter = useEnter();
  const planned = useReadings('planned');
  const entries = useMemo(() => uprightEntriesOf(keys, planned.values(), locale), [keys, planned, locale]);
  const count = new Set(entries.map(({ index }) => index)).size;
  if (count === 0) return undefined;
  return { count, keep: () => { enter({ state: 'planned', sessionId: null }, entries); toast(say('upright.plan.kept', { count })); } };
}
