import { type Compass, type QuantityName, type Reading, noteNameOf } from '#instrument';
import type { LeadedKey } from '#workshop';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';

/** How the leads of one key were worked out: the operation `key-leads`, back to the leads found and the front weight weighed. */
export function leadsStory(what: string, output: string, { question: { key, ...question }, above, keyFrontLengthMm, keyBackLengthMm, colour }: LeadedKey, { compass, readings }: { readonly compass: Compass; readonly readings: readonly Reading[] }): FigureStory {
  const given = Object.fromEntries(Object.entries(above).filter(([, value]) => value !== undefined));
  const input = { ...question, keyFrontLengthMm, ...(keyBackLengthMm === undefined ? {} : { keyBackLengthMm }), ...given };
  const own = (holds: (quantity: QuantityName) => boolean): readonly Reading[] => readings.filter((one) => one.state === 'found' && one.scope === 'key' && one.index === key && holds(one.quantity));
  const size = (quantity: QuantityName): Origin => ({ readings: readings.filter((one) => one.state === 'found' && one.scope === 'colour' && one.index === (colour === 'natural' ? 0 : 1) && one.quantity === quantity) });
  const leads = own((quantity) => /^lead\d/u.test(quantity));
  const planned = readings.filter((one) => one.state === 'planned' && one.scope === 'key' && one.index === key && one.quantity === 'frontWeightG');
  const rule: Origin = { how: 'leadRules' };
  const origins: Record<string, Origin> = {
    bareFrontWeightG: { how: 'bareFront', readings: [...own((quantity) => quantity === 'frontWeightG'), ...leads] },
    targetFrontWeightG: planned.length > 0 ? { readings: planned } : { how: 'plannedTouch' },
    existingHoles: { readings: leads }, keyFrontMm: size('keyFrontMm'), keyWidthMm: size('keyWidthMm'), keyFrontLengthMm: size('keyFrontLengthMm'), keyBackLengthMm: size('keyBackLengthMm'),
    gapMm: rule, toleranceG: rule, maxLeads: rule, gridMm: rule, diametersMm: rule, newHoleCostG: rule, leadCostG: rule, plugCostG: rule, trimCostG: rule, trimDrillsMm: rule, otherInserts: rule, keepOutsMm: rule, leadDensityGPerMm3: rule, woodDensityGPerMm3: rule,
    hammerWeightG: { how: 'plannedTouch' }, weightRatio: { how: 'plannedTouch' },
  };
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: 'key-leads', output, input, origins };
}
