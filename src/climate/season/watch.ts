import type { Percent } from '#units';

/** Humidity at one hour of a log, counted from any beginning. */
export interface HumidityAt {
  readonly hourCount: number;
  readonly humidityPct: Percent;
}

/** What is let pass: a band, and how much it may change within a day. */
export interface Band {
  readonly lowPct: Percent;
  readonly highPct: Percent;
  readonly dayChangePct: Percent;
}

/** A stretch of hours outside the band, or a day that changed too fast. */
export interface Alarm {
  readonly what: 'dry' | 'damp' | 'fast';
  readonly fromHourCount: number;
  readonly toHourCount: number;
  /** Lowest or highest humidity of the stretch, or the change. */
  readonly worstPct: number;
}

/** What a log tells of the band. */
export interface Watch {
  readonly hours: number;
  readonly dryHours: number;
  readonly dampHours: number;
  readonly fastHours: number;
  readonly alarms: readonly Alarm[];
}

/** Hours within which a change counts as fast. */
const WITHIN_HOURS = 24;
/** A log with a hole longer than this has no stretch across it. */
const LONGEST_GAP_HOURS = 6;

/**
 * Hours outside the band and hours at the end of a day that changed by more than is let pass, as stretches. A change is the highest less
 * the lowest humidity of the last 24 hours. Each reading counts for one hour. Oldest first.
 * @source OWN
 */
export function watchOf(log: readonly HumidityAt[], { lowPct, highPct, dayChangePct }: Band): Watch {
  const swings = swingsOf(log);
  const dry = stretchesOf(log, 'dry', ({ humidityPct }) => humidityPct < lowPct, ({ humidityPct }) => humidityPct, Math.min);
  const damp = stretchesOf(log, 'damp', ({ humidityPct }) => humidityPct > highPct, ({ humidityPct }) => humidityPct, Math.max);
  const fast = stretchesOf(log, 'fast', (_, index) => (swings[index] ?? 0) > dayChangePct, (_, index) => swings[index] ?? 0, Math.max);
  const alarms = [...dry.alarms, ...damp.alarms, ...fast.alarms].sort((a, b) => a.fromHourCount - b.fromHourCount);
  return { hours: log.length, dryHours: dry.hours, dampHours: damp.hours, fastHours: fast.hours, alarms };
}

type Of<T> = (at: HumidityAt, index: number) => T;

function stretchesOf(log: readonly HumidityAt[], what: Alarm['what'], isOut: Of<boolean>, valueOf: Of<number>, worse: (a: number, b: number) => number): { readonly hours: number; readonly alarms: readonly Alarm[] } {
  const alarms: Alarm[] = [];
  let hours = 0;
  let open: Alarm | undefined;
  log.forEach((at, index) => {
    if (open !== undefined && (!isOut(at, index) || at.hourCount - open.toHourCount > LONGEST_GAP_HOURS)) {
      alarms.push(open);
      open = undefined;
    }
    if (!isOut(at, index)) return;
    hours += 1;
    open = { what, fromHourCount: open?.fromHourCount ?? at.hourCount, toHourCount: at.hourCount, worstPct: worse(open?.worstPct ?? valueOf(at, index), valueOf(at, index)) };
  });
  return { hours, alarms: open === undefined ? alarms : [...alarms, open] };
}

/** Highest less lowest humidity of the 24 hours up to each reading, by two queues of candidates. */
function swingsOf(log: readonly HumidityAt[]): readonly number[] {
  const [lows, highs]: [number[], number[]] = [[], []];
  const [heads, value] = [{ low: 0, high: 0 }, (index: number | undefined): number => log[index ?? -1]?.humidityPct ?? Number.NaN];
  const within = (index: number | undefined, hourCount: number): boolean => hourCount - (log[index ?? -1]?.hourCount ?? -Infinity) <= WITHIN_HOURS;
  return log.map(({ hourCount, humidityPct }, index) => {
    while (lows.length > heads.low && value(lows.at(-1)) >= humidityPct) lows.pop();
    while (highs.length > heads.high && value(highs.at(-1)) <= humidityPct) highs.pop();
    lows.push(index);
    highs.push(index);
    while (!within(lows[heads.low], hourCount)) heads.low += 1;
    while (!within(highs[heads.high], hourCount)) heads.high += 1;
    return value(highs[heads.high]) - value(lows[heads.low]);
  });
}
