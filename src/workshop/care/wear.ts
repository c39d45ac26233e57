import { lifeUsedOf } from '#climate';
import type { CareOf, PartLife } from './records.ts';

/** What the operation `life-used` is given. */
export interface WearInput {
  readonly by: PartLife['by'];
  readonly lifeFrom: number;
  readonly lifeTo: number;
  readonly ageDays: number;
  readonly hoursPerWeek: number;
  readonly intensity: number;
}

/** One part with what of its life it has used, and the days it may be due between. */
export interface WearRow {
  readonly life: PartLife;
  readonly since: string;
  readonly input: WearInput;
  readonly used: number;
  readonly leastPct: number;
  readonly mostPct: number;
  readonly dueFrom?: string;
  readonly dueTo?: string;
}

/** Parts that are as old as the stringing where nobody says otherwise; hammers, pins and block need a day of their own. */
const STRINGS: ReadonlySet<string> = new Set(['trebleStrings', 'bassStrings']);
const DAY_MS = 86_400_000;
/** Days further off are not told as dates. */
const FARTHEST_DAYS = 100 * 366;
const timeOf = (day: string): number => Date.parse(`${day}T00:00:00Z`);

/** Wear of the parts of a plan on a day; parts without a day to count from, or with one that is still to come, are left out. @source PRACTICE */
export function wearOf({ lives, hoursPerWeek, intensity }: Pick<CareOf<'plan'>, 'lives' | 'hoursPerWeek' | 'intensity'>, strungOn: string | null, today: string): readonly WearRow[] {
  return lives.flatMap((life): readonly WearRow[] => {
    const since = life.since ?? (STRINGS.has(life.part) ? strungOn : null);
    if (since === null || since > today) return [];
    const ageDays = Math.round((timeOf(today) - timeOf(since)) / DAY_MS);
    const { used, leastPct, mostPct, dueFromDays, dueToDays } = lifeUsedOf(life, { dayCount: ageDays, hoursPerWeek, intensity });
    const dayAt = (days: number | undefined): string | undefined => (days === undefined || Math.abs(days) > FARTHEST_DAYS ? undefined : new Date(timeOf(today) + Math.round(days) * DAY_MS).toISOString().slice(0, 10));
    const [dueFrom, dueTo] = [dayAt(dueFromDays), dayAt(dueToDays)];
    return [{ life, since, input: { by: life.by, lifeFrom: life.from, lifeTo: life.to, ageDays, hoursPerWeek, intensity }, used, leastPct, mostPct, ...(dueFrom === undefined ? {} : { dueFrom }), ...(dueTo === undefined ? {} : { dueTo }) }];
  });
}
