import { type HammerInput, type HammerKey, type HammerLife, type HammerWear, hammerLifeOf, registerOf, usualWear } from '#action';
import { type ActionTerms, type Instrument, type KeyNumber, type Reading, type State, compassOf, keysOf } from '#instrument';
import { meanOf, medianOf } from '#numerics';
import { degrees, millimetres } from '#units';
import { colourSizesOf } from './colour-sizes.ts';
import { type NoteSizes, sizesByKey } from './scale-sizes.ts';

/** What the hammers of one state of an instrument are judged from. */
export interface HammerMaterial {
  readonly instrument: Pick<Instrument, 'kind' | 'firstMidi' | 'lastMidi' | 'sections'>;
  /** Standing readings; those of other cycles are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly terms: ActionTerms | null;
  /** Speaking lengths of the strings of that state. */
  readonly strings: readonly { readonly key: KeyNumber; readonly speakingLengthMm?: number | undefined; readonly isFromFound?: boolean }[];
}

/** What had to be taken for granted, or left open, and at how many keys. */
export interface HammerAssumption {
  readonly what: 'usualFelt' | 'heightOfSection' | 'noCentreHeight' | 'noHammerArm' | 'noRake' | 'noLength' | 'lengthAsFound' | 'centreAboveString' | 'noSections' | 'uprightBore';
  readonly notes: readonly KeyNumber[];
}

export interface GatheredHammers {
  readonly input: HammerInput;
  readonly assumed: readonly HammerAssumption[];
}

/** Felt over the wood below which hammers are usually replaced; bass and middle, treble; mm. @source PRACTICE */
export const USUAL_LEAST_FELT_MM = { bass: 3, treble: 1.5 } as const;

/**
 * Gathers readings, terms and speaking lengths into what the analysis of the hammers takes. The height of the strings at a key
 * is its own, or the median of those read in its section, and told so. Bore and squareness are worked out for grands only.
 * @source OWN; PRACTICE least felt where not stated
 */
export function hammerInputOf({ instrument, readings, cycle, state, terms, strings }: HammerMaterial): GatheredHammers {
  const compass = compassOf(instrument);
  const sizes = sizesByKey(readings, cycle, state, 'hammers');
  const lengths = new Map(strings.map(({ key, speakingLengthMm }) => [key, speakingLengthMm]));
  const asFound = new Set(strings.flatMap(({ key, speakingLengthMm, isFromFound }) => (isFromFound === true && speakingLengthMm !== undefined ? [key] : [])));
  const isGrand = instrument.kind === 'grand';
  const rows = keysOf(compass).map((key): Row => {
    const own = sizes.get(key) ?? {};
    const height = heightAt(key, sizes, instrument.sections);
    return { isLaid: own.stringHeightMm === undefined && height !== undefined, hammer: hammerOf({ key, register: registerOf(compass, key).name }, own, { height, length: lengths.get(key) }) };
  });
  const centre = centreHeightOf(readings, cycle, state);
  const arm = colourSizesOf(readings, cycle, state, 'natural').sizes.hammerMm;
  const input: HammerInput = {
    keys: rows.map(({ hammer }) => hammer), sections: instrument.sections,
    ...(centre === undefined ? {} : { centreHeightMm: millimetres(centre) }), ...(arm === undefined || !isGrand ? {} : { hammerMm: millimetres(arm) }),
    leastFeltMm: leastFeltOf(terms),
  };
  return { input, assumed: assumedOf(rows, input, { terms, isGrand, asFound }) };
}

interface Row {
  readonly hammer: HammerKey;
  readonly isLaid: boolean;
}

function hammerOf(place: Pick<HammerKey, 'key' | 'register'>, sizes: NoteSizes, { height, length }: { readonly height: number | undefined; readonly length: number | undefined }): HammerKey {
  const { strikeDistanceMm: strike, feltOverWoodMm: felt, boreMm: bore, rakeDeg: rake } = sizes;
  return {
    ...place,
    ...(strike === undefined ? {} : { strikeDistanceMm: millimetres(strike.value) }), ...(length === undefined ? {} : { speakingLengthMm: millimetres(length) }),
    ...(felt === undefined ? {} : { feltOverWoodMm: millimetres(felt.value) }), ...(bore === undefined ? {} : { boreMm: millimetres(bore.value) }),
    ...(rake === undefined ? {} : { rakeDeg: degrees(rake.value) }), ...(height === undefined ? {} : { stringHeightMm: millimetres(height) }),
  };
}

function heightAt(key: KeyNumber, sizes: ReadonlyMap<KeyNumber, NoteSizes>, sections: Instrument['sections']): number | undefined {
  const own = sizes.get(key)?.stringHeightMm;
  if (own !== undefined) return own.value;
  const section = sections.find(({ firstKey, lastKey }) => key >= firstKey && key <= lastKey);
  if (section === undefined) return undefined;
  const read = [...sizes].flatMap(([at, of]) => (at >= section.firstKey && at <= section.lastKey && of.stringHeightMm !== undefined ? [of.stringHeightMm.value] : []));
  return read.length === 0 ? undefined : medianOf(read);
}

function centreHeightOf(readings: readonly Reading[], cycle: number, state: State): number | undefined {
  const read = (at: State): readonly number[] => readings.flatMap((one) => (one.cycle === cycle && one.state === at && one.quantity === 'hammerCentreHeightMm' && one.value !== null ? [one.value] : []));
  const values = [read(state), read('found')].find((list) => list.length > 0);
  return values === undefined ? undefined : meanOf(values);
}

/** Felt over the wood that must be left, by register; as stated, else as usual. @source PRACTICE */
export function leastFeltOf(terms: ActionTerms | null): HammerInput['leastFeltMm'] {
  const bass = terms?.leastFeltBassMm ?? USUAL_LEAST_FELT_MM.bass;
  return { bass, middle: bass, treble: terms?.leastFeltTrebleMm ?? USUAL_LEAST_FELT_MM.treble };
}

function assumedOf(rows: readonly Row[], { centreHeightMm, hammerMm, sections }: HammerInput, { terms, isGrand, asFound }: { readonly terms: ActionTerms | null; readonly isGrand: boolean; readonly asFound: ReadonlySet<KeyNumber> }): readonly HammerAssumption[] {
  const where = (what: HammerAssumption['what'], holds: (hammer: HammerKey, isLaid: boolean) => boolean): HammerAssumption => ({ what, notes: rows.filter(({ hammer, isLaid }) => holds(hammer, isLaid)).map(({ hammer: { key } }) => key) });
  const isBored = ({ boreMm }: HammerKey): boolean => boreMm !== undefined;
  return [
    where('usualFelt', ({ feltOverWoodMm, register }) => feltOverWoodMm !== undefined && (register === 'treble' ? terms?.leastFeltTrebleMm : terms?.leastFeltBassMm) == null),
    where('noLength', ({ strikeDistanceMm, speakingLengthMm }) => strikeDistanceMm !== undefined && speakingLengthMm === undefined),
    where('lengthAsFound', ({ key, strikeDistanceMm }) => strikeDistanceMm !== undefined && asFound.has(key)),
    where('uprightBore', (hammer) => !isGrand && isBored(hammer)),
    where('heightOfSection', (hammer, isLaid) => isGrand && isBored(hammer) && isLaid),
    where('noSections', (hammer) => isGrand && isBored(hammer) && hammer.stringHeightMm === undefined && sections.length === 0),
    where('noCentreHeight', (hammer) => isGrand && isBored(hammer) && centreHeightMm === undefined),
    where('noHammerArm', (hammer) => isGrand && isBored(hammer) && hammerMm === undefined),
    where('noRake', (hammer) => isGrand && isBored(hammer) && hammer.rakeDeg === undefined),
    where('centreAboveString', ({ stringHeightMm }) => isGrand && stringHeightMm !== undefined && centreHeightMm !== undefined && centreHeightMm >= stringHeightMm),
  ].filter(({ notes }) => notes.length > 0);
}

/** Remaining life of the hammers: reckoned with the shop's own figures, or as a range with the usual ones. */
export interface ReckonedLife {
  readonly least: HammerLife;
  readonly most: HammerLife;
  /** What the two were reckoned from. */
  readonly wear: { readonly least: HammerWear; readonly most: HammerWear };
  /** Figures nobody stated, taken as usual. */
  readonly usual: readonly ('reshapeHours' | 'mostReshapes')[];
}

/** What is left of the hammers of these terms; nothing where hours, age or reshapings so far are not stated. @source PRACTICE */
export function hammerLifeOfTerms(terms: ActionTerms | null): ReckonedLife | undefined {
  if (terms?.hoursPerWeek == null || terms.hammerAgeYears == null || terms.reshapeCount === null) return undefined;
  const { hoursPerWeek, hammerAgeYears: ageYears, reshapeCount, reshapeHours, mostReshapes } = terms;
  const wear = (end: 0 | 1): HammerWear => ({ hoursPerWeek, ageYears, reshapeCount, reshapeHours: reshapeHours ?? usualWear.reshapeHours[end], mostReshapes: mostReshapes ?? usualWear.mostReshapes[end] });
  const [low, high] = [wear(0), wear(1)];
  return {
    least: hammerLifeOf(low), most: hammerLifeOf(high), wear: { least: low, most: high },
    usual: [...(reshapeHours === null ? ['reshapeHours' as const] : []), ...(mostReshapes === null ? ['mostReshapes' as const] : [])],
  };
}
