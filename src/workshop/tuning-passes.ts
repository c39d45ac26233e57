import { type TuningPass, type TuningStretch, tuningStretches } from '#instrument';
import { meanOf } from '#numerics';
import { type TuningDrift, nextVisitOf } from '#tuning';
import { group } from 'd3-array';

/** A pass counts for what it lost while the next over the same stretch comes within so many days: later, it is drift. @source OWN */
const SETTLING_DAYS = 14;
/** Less than this is tuning and not raising; cents. @source OWN */
const LEAST_RAISE_CT = 5;
const DAY_MS = 86_400_000;

/** One pass with what it was found to have settled at; hours between them where both times are stated. */
export interface SettledPass {
  readonly pass: TuningPass;
  readonly settledCt: number;
  readonly afterHours?: number;
}

/** Passes of one piano in the order they were carried out: by day, by time where it is stated, else as they were noted. */
export function inOrder(passes: readonly TuningPass[]): readonly TuningPass[] {
  return passes.toSorted((a, b) => a.day.localeCompare(b.day) || (a.time === null || b.time === null ? 0 : a.time.localeCompare(b.time)) || a.at.localeCompare(b.at));
}

/**
 * Passes of one piano that raised the pitch and were looked at again within a fortnight: what the next pass over the same
 * stretch found is where they settled. Passes of different stays or stretches are kept apart.
 * @source OWN
 */
export function settledPassesOf(passes: readonly TuningPass[]): readonly SettledPass[] {
  const groups = group(inOrder(passes), ({ cycle, stretch }) => `${String(cycle)} ${stretch}`);
  return [...groups.values()].flatMap((own) => own.slice(1).flatMap((next, index): readonly SettledPass[] => {
    const pass = own[index];
    if (pass?.leftCt == null || pass.leftCt - pass.foundCt < LEAST_RAISE_CT || daysBetween(pass.day, next.day) > SETTLING_DAYS) return [];
    const hours = hoursBetween(pass, next);
    return [{ pass, settledCt: next.foundCt, ...(hours === undefined ? {} : { afterHours: hours }) }];
  }));
}

/** What the operation `pitch-raise` is given: every settled pass of the shop, and what stands to be raised. */
export function raiseInputOf(shop: readonly (TuningPass & { readonly pianoId: string })[], standing: readonly { readonly section: TuningStretch; readonly fromCents: number; readonly targetCents: number }[]) {
  const pianos = group(shop, ({ pianoId }) => pianoId);
  const settled = [...pianos.values()].flatMap(settledPassesOf);
  return { passes: settled.map(({ pass, settledCt }) => ({ section: pass.stretch, fromCents: pass.foundCt, setCents: pass.leftCt ?? pass.foundCt, settledCents: settledCt })), standing: [...standing] };
}

/** Where each stretch of a piano stands by its latest pass, and is to be raised to 0. */
export function standingOfPasses(passes: readonly TuningPass[]): readonly { readonly section: TuningStretch; readonly fromCents: number; readonly targetCents: number }[] {
  const latest = new Map(inOrder(passes).map((pass) => [pass.stretch, pass]));
  return tuningStretches.flatMap((section) => {
    const pass = latest.get(section);
    const fromCents = pass?.leftCt ?? pass?.foundCt;
    return fromCents === undefined || fromCents > -LEAST_RAISE_CT ? [] : [{ section, fromCents, targetCents: 0 }];
  });
}

/** A raise of so much sinks for days; the drift is counted from the first day after the last one. @source OWN */
const UNSETTLING_CT = 10;

/** One day of the drift as the operation `tuning-drift` takes it. */
export interface DriftDay {
  readonly dayCount: number;
  readonly foundCents: number;
  readonly leftCents?: number;
  readonly temperatureC?: number;
  readonly humidityPct?: number;
}

/**
 * The days from stringing on with the mean pitch over the instrument: of the whole where a pass took it in, else the mean of the
 * stretches. Found is the first of the day, left the last. Days before the strings were put on are passed over, and those up to
 * the last raise of 10 cents or more, which sinks by what it was raised and not by the age of the strings.
 * @source OWN
 */
export function driftDaysOf(passes: readonly TuningPass[], strungOn: string): readonly DriftDay[] {
  const ordered = inOrder(passes);
  const lastRaise = ordered.findLast(({ foundCt, leftCt }) => leftCt !== null && leftCt - foundCt >= UNSETTLING_CT)?.day ?? '';
  const days = group(ordered.filter(({ day }) => day >= strungOn && day > lastRaise), ({ day }) => day);
  return [...days].map(([day, all]): DriftDay => {
    const whole = all.filter(({ stretch }) => stretch === 'whole');
    const groups = [...group(whole.length > 0 ? whole : all, ({ stretch }) => stretch).values()];
    const found = meanOf(groups.map(([first]) => first?.foundCt ?? 0));
    const last = groups.map((own) => own.at(-1)).flatMap((pass) => (pass === undefined ? [] : [pass.leftCt ?? pass.foundCt]));
    const air = all.find(({ humidityPct, temperatureC }) => humidityPct !== null && temperatureC !== null) ?? all.find(({ humidityPct }) => humidityPct !== null);
    return {
      dayCount: daysBetween(strungOn, day), foundCents: found, leftCents: meanOf(last),
      ...(air?.temperatureC == null ? {} : { temperatureC: air.temperatureC }), ...(air?.humidityPct == null ? {} : { humidityPct: air.humidityPct }),
    };
  });
}

/** The days a next visit is suggested for, `YYYY-MM-DD`. */
export interface SuggestedVisit {
  readonly day: string;
  readonly earliest: string;
  /** Absent where the fit cannot tell the drift from none. */
  readonly latest?: string;
}

/** Days further off than this are told as such and not as a date. @source OWN */
const FARTHEST_DAYS = 36_500;

/** The next visit as days of the calendar; `undefined` while the drift tells none, or none within a hundred years. */
export function suggestedVisitOf(drift: TuningDrift, strungOn: string, lastDayCount: number, toleranceCt: number): SuggestedVisit | undefined {
  const next = nextVisitOf(drift, lastDayCount, toleranceCt);
  if (next === undefined || next.dayCount > FARTHEST_DAYS) return undefined;
  const latest = next.latestDayCount === undefined || next.latestDayCount > FARTHEST_DAYS ? {} : { latest: dayAfter(strungOn, next.latestDayCount) };
  return { day: dayAfter(strungOn, next.dayCount), earliest: dayAfter(strungOn, next.earliestDayCount), ...latest };
}

const timeOf = (day: string): number => Date.parse(`${day}T00:00:00Z`);

function daysBetween(from: string, to: string): number {
  return Math.round((timeOf(to) - timeOf(from)) / DAY_MS);
}

function dayAfter(day: string, days: number): string {
  return new Date(timeOf(day) + Math.floor(days) * DAY_MS).toISOString().slice(0, 10);
}

function hoursBetween(from: TuningPass, to: TuningPass): number | undefined {
  if (from.time === null || to.time === null) return undefined;
  const at = ({ day, time }: TuningPass): number => Date.parse(`${day}T${time ?? '00:00'}:00Z`);
  return (at(to) - at(from)) / 3_600_000;
}
