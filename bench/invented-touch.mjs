/** An invented keyboard for the benchmarks of the action: what its keys weigh, where their old holes are, what rubs. */
import { repeatable } from './invented-scale.mjs';

const SHARPS = new Set([1, 4, 6, 9, 11]);
const isSharp = (key) => SHARPS.has((key + 11) % 12);
export const gridOf = (from, to, step) => Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, place) => from + place * step);

/** Questions for the leads of 88 keys: front weights that fall toward the treble, one to four old holes drilled by hand. */
export function inventedLeads({ newHoleCostG, step = 1 }) {
  const random = repeatable(4);
  return Array.from({ length: 88 }, (_, place) => {
    const key = place + 1;
    const keyFrontMm = isSharp(key) ? 190 : 225;
    const holes = Math.max(0, Math.round(4 - place / 22 - random()));
    return {
      key, keyFrontMm, keyWidthMm: 13, gapMm: 3, bareFrontWeightG: -3 + 2 * random(), targetFrontWeightG: 40 - 0.42 * place + 3 * random(), toleranceG: 0.1, maxLeads: 5,
      gridMm: gridOf(40, keyFrontMm - 20, step), diametersMm: [9.5, 11.1, 12.7], newHoleCostG, keepOutsMm: [[-40, 40]], leadDensityGPerMm3: 0.01134, woodDensityGPerMm3: 0.00045,
      existingHoles: Array.from({ length: holes }, (_, hole) => ({ diameterMm: 12.7, positionMm: Math.round(10 * (keyFrontMm - 32 - 22 * hole - 3 * random())) / 10 })),
    };
  });
}

const WORK = [
  ['ease bushing', 'friction', 2, [], 'bushing', false], ['rebush key', 'friction', 9, ['keys off'], 'bushing', true],
  ['repin wippen', 'friction', 7, ['stack off'], undefined, true], ['repin hammer', 'friction', 6, ['stack off'], undefined, true],
  ['treat roller', 'friction', 3, ['stack off'], 'roller', false], ['replace roller', 'friction', 12, ['stack off'], 'roller', true],
  ['move capstan', 'ratio', 14, ['keys off', 'stack off'], undefined, false, { fromRatio: -0.25, toRatio: 0.15 }],
  ['trim hammer', 'hammer', 4, ['stack off'], 'hammer', false, { fromG: -0.6, toG: 0 }], ['change hammer', 'hammer', 15, ['stack off'], 'hammer', true, { fromG: -1.5, toG: 1.5 }],
  ['change lead', 'front', 8, ['keys off'], undefined, false, { fromG: -9, toG: 12 }],
];

/** A worn keyboard of 88 keys and a shop's list of ten operations: friction here and there, hammers and leads that sway. */
export function inventedWork() {
  const random = repeatable(7);
  const about = (spread) => spread * (2 * random() - 1);
  const keys = Array.from({ length: 88 }, (_, place) => {
    const hammerWeightG = 11.2 - 0.062 * place + about(0.35);
    const [bushing, wippen, hammer, roller] = [0.25, 0.12, 0.15, 0.2].map((often) => (random() < often ? 2 + 4 * random() : 0));
    const frictionG = (place < 28 ? 13 : place < 60 ? 11.5 : 10) + about(1) + bushing + wippen + hammer + roller;
    const [keyRatio, ratio] = isSharp(place + 1) ? [0.5316, 5.9] : [0.5111, 5.7];
    const frontWeightG = ratio * (11.2 - 0.062 * place) + keyRatio * 18 - 37 + about(2.5);
    const balance = ratio * hammerWeightG + keyRatio * 18 - frontWeightG;
    const freed = [['ease bushing', 0.7 * bushing], ['rebush key', bushing], ['repin wippen', wippen], ['repin hammer', hammer], ['treat roller', 0.6 * roller], ['replace roller', roller]];
    return {
      key: place + 1, downWeightG: Math.round(balance + frictionG), upWeightG: Math.round(balance - frictionG), parts: { hammerWeightG, wippenWeightG: 18, frontWeightG, keyRatio },
      amounts: freed.map(([operation, grams]) => ({ operation, changeG: -grams })),
    };
  });
  return {
    keys, target: { quantity: 'downWeight', targetG: 49, toleranceG: 2, minUpWeightG: 20 }, setups: [{ name: 'keys off', minutes: 15 }, { name: 'stack off', minutes: 25 }],
    operations: WORK.map(([name, changes, minutes, setups, group, renews, amount]) => ({ name, changes, minutes, setups, renews, ...(group === undefined ? {} : { group }), ...(amount === undefined ? {} : { amount }) })),
  };
}
