import type { SourceKey } from '#sources';

/** The general rate of value added tax of a place from a day on; a suggestion to be checked, never advice. */
export interface DatedRate {
  /** ISO 3166 code. */
  readonly place: string;
  readonly ratePct: number;
  readonly since: string;
  readonly source: SourceKey;
}

const source = 'VAT-RATES';

/** General rates from the day each came into force, by place and day; all from memory, and an accountant confirms which applies. @source VAT-RATES */
const datedRates: readonly DatedRate[] = [
  { place: 'AT', ratePct: 20, since: '1984-01-01', source },
  { place: 'CH', ratePct: 7.7, since: '2018-01-01', source },
  { place: 'CH', ratePct: 8.1, since: '2024-01-01', source },
  { place: 'DE', ratePct: 19, since: '2007-01-01', source },
  { place: 'DE', ratePct: 16, since: '2020-07-01', source },
  { place: 'DE', ratePct: 19, since: '2021-01-01', source },
  { place: 'ES', ratePct: 18, since: '2010-07-01', source },
  { place: 'ES', ratePct: 21, since: '2012-09-01', source },
  { place: 'FR', ratePct: 19.6, since: '2000-04-01', source },
  { place: 'FR', ratePct: 20, since: '2014-01-01', source },
  { place: 'GB', ratePct: 17.5, since: '2010-01-01', source },
  { place: 'GB', ratePct: 20, since: '2011-01-04', source },
  { place: 'IT', ratePct: 21, since: '2011-09-17', source },
  { place: 'IT', ratePct: 22, since: '2013-10-01', source },
  { place: 'NL', ratePct: 19, since: '2001-01-01', source },
  { place: 'NL', ratePct: 21, since: '2012-10-01', source },
];

/** The general rate that stood at a place on a day; nothing for a place or a day that is not known of. The parts of a country have its rate. @source VAT-RATES */
export function rateOn(place: string, day: string): DatedRate | undefined {
  return datedRates.findLast((rate) => rate.place === place.slice(0, 2) && rate.since <= day);
}

/** The rates that stand on a day, one for each place. @source VAT-RATES */
export function ratesOn(day: string): readonly DatedRate[] {
  return [...new Set(datedRates.map(({ place }) => place))].flatMap((place) => rateOn(place, day) ?? []);
}
