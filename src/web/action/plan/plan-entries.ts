import type { PlannedKey } from '#action';
import { type QuantityName, type Reading, quantityOf } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { derivedEntries } from '../terms/derived-entries.ts';

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const;

/**
 * What keeping a plan writes as planned, as one step: hammer, wippen and front weight, the down and up weight they are expected to show,
 * and the lever arms they hold for. To a hundredth, as derived; what stands there already in the same figure is left alone,
 * further repeats at these places are cleared.
 */
export function planEntriesOf(keys: readonly PlannedKey[], planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const byColour = new Map(keys.map(({ plan: { colour }, figures: { levers } }) => [colour, levers]));
  const wanted = [
    ...keys.flatMap(({ plan, figures }) => ([
      ['downWeightG', figures.downWeightG], ['upWeightG', figures.upWeightG], ['frontWeightG', figures.frontWeightG],
      ['hammerWeightG', figures.hammerWeightG], ['wippenWeightG', plan.wippenWeightG],
    ] as const).map(([quantity, value]) => ({ quantity, scope: 'key' as const, index: plan.key, value }))),
    ...[...byColour].flatMap(([colour, levers]) => ARMS.map((quantity) => ({ quantity, scope: 'colour' as const, index: colour === 'natural' ? 0 : 1, value: levers[quantity] }))),
  ];
  return derivedEntries(wanted, planned, locale);
}

/** Planned figures that cannot be kept, since no such figure can be: an up weight below nought, say. */
export function impossibleOf(keys: readonly PlannedKey[]): readonly number[] {
  const isOut = (quantity: QuantityName, value: number): boolean => value < quantityOf(quantity).possible[0] || value > quantityOf(quantity).possible[1];
  return keys.filter(({ figures }) => isOut('upWeightG', figures.upWeightG) || isOut('downWeightG', figures.downWeightG) || isOut('frontWeightG', figures.frontWeightG) || isOut('hammerWeightG', figures.hammerWeightG)).map(({ plan }) => plan.key);
}
