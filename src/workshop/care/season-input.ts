import { type AirAt, laggedMoistureOf } from '#climate';
import type { TuningPass } from '#instrument';
import { inOrder } from '../tuning-passes.ts';
import { type AirHours, airDaysOf, dayCountOf } from './hours.ts';
import { type CareCard, careOf } from './records.ts';

/** Figures that may go with the season. */
export const seasonFigures = ['pitchCt', 'bearingDeg'] as const;
export type SeasonFigure = (typeof seasonFigures)[number];

/** Lags of the wood that are tried; days. Boards follow within days to weeks. @source PRACTICE */
export const TRIED_LAGS_DAYS = [0, 3, 7, 14, 30] as const;

/** What the operation `season-regression` is given, and how many figures lie outside the log. */
export interface SeasonInput {
  readonly input: { readonly air: readonly AirAt[]; readonly observed: readonly ObservedFigure[]; readonly lagDays: readonly number[] };
  readonly outside: number;
}

interface ObservedFigure {
  readonly dayCount: number;
  readonly value: number;
  readonly sinceDayCount?: number;
}

/** Days of the air are brought to daily means before a year of it is fitted: the wood of a board does not know the hour. */
export function dailyAirOf(air: readonly AirAt[]): readonly AirAt[] {
  const days = new Map<number, AirAt[]>();
  for (const at of air) {
    const day = Math.floor(at.dayCount);
    const own = days.get(day);
    if (own === undefined) days.set(day, [at]);
    else own.push(at);
  }
  const mean = (own: readonly AirAt[], of: (at: AirAt) => number): number => own.reduce((sum, at) => sum + of(at), 0) / own.length;
  return [...days].sort(([a], [b]) => a - b).map(([day, own]) => ({ dayCount: day + 0.5, temperatureC: mean(own, (at) => at.temperatureC) as AirAt['temperatureC'], humidityPct: mean(own, (at) => at.humidityPct) as AirAt['humidityPct'] }));
}

/** Moisture of the wood day by day, behind the air by a lag. */
export function dailyMoistureOf(hours: AirHours, lagDays: number) {
  return laggedMoistureOf(dailyAirOf(airDaysOf(hours)), lagDays);
}

/** Gathers the air day by day, and the figures of the piano that lie within it. */
export function seasonInputOf(hours: AirHours, care: readonly CareCard[], passes: readonly TuningPass[], figure: SeasonFigure): SeasonInput {
  const air = dailyAirOf(airDaysOf(hours));
  const all = figure === 'pitchCt' ? pitchesOf(care, passes) : bearingsOf(care);
  const [first, last] = [air[0]?.dayCount ?? Infinity, air.at(-1)?.dayCount ?? -Infinity];
  const within = (day: number | undefined): boolean => day === undefined || (day >= first && day <= last);
  const observed = all.filter(({ dayCount, sinceDayCount }) => within(dayCount) && within(sinceDayCount));
  return { input: { air, observed, lagDays: [...TRIED_LAGS_DAYS] }, outside: all.length - observed.length };
}

function bearingsOf(care: readonly CareCard[]): readonly ObservedFigure[] {
  return careOf(care, 'air').flatMap(({ at, bearingDeg }) => (bearingDeg === null ? [] : [{ dayCount: noon(at), value: bearingDeg }])).sort(byDay);
}

/**
 * Pitch as it changed since the tuning before: found less left, of passes over the whole instrument, and of readings by hand. A figure
 * before the first tuning has nothing to be compared with.
 */
function pitchesOf(care: readonly CareCard[], passes: readonly TuningPass[]): readonly ObservedFigure[] {
  const whole = inOrder(passes).filter(({ stretch }) => stretch === 'whole');
  const tuned = whole.map(({ day, foundCt, leftCt }) => ({ dayCount: noon(day), found: foundCt, left: leftCt }));
  const read = careOf(care, 'air').flatMap(({ at, pitchCt }) => (pitchCt === null ? [] : [{ dayCount: noon(at), found: pitchCt, left: null }]));
  let before: { readonly dayCount: number; readonly left: number } | undefined;
  return [...tuned, ...read].sort(byDay).flatMap(({ dayCount, found, left }): readonly ObservedFigure[] => {
    const observed = before === undefined || before.dayCount >= dayCount ? [] : [{ dayCount, value: found - before.left, sinceDayCount: before.dayCount }];
    if (left !== null) before = { dayCount, left };
    return observed;
  });
}

/** Noon of the day of a moment, so that it stands with the mean of its day. */
const noon = (when: string): number => dayCountOf(when.slice(0, 10));
const byDay = (a: { readonly dayCount: number }, b: { readonly dayCount: number }): number => a.dayCount - b.dayCount;
