import {
  type BoredHammer, type FrontReach, type Lead, type LeadBed, type PlanInertia, type PlanKey, KEY_WOOD_DENSITY_G_PER_MM3, LEAD_DENSITY_G_PER_MM3,
  aftertouchOf, blowFor, dipFor, frontReachOf, keyInertiaOf, leadMassOf, leadMomentOf, registerOf,
} from '#action';
import type { ActionTerms, Compass, KeyColour, KeyNumber } from '#instrument';
import { sumOf } from '#numerics';
import { type Millimetres, type Ratio, degrees, gramSquareMillimetres, grams, gramsPerCubicMillimetre, millimetres } from '#units';
import { type SizesAt, leadsAt } from './plan-sizes.ts';

/** Wood left between two holes where the shop states none. @source PRACTICE */
export const USUAL_GAP_MM = 3;
/** Travel that felt and lost motion take where the shop states none: the middle of what is usual. @source PRACTICE */
export const USUAL_LOSS_MM = 0.3;

/** One key and where its sizes come from. */
export interface KeyPlace {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  readonly compass: Compass;
  readonly sizes: SizesAt;
  readonly terms: ActionTerms | null;
}

/** What leads of a key are put into; absent where the width of the wood was not measured. */
export function leadBedOf({ colour, sizes, terms }: KeyPlace): LeadBed | undefined {
  const width = sizes.ofColour(colour, 'keyWidthMm');
  if (width === undefined) return undefined;
  return {
    keyWidthMm: millimetres(width),
    leadDensityGPerMm3: terms?.leadGPerMm3 == null ? LEAD_DENSITY_G_PER_MM3 : gramsPerCubicMillimetre(terms.leadGPerMm3),
    woodDensityGPerMm3: terms?.woodGPerMm3 == null ? KEY_WOOD_DENSITY_G_PER_MM3 : gramsPerCubicMillimetre(terms.woodGPerMm3),
  };
}

/** Front weights the key can be leaded to; absent where leads, key or what the shop allows are not known. */
export function reachOf(place: KeyPlace, keyFrontMm: Millimetres, areLeadsNoted: boolean): FrontReach | undefined {
  const { key, colour, sizes, terms } = place;
  const bed = leadBedOf(place);
  const front = sizes.ofKey(key, 'frontWeightG');
  const length = sizes.ofColour(colour, 'keyFrontLengthMm');
  const drill = Math.max(0, ...(terms?.drillsMm ?? []));
  if (bed === undefined || front === undefined || length === undefined || drill === 0 || terms?.mostLeads == null || !areLeadsNoted) return undefined;
  const moment = sumOf(leadsAt(sizes, key).map((lead) => leadMomentOf(lead, bed)));
  return frontReachOf({
    ...bed, bareFrontWeightG: grams(front - moment / keyFrontMm), keyFrontMm, keyFrontLengthMm: millimetres(length),
    drillMm: millimetres(drill), mostLeads: terms.mostLeads, gapMm: millimetres(terms.leadGapMm ?? USUAL_GAP_MM),
    keepOuts: terms.keepOuts.map(({ fromMm, toMm }) => ({ fromMm: millimetres(fromMm), toMm: millimetres(toMm) })),
  });
}

/** What the inertia is reckoned from, leads as they lie; absent where one of its parts is not known. */
export function inertiaOf(place: KeyPlace): PlanInertia | undefined {
  const { key, colour, sizes, terms } = place;
  const bed = leadBedOf(place);
  const mass = sizes.ofKey(key, 'keyMassG');
  const [front, back] = [sizes.ofColour(colour, 'keyFrontLengthMm'), sizes.ofColour(colour, 'keyBackLengthMm')];
  if (bed === undefined || mass === undefined || front === undefined || back === undefined) return undefined;
  if (terms?.wippenInertiaGMm2 == null || terms.shankG === null || terms.shankLengthMm === null) return undefined;
  const leads: readonly Lead[] = leadsAt(sizes, key);
  const bar = grams(mass - sumOf(leads.map((lead) => leadMassOf(lead, bed))));
  const whole = { ...bed, keyMassG: bar, keyFrontLengthMm: millimetres(front), keyBackLengthMm: millimetres(back), leads };
  return {
    keyGMm2: keyInertiaOf(whole), bar: whole,
    wippenGMm2: gramSquareMillimetres(terms.wippenInertiaGMm2), shankG: grams(terms.shankG), shankLengthMm: millimetres(terms.shankLengthMm),
  };
}

/** The regulation of the key as stated for its register, over what was found; the one that floats is solved. */
export function regulationOf({ key, colour, compass, sizes, terms }: KeyPlace, distanceRatio: Ratio, keyFrontMm: Millimetres): PlanKey['regulation'] {
  const stated = terms?.regulation.find(({ register }) => register === registerOf(compass, key).name);
  const of = (name: 'blowMm' | 'letOffMm' | 'dipMm' | 'aftertouchMm'): number | undefined => stated?.[name] ?? sizes.ofKey(key, name);
  const edge = sizes.ofColour(colour, 'keyFrontLengthMm');
  const letOff = of('letOffMm');
  if (edge === undefined || letOff === undefined) return undefined;
  const fixed = { letOffMm: millimetres(letOff), lossMm: millimetres(terms?.lossMm ?? USUAL_LOSS_MM), keyEdgeMm: millimetres(edge) };
  const pin = sizes.ofColour(colour, 'frontPinMm');
  const told = { ...fixed, ...(pin === undefined ? {} : { frontPinMm: millimetres(pin) }) };
  const base = { ...fixed, distanceRatio, keyFrontMm };
  const [blow, dip, after] = [of('blowMm'), of('dipMm'), of('aftertouchMm')].map((value) => (value === undefined ? undefined : millimetres(value)));
  const floats = terms?.regulationFloats ?? 'aftertouch';
  if (floats === 'dip' && blow !== undefined && after !== undefined) return { ...told, blowMm: blow, aftertouchMm: after, dipMm: dipFor(base, { blowMm: blow, aftertouchMm: after }) };
  if (floats === 'blow' && dip !== undefined && after !== undefined) return { ...told, dipMm: dip, aftertouchMm: after, blowMm: blowFor(base, { dipMm: dip, aftertouchMm: after }) };
  if (blow === undefined || dip === undefined) return undefined;
  return { ...told, blowMm: blow, dipMm: dip, aftertouchMm: aftertouchOf(base, { blowMm: blow, dipMm: dip }) };
}

/** The hammer and its string; absent where bore or heights were not measured. A rake that was not is taken as square. */
export function boredOf({ key, sizes }: KeyPlace): Omit<BoredHammer, 'hammerMm'> | undefined {
  const [bore, string, centre] = [sizes.ofKey(key, 'boreMm'), sizes.ofKey(key, 'stringHeightMm'), sizes.ofWhole('hammerCentreHeightMm')];
  if (bore === undefined || string === undefined || centre === undefined) return undefined;
  return { boreMm: millimetres(bore), stringHeightMm: millimetres(string), centreHeightMm: millimetres(centre), rakeDeg: degrees(sizes.ofKey(key, 'rakeDeg') ?? 0) };
}
