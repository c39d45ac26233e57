import type { UnitId } from '#units';

/** What a quantity is measured on: each key, each colour of key (naturals, sharps), or the whole instrument. */
export type Scope = 'key' | 'colour' | 'instrument';

/** The part of the instrument a quantity tells about: its page shows and takes it. */
export type Part = 'touch' | 'strings' | 'belly' | 'leads' | 'regulation' | 'hammers' | 'tuning';

/**
 * One measured thing. Grid columns, CSV headers, validation, help, tolerance bands and plots all derive from its entry.
 * Its words stand in the message catalogue: `quantity.<name>.name`, `.short`, `.howTo`, `.mistakes`.
 */
export interface Quantity {
  /** Ends in its unit; also the CSV header and JSON field. */
  readonly name: string;
  readonly unit: UnitId;
  readonly scope: Scope;
  readonly part: Part;
  /** Outside: kept, with a warning. */
  readonly plausible: readonly [number, number];
  /** Outside: refused. */
  readonly possible: readonly [number, number];
  /** Decimals printed; what is stored is never rounded. */
  readonly decimals: number;
  /** Usual half-width of the tolerance band, if the trade has one. */
  readonly tolerance?: number;
  /** True for a count: nothing between whole numbers can be. */
  readonly whole?: boolean;
  /** True when a reading of it belongs to a weighing session. */
  readonly weighed: boolean;
  /** Where the plausible range and the tolerance come from. */
  readonly source: string;
}

const weight = (name: string, plausible: readonly [number, number], possible: readonly [number, number], rest: Partial<Quantity> = {}): Quantity => ({
  name, unit: 'g', scope: 'key', part: 'touch', plausible, possible, decimals: 1, weighed: true, source: 'PRACTICE', ...rest,
});

const arm = (name: string, plausible: readonly [number, number]): Quantity => ({
  name, unit: 'mm', scope: 'colour', part: 'touch', plausible, possible: [1, 1000], decimals: 1, weighed: false, source: 'PRACTICE',
});

const onKey = (part: Exclude<Part, 'touch'>) => (name: string, plausible: readonly [number, number], possible: readonly [number, number], rest: Partial<Quantity> = {}): Quantity => ({
  name, unit: 'mm', scope: 'key', part, plausible, possible, decimals: 1, weighed: false, source: 'PRACTICE', ...rest,
});
const ofString = onKey('strings');
const ofBelly = onKey('belly');
const ofLeads = onKey('leads');
const ofRegulation = onKey('regulation');
const ofHammers = onKey('hammers');
const ofTuning = onKey('tuning');

/** Leads that may be noted in one key, counted from the front. */
export const leadNumbers = [1, 2, 3, 4, 5, 6] as const;
export type LeadNumber = (typeof leadNumbers)[number];
type LeadQuantityName = `lead${LeadNumber}${'PositionMm' | 'DiameterMm' | 'BoreMm' | 'DensityGPerCm3'}`;

const leadsInKey = Object.fromEntries(leadNumbers.flatMap((number) => [
  ofLeads(`lead${String(number)}PositionMm`, [-150, 280], [-400, 400]),
  ofLeads(`lead${String(number)}DiameterMm`, [5, 16], [2, 40]),
  ofLeads(`lead${String(number)}BoreMm`, [2, 10], [0.5, 38]),
  /** Of an insert that is not of lead. */
  ofLeads(`lead${String(number)}DensityGPerCm3`, [6, 12], [0.5, 23], { unit: 'gcm3', decimals: 2 }),
]).map((quantity) => [quantity.name, quantity])) as Readonly<Record<LeadQuantityName, Quantity>>;

/** The one registry of measured things. Adding a quantity is one entry here and its words in the catalogue. */
export const quantities = {
  downWeightG: weight('downWeightG', [35, 75], [0, 300], { tolerance: 2 }),
  upWeightG: weight('upWeightG', [10, 45], [0, 300]),
  frontWeightG: weight('frontWeightG', [-10, 60], [-150, 200]),
  hammerWeightG: weight('hammerWeightG', [3, 15], [0.1, 60], { decimals: 2 }),
  wippenWeightG: weight('wippenWeightG', [10, 30], [0.1, 120]),
  keyFrictionG: weight('keyFrictionG', [0, 8], [0, 100]),
  helperSpringG: weight('helperSpringG', [0, 25], [0, 150]),
  keyFrontMm: arm('keyFrontMm', [170, 290]),
  keyBackMm: arm('keyBackMm', [80, 160]),
  wippenHeelMm: arm('wippenHeelMm', [45, 90]),
  wippenJackMm: arm('wippenJackMm', [70, 120]),
  rollerMm: arm('rollerMm', [13, 22]),
  hammerMm: arm('hammerMm', [110, 150]),
  speakingLengthMm: ofString('speakingLengthMm', [45, 2100], [10, 4000]),
  stringCount: ofString('stringCount', [1, 3], [1, 4], { unit: '1', decimals: 0, whole: true }),
  wireDiameterMm: ofString('wireDiameterMm', [0.7, 1.75], [0.2, 3], { decimals: 3 }),
  hexCoreMm: ofString('hexCoreMm', [0.7, 1.75], [0.2, 3], { decimals: 3 }),
  overallDiameterMm: ofString('overallDiameterMm', [1.2, 8], [0.4, 12], { decimals: 2 }),
  innerWrapMm: ofString('innerWrapMm', [0.15, 1.5], [0.05, 4], { decimals: 3 }),
  outerWrapMm: ofString('outerWrapMm', [0.15, 2.5], [0.05, 4], { decimals: 3 }),
  bareFrontMm: ofString('bareFrontMm', [0, 40], [0, 500]),
  bareRearMm: ofString('bareRearMm', [0, 40], [0, 500]),
  stepFrontMm: ofString('stepFrontMm', [0, 30], [0, 500]),
  stepRearMm: ofString('stepRearMm', [0, 30], [0, 500]),
  pinTorqueNm: ofString('pinTorqueNm', [4, 22], [0, 60], { unit: 'Nm', decimals: 1 }),
  pitchOffsetCt: ofString('pitchOffsetCt', [-60, 60], [-1300, 1300], { unit: 'ct', decimals: 1 }),
  backLengthMm: ofBelly('backLengthMm', [20, 400], [3, 1500]),
  frontHeightMm: ofBelly('frontHeightMm', [-60, 60], [-300, 300], { decimals: 2 }),
  bridgeHeightMm: ofBelly('bridgeHeightMm', [-60, 60], [-300, 300], { decimals: 2 }),
  bridgeHeightUnloadedMm: ofBelly('bridgeHeightUnloadedMm', [-60, 60], [-300, 300], { decimals: 2 }),
  rearHeightMm: ofBelly('rearHeightMm', [-60, 60], [-300, 300], { decimals: 2 }),
  frontBearingDeg: ofBelly('frontBearingDeg', [-1, 2], [-20, 20], { unit: 'deg', decimals: 2 }),
  rearBearingDeg: ofBelly('rearBearingDeg', [-1, 3], [-20, 20], { unit: 'deg', decimals: 2 }),
  bearingGaugeMm: ofBelly('bearingGaugeMm', [-1, 3], [-30, 30], { decimals: 2 }),
  crownMm: ofBelly('crownMm', [-3, 12], [-40, 60], { scope: 'instrument' }),
  roomTemperatureC: ofBelly('roomTemperatureC', [10, 32], [-20, 60], { unit: 'degC', scope: 'instrument' }),
  roomHumidityPct: ofBelly('roomHumidityPct', [20, 80], [0, 100], { unit: 'pct', scope: 'instrument', decimals: 0 }),
  ...leadsInKey,
  keyMassG: ofLeads('keyMassG', [50, 250], [5, 600], { unit: 'g' }),
  keyWidthMm: ofLeads('keyWidthMm', [9, 25], [3, 60], { scope: 'colour' }),
  keyFrontLengthMm: ofLeads('keyFrontLengthMm', [170, 310], [1, 1000], { scope: 'colour' }),
  frontPinMm: ofLeads('frontPinMm', [140, 290], [1, 1000], { scope: 'colour' }),
  keyBackLengthMm: ofLeads('keyBackLengthMm', [90, 300], [1, 1000], { scope: 'colour' }),
  blowMm: ofRegulation('blowMm', [40, 52], [5, 120], { tolerance: 1 }),
  letOffMm: ofRegulation('letOffMm', [0.5, 4], [0, 30], { tolerance: 0.5 }),
  dropMm: ofRegulation('dropMm', [0.5, 4], [0, 30], { tolerance: 0.5 }),
  dipMm: ofRegulation('dipMm', [8.5, 11.5], [1, 30], { decimals: 2, tolerance: 0.2 }),
  aftertouchMm: ofRegulation('aftertouchMm', [0.3, 2], [-5, 10], { decimals: 2, tolerance: 0.25 }),
  checkMm: ofRegulation('checkMm', [8, 22], [0, 80], { tolerance: 2 }),
  keyLevelMm: ofRegulation('keyLevelMm', [-2, 2], [-30, 30], { decimals: 2, tolerance: 0.2 }),
  sharpHeightMm: ofRegulation('sharpHeightMm', [11, 14], [0, 40], { tolerance: 0.3 }),
  spreadMm: ofRegulation('spreadMm', [110, 116], [50, 200], { scope: 'instrument', tolerance: 0.5 }),
  damperG: ofRegulation('damperG', [0, 60], [0, 300], { unit: 'g' }),
  springTorqueGMm: ofRegulation('springTorqueGMm', [20, 500], [0, 5000], { unit: 'gmm', decimals: 0 }),
  strikeDistanceMm: ofHammers('strikeDistanceMm', [2, 270], [0.1, 600]),
  boreMm: ofHammers('boreMm', [40, 66], [10, 120]),
  rakeDeg: ofHammers('rakeDeg', [-4, 8], [-45, 45], { unit: 'deg' }),
  feltOverWoodMm: ofHammers('feltOverWoodMm', [1.5, 25], [0, 60]),
  stringHeightMm: ofHammers('stringHeightMm', [150, 230], [10, 500]),
  hammerCentreHeightMm: ofHammers('hammerCentreHeightMm', [110, 180], [1, 500], { scope: 'instrument' }),
  balanceHeightMm: ofHammers('balanceHeightMm', [10, 45], [-50, 200], { scope: 'colour' }),
  capstanHeightMm: ofHammers('capstanHeightMm', [45, 110], [0, 400], { scope: 'colour' }),
  wippenCentreHeightMm: ofHammers('wippenCentreHeightMm', [60, 120], [0, 400], { scope: 'instrument' }),
  jackTopHeightMm: ofHammers('jackTopHeightMm', [100, 165], [0, 500], { scope: 'instrument' }),
  capstanDiameterMm: ofHammers('capstanDiameterMm', [6, 20], [0, 60], { scope: 'instrument' }),
  rollerDiameterMm: ofHammers('rollerDiameterMm', [8, 14], [1, 60], { scope: 'instrument' }),
  jackHeightMm: ofHammers('jackHeightMm', [35, 75], [1, 200], { scope: 'instrument' }),
  jackToeMm: ofHammers('jackToeMm', [15, 40], [1, 150], { scope: 'instrument' }),
  jackOverlapMm: ofHammers('jackOverlapMm', [0.5, 5], [0, 50], { scope: 'instrument' }),
  /** Absolute, so that a standard pitch changed later changes nothing that was heard. */
  pitchHz: ofTuning('pitchHz', [25, 4700], [8, 20_000], { unit: 'Hz', decimals: 3 }),
  unisonSpreadCt: ofTuning('unisonSpreadCt', [0, 10], [0, 300], { unit: 'ct', decimals: 2, tolerance: 1 }),
  unisonLineCount: ofTuning('unisonLineCount', [1, 3], [1, 4], { unit: '1', decimals: 0, whole: true }),
  inharmonicityB: ofTuning('inharmonicityB', [4e-5, 0.04], [0, 0.5], { unit: '1', decimals: 6 }),
} as const satisfies Readonly<Record<string, Quantity>>;

export type QuantityName = keyof typeof quantities;

/** Every quantity, in the order screens and files show them. */
export const quantityNames = Object.keys(quantities) as readonly QuantityName[];

/** The quantities of one part, of one scope if it is named, in the registry's order. */
export function quantitiesOf(part: Part, scope?: Scope): readonly QuantityName[] {
  return quantityNames.filter((name) => quantities[name].part === part && (scope === undefined || quantities[name].scope === scope));
}

/** The entry of a quantity. */
export function quantityOf(name: QuantityName): Quantity {
  return quantities[name];
}

/** True for a name of the registry. */
export function isQuantityName(name: string): name is QuantityName {
  return Object.hasOwn(quantities, name);
}
