import { type ActionTermsDraft, type KeyNumber, type QuantityName, colourOf, compass88, keysOf, quantityOf } from '#instrument';
import { type DemoKey, DEMO_ARMS, demoAsFound } from './demo-story.ts';
import { demoLengthOf } from './demo-strings.ts';
import type { DemoStep } from './demo-step.ts';
import { swaysFrom } from './demo-sway.ts';
import type { ReadingEntry } from './records.ts';

/** What the invented shop asks of the action of the invented grand. */
const DEMO_TERMS: ActionTermsDraft = {
  hammerCurve: 'anchors', hammerAnchors: [{ key: 1, weightG: 10.5 }, { key: 44, weightG: 7.8 }, { key: 88, weightG: 5.3 }],
  frictionBassG: 13, frictionMiddleG: 11.5, frictionTrebleG: 10.5,
  drillsMm: [9.5, 11.1, 12.7], leadGapMm: 3, leadGridMm: 1, leadToleranceG: 0.1, mostLeads: 5, newHoleCostG: 50, keepOuts: [{ fromMm: -40, toMm: 40 }], mostFrontWeightG: 36,
  wippenInertiaGMm2: 64000, shankG: 2.2, shankLengthMm: 127,
  operationMinutes: [
    { operation: 'cleanKeyPins', minutes: 1 }, { operation: 'easeKeyBushing', minutes: 2 }, { operation: 'rebushKey', minutes: 9 }, { operation: 'repinWippen', minutes: 7 }, { operation: 'repinHammer', minutes: 6 },
    { operation: 'treatRoller', minutes: 2 }, { operation: 'replaceRoller', minutes: 12 }, { operation: 'moveCapstan', minutes: 8 }, { operation: 'trimHammer', minutes: 3 }, { operation: 'changeHammer', minutes: 14 },
    { operation: 'addLead', minutes: 6 }, { operation: 'moveLead', minutes: 9 }, { operation: 'removeLead', minutes: 5 },
  ],
  currency: 'EUR', partPrices: [{ part: 'bushing', priceMinor: 40 }, { part: 'wippenPin', priceMinor: 15 }, { part: 'hammerPin', priceMinor: 15 }, { part: 'roller', priceMinor: 210 }, { part: 'hammer', priceMinor: 680 }, { part: 'lead', priceMinor: 60 }],
  setUpMinutes: [{ setUp: 'actionOut', minutes: 10 }, { setUp: 'keysOut', minutes: 25 }, { setUp: 'stackOff', minutes: 20 }, { setUp: 'hammersOff', minutes: 40 }, { setUp: 'weighing', minutes: 10 }],
  regulationFloats: 'aftertouch', lossMm: 0.3, regulationToleranceMm: 0.3, sharpHeightMm: 12, keyLevelMm: 0, spreadMm: 112.5,
  regulation: [
    { register: 'bass', blowMm: 47, letOffMm: 2, dropMm: 2, dipMm: 9.6, checkMm: 15 }, { register: 'middle', blowMm: 46, letOffMm: 1.5, dropMm: 1.5, dipMm: 9.5, checkMm: 14 },
    { register: 'treble', blowMm: 45, letOffMm: 1.2, dropMm: 1.5, dipMm: 9.4, checkMm: 14 },
  ],
  hammerUse: 'home', hoursPerWeek: 4, hammerAgeYears: 22, reshapeCount: 1, reshapeHours: 2000, mostReshapes: 3, leastFeltBassMm: 3, leastFeltTrebleMm: 1.5,
  remark: 'Invented for demonstration.',
};

/** Sizes of the invented keys, by colour. */
const KEY_SIZES = {
  natural: { keyWidthMm: 13, keyFrontLengthMm: 241, keyBackLengthMm: 182, frontPinMm: 215 },
  sharp: { keyWidthMm: 11, keyFrontLengthMm: 206, keyBackLengthMm: 182, frontPinMm: 182 },
} as const;

/** Heights above the key bed and sizes of parts of the invented grand; with its arms its centres then stand the spread apart. */
const PARTS = {
  spreadMm: 112.5, hammerCentreHeightMm: 141, wippenCentreHeightMm: 78.9, jackTopHeightMm: 127,
  capstanDiameterMm: 12, rollerDiameterMm: 10, jackHeightMm: 52, jackToeMm: 25, jackOverlapMm: 2,
} as const;
/** Of both colours: the capstan meets the heel close to the line of centres at half stroke. */
const HEIGHTS = { balanceHeightMm: 25, capstanHeightMm: 63 } as const;

/** Leads the invented maker used: the large one, and the small one where a large one would come too near the balance hole. */
const LEADS_MM = [12.7, 9.5] as const;
/** A lead nearer to the balance hole is not set: the key was made right without. */
const NEAREST_MM = { large: 60, any: 45 } as const;
const LEAD_PITCH_MM = 19;
/** Front weight of an invented key without leads. */
const BARE_G = 2.5;
/** Net mass of one lead for each millimetre of key width. */
const leadGPerMm = (diameterMm: number): number => ((0.01134 - 0.00045) * Math.PI * diameterMm ** 2) / 4;

/** Leads, regulation and hammers of the invented grand as found, and what its shop asks of the action. */
export function demoAction(): readonly DemoStep[] {
  const sway = swaysFrom(611);
  const keys = demoAsFound();
  const leads = keys.flatMap(leadEntries);
  const regulation = keysOf(compass88).flatMap((key) => regulationEntries(key, sway));
  const hammers = keysOf(compass88).filter((key) => key % 4 === 1).flatMap((key) => hammerEntries(key, sway));
  const sizes = (['natural', 'sharp'] as const).flatMap((colour, index) => Object.entries({ ...KEY_SIZES[colour], ...HEIGHTS }).map(([quantity, value]): ReadingEntry => ({ quantity, scope: 'colour', index, typed: String(value) })));
  const whole = Object.entries(PARTS).map(([quantity, value]): ReadingEntry => ({ quantity, scope: 'instrument', index: 0, typed: String(value) }));
  return [
    { kind: 'readings', sessionRef: null, batch: { cycle: 1, state: 'found', entries: [...sizes, ...whole, ...leads, ...regulation, ...hammers] } },
    { kind: 'action', cycle: 1, terms: DEMO_TERMS },
  ];
}

/** Leads that give the key its front weight, to half a millimetre as a rule is read, and the whole key on the scale. */
function leadEntries({ key, frontWeightG }: DemoKey): readonly ReadingEntry[] {
  const colour = colourOf(compass88, key);
  const { keyWidthMm } = KEY_SIZES[colour];
  const moment = (frontWeightG - BARE_G) * DEMO_ARMS[colour].keyFrontMm;
  const [large, small] = LEADS_MM;
  const diameter = moment < leadGPerMm(large) * keyWidthMm * NEAREST_MM.large ? small : large;
  const leadG = leadGPerMm(diameter) * keyWidthMm;
  const count = moment < leadG * NEAREST_MM.any ? 0 : Math.ceil(moment / (leadG * 150));
  const middle = moment / (leadG * count);
  const places = Array.from({ length: count }, (_, index) => middle + ((count - 1) / 2 - index) * LEAD_PITCH_MM);
  const bar = (colour === 'natural' ? 74 : 58) - 0.05 * key;
  return [
    at('keyMassG', key, Math.round((bar + count * leadG) * 2) / 2),
    ...places.flatMap((place, index) => [at(`lead${String(index + 1)}PositionMm` as QuantityName, key, Math.round(place * 2) / 2), at(`lead${String(index + 1)}DiameterMm` as QuantityName, key, diameter)]),
  ];
}

/** A regulation gone uneven with years: felt packed down, let-off wandered. */
function regulationEntries(key: KeyNumber, sway: () => number): readonly ReadingEntry[] {
  const blow = 48.5 - 0.02 * key + 0.8 * sway();
  const letOff = 2.6 - 0.006 * key + 0.6 * sway();
  const dip = 9.9 + 0.25 * sway();
  const edge = KEY_SIZES[colourOf(compass88, key)].keyFrontLengthMm / DEMO_ARMS[colourOf(compass88, key)].keyFrontMm;
  return [
    at('blowMm', key, Math.round(blow * 2) / 2), at('letOffMm', key, tenth(letOff)), at('dipMm', key, tenth(dip)),
    at('aftertouchMm', key, tenth(dip - ((blow - letOff) / 5.8 + 0.5) * edge + 0.1 * sway())),
    ...(key % 4 === 1 ? [at('dropMm', key, tenth(letOff + 1 + 0.5 * sway())), at('checkMm', key, Math.round(16 + 2 * sway()))] : []),
    ...(colourOf(compass88, key) === 'sharp' ? [at('sharpHeightMm', key, tenth(12.2 + 0.4 * sway()))] : [at('keyLevelMm', key, tenth(0.3 * sway()))]),
  ];
}

function hammerEntries(key: KeyNumber, sway: () => number): readonly ReadingEntry[] {
  const height = key <= 26 ? 194 : key <= 50 ? 191 : 189;
  return [
    at('boreMm', key, tenth(height - 141.5 + 0.3 * sway())), at('stringHeightMm', key, height), at('rakeDeg', key, 0),
    at('feltOverWoodMm', key, tenth(14 - 0.14 * key - 1.2 * Math.exp(-(((key - 46) / 18) ** 2)) + 0.3 * sway())),
    at('strikeDistanceMm', key, tenth(demoLengthOf(key) * strikeRatioOf(key))),
  ];
}

/** The strike line of the invented maker: a little under an eighth up to A4, then falling. */
const strikeRatioOf = (key: KeyNumber): number => 0.121 - 0.0012 * Math.max(0, key - 49);

const tenth = (value: number): number => Math.round(value * 10) / 10;

function at(quantity: QuantityName, index: KeyNumber, value: number): ReadingEntry {
  return { quantity, scope: quantityOf(quantity).scope, index, typed: String(value) };
}
