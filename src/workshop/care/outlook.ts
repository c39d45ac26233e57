import { type ClimateSpan, climateSpanOf, watchOf } from '#climate';
import { percent } from '#units';
import { type AirHours, airReadOf, watchedOf } from './hours.ts';
import type { CareOf } from './records.ts';

type Band = Pick<CareOf<'plan'>, 'lowPct' | 'highPct' | 'dayChangePct'>;

/** The wood of board and block follows behind the air by about so many days. @source PRACTICE */
export const BOARD_LAG_DAYS = 14;

/** What a log of the air says at a glance: its span, its middle and ends, and how it stood to the band. */
export interface AirOutlook extends ClimateSpan {
  readonly fromHour: number;
  readonly toHour: number;
  readonly watch: ReturnType<typeof watchOf>;
}

/** The log at a glance; nothing where nothing was read. */
export function airOutlookOf(hours: AirHours, { lowPct, highPct, dayChangePct }: Band): AirOutlook | undefined {
  const [fromHour, toHour] = [hours.hour[0], hours.hour.at(-1)];
  const span = climateSpanOf(airReadOf(hours), BOARD_LAG_DAYS);
  if (fromHour === undefined || toHour === undefined || span === undefined) return undefined;
  return { fromHour, toHour, ...span, watch: watchOf(watchedOf(hours), { lowPct: percent(lowPct), highPct: percent(highPct), dayChangePct: percent(dayChangePct) }) };
}
