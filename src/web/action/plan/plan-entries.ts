import type { PlannedKey } from '#action';
import { type QuantityName, type Reading, quantityOf } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const;

/**
 * What keeping a plan writes as planned, as one step: hammer, wippen and front weight, the down and up weight they are expected to show,
 * and the lever arms they hold for. To a hundredth, as derived; what stands there already in the same figure is left alone,
 * further repeats at these places are cleared.
 */
export function planEntriesOf(keys: readonly PlannedKey[], planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const standing = [...planned];
  const byColour = new Map(keys.map(({ plan: { colour }, figures: { levers } }) => [colour, levers]));
  const wanted = [
    ...keys.flatMap(({ plan, figures }) => ([
      ['downWeightG', figures.downWeightG], ['upWeightG', figures.upWeightG], ['frontWeightG', figures.frontWeightG],
      ['hammerWeightG', figures.hammerWeightG], ['wippenWeightG', plan.wippenWeightG],
    ] as const).map(([quantity, value]) => ({ quantity, scope: 'key' as const, index: plan.key, value }))),
    ...[...byColour].flatMap(([colour, levers]) => ARMS.map((quantity) => ({ quantity, scope: 'colour' as const, index: colour === 'natural' ? 0 : 1, value: levers[quantity] }))),
  ];
  return wanted.flatMap(({ value, ...place }): readonly ReadingEntry[] => {
    const here = standing.filter((reading) => reading.quantity === place.quantity && reading.scope === place.scope && reading.index === place.index);
    const rounded = Math.round(value * 100) / 100;
    const isSame = here.some(({ repeat, value: stands }) => repeat === 1 && stands === rounded);
    const further = here.filter(({ repeat }) => repeat > 1).map(({ repeat }): ReadingEntry => ({ ...place, repeat, clear: true }));
    return isSame ? further : [{ ...place, typed: wholeNumber(rounded, locale), basis: 'derived' }, ...further];
  });
}

/** Planned figures that cannot be kept, since no such figure can be: an up weight below nought, say. */
export function impossibleOf(keys: readonly PlannedKey[]): readonly number[] {
  const isOut = (quantity: QuantityName, value: number): boolean => value < quantityOf(quantity).possible[0] || value > quantityOf(quantity).possible[1];
  return keys.filter(({ figures }) => isOut('upWeightG', figures.upWeightG) || isOut('downWeightG', figures.downWeightG) || isOut('frontWeightG', figures.frontWeightG) || isOut('hammerWeightG', figures.hammerWeightG)).map(({ plan }) => plan.key);
}
