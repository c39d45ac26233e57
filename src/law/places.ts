import { z } from 'zod';

/** Countries of the European Union, ISO 3166-1. @source EU-TREATIES */
const europeanUnion = new Set(['AT', 'BE', 'BG', 'CY', 'CZ', 'DE', 'DK', 'EE', 'ES', 'FI', 'FR', 'GR', 'HR', 'HU', 'IE', 'IT', 'LT', 'LU', 'LV', 'MT', 'NL', 'PL', 'PT', 'RO', 'SE', 'SI', 'SK']);

/** Codes of countries and territories in use. @source ISO-3166-1 */
const iso3166 = 'AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ CA CC CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET FI FJ FK FM FO FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE JM JO JP KE KG KH KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO MP MQ MR MS MT MU MV MW MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW PY QA RE RO RS RU RW SA SB SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM TN TO TR TT TV TW TZ UA UG UM US UY UZ VA VC VE VG VI VN VU WF WS YE YT ZA ZM ZW'.split(' ');

/** Every place a journey may begin or end at: a country, or Northern Ireland, whose rules are its own. */
export const paperPlaces: readonly string[] = [...iso3166, 'GB-NIR'].sort();
const known = new Set(paperPlaces);

/** A place as it is written. */
export const placeSchema = z.string().regex(/^(?:[A-Z]{2}|GB-NIR)$/u, 'an ISO 3166-1 code such as DE, or GB-NIR for Northern Ireland')
  .refine((place) => known.has(place), 'an ISO 3166-1 code in use, such as DE, or GB-NIR for Northern Ireland')
  .describe('ISO 3166-1 code of the country, such as DE; GB-NIR for Northern Ireland');

/** A field of law: a country or union with rules of its own, or the convention on trade in wild species. */
export const jurisdictions = ['GB', 'NI', 'EU', 'US', 'convention'] as const;
export type Jurisdiction = (typeof jurisdictions)[number];

/**
 * Whose rules hold at a place: ISO 3166-1 of a country, or GB-NIR for Northern Ireland, where rules of the kingdom and of the union
 * meet. Every country is taken to be a party to the convention, nearly all being so.
 */
export function jurisdictionsOf(place: string): readonly Jurisdiction[] {
  if (place === 'GB-NIR') return ['NI', 'EU', 'convention'];
  if (place === 'GB' || place === 'US') return [place, 'convention'];
  return europeanUnion.has(place) ? ['EU', 'convention'] : ['convention'];
}

/** Whether a country has rules of its own in the table; where not, only its authority knows. */
export const hasOwnRules = (place: string): boolean => jurisdictionsOf(place).some((jurisdiction) => jurisdiction !== 'convention');

/** Whether going from one to the other crosses no customs border. */
export function isWithin(from: string, to: string): boolean {
  return from === to || (europeanUnion.has(from) && europeanUnion.has(to));
}
