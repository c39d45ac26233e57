import { type AirAt, type AirRead, type HumidityAt, woodAirOf } from '#climate';
import { celsius, percent } from '#units';
import { z } from 'zod';

/** One reading of the air by the clock on the wall, in minutes since 1 January 1970 by that clock. */
export interface AirReading {
  readonly minute: number;
  readonly temperatureC: number | null;
  readonly humidityPct: number;
}

/** The log of the air brought to hours: column by column, oldest first. */
export const airHoursSchema = z.strictObject({
  /** Hours since 1 January 1970 by the clock on the wall. */
  hour: z.array(z.number().int()),
  temperatureC: z.array(z.number().nullable()),
  humidityPct: z.array(z.number()),
});
export type AirHours = z.output<typeof airHoursSchema>;

const MINUTES = 60;
const HOURS_PER_DAY = 24;
const HOUR_MS = 3_600_000;

/** Readings of all loggers and hands, as the mean of each hour. An hour nobody read is not there. @source OWN */
export function airHoursOf(readings: Iterable<AirReading>): AirHours {
  const sums = new Map<number, { humidity: number; count: number; temperature: number; temperatures: number }>();
  for (const { minute, temperatureC, humidityPct } of readings) {
    const hour = Math.floor(minute / MINUTES);
    const sum = sums.get(hour) ?? { humidity: 0, count: 0, temperature: 0, temperatures: 0 };
    sum.humidity += humidityPct;
    sum.count += 1;
    if (temperatureC !== null) { sum.temperature += temperatureC; sum.temperatures += 1; }
    sums.set(hour, sum);
  }
  const ordered = [...sums].sort(([a], [b]) => a - b);
  return {
    hour: ordered.map(([hour]) => hour),
    temperatureC: ordered.map(([, { temperature, temperatures }]) => (temperatures === 0 ? null : rounded(temperature / temperatures))),
    humidityPct: ordered.map(([, { humidity, count }]) => rounded(humidity / count)),
  };
}

/** Means are sent with four decimals: far below what any logger resolves; the file itself is kept whole. */
const rounded = (value: number): number => Math.round(value * 1e4) / 1e4;

/** Minutes of a moment `2026-05-01T10:30`. */
export function minuteOf(wallTime: string): number {
  return Date.parse(`${wallTime}:00Z`) / 60_000;
}

/** The day of an hour, `YYYY-MM-DD`. */
export function dayOfHour(hour: number): string {
  return new Date(hour * HOUR_MS).toISOString().slice(0, 10);
}

/** Days since 1 January 1970 of a day or moment by the clock on the wall; a day without a clock stands at noon. */
export function dayCountOf(when: string): number {
  return when.includes('T') ? minuteOf(when) / MINUTES / HOURS_PER_DAY : Date.parse(`${when}T12:00:00Z`) / HOUR_MS / HOURS_PER_DAY;
}

/** The log as it was read, in days since 1970. */
export function airReadOf({ hour, temperatureC, humidityPct }: AirHours): readonly AirRead[] {
  return hour.map((at, index) => { const read = temperatureC[index] ?? null; return { dayCount: at / HOURS_PER_DAY, temperatureC: read === null ? null : celsius(read), humidityPct: percent(humidityPct[index] ?? 0) }; });
}

/** The log as the moisture of wood is worked out of it, in days since 1970. */
export const airDaysOf = (hours: AirHours): readonly AirAt[] => airReadOf(hours).map(woodAirOf);

/** The log as it is watched, counted from its first hour. */
export function watchedOf({ hour, humidityPct }: AirHours): readonly HumidityAt[] {
  const first = hour[0] ?? 0;
  return hour.map((at, index) => ({ hourCount: at - first, humidityPct: percent(humidityPct[index] ?? 0) }));
}
