/** How a part of the piano wears: by the hours it is played or by the years it stands, from the first to the last it may be expected to go. */
export interface Life {
  readonly by: 'hours' | 'years';
  readonly from: number;
  readonly to: number;
}

/** How a part is used. */
export interface Use {
  /** Days since the part was new or was last seen to. */
  readonly dayCount: number;
  readonly hoursPerWeek: number;
  /** 1 for usual playing, more for hard. */
  readonly intensity: number;
}

/** What of its life a part has used, and when it will be due. */
export interface LifeUsed {
  /** Hours played, weighted by how hard, or years. */
  readonly used: number;
  /** Of the longest life and of the shortest; per cent, more than 100 once it is over. */
  readonly leastPct: number;
  readonly mostPct: number;
  /** Days from now until the shortest and the longest life are over, below nought once they are; absent where nothing is used. */
  readonly dueFromDays?: number;
  readonly dueToDays?: number;
}

const DAYS_PER_WEEK = 7;
const DAYS_PER_YEAR = 365.25;

/**
 * Wear that adds up evenly: used = days·hours a week/7·intensity, or days/365.25. Share = used/life; days left = (life − used)/(used per day).
 * A model of first order: lives differ more between pianos than any formula knows.
 * @source PRACTICE
 */
export function lifeUsedOf({ by, from, to }: Life, { dayCount, hoursPerWeek, intensity }: Use): LifeUsed {
  const perDay = by === 'years' ? 1 / DAYS_PER_YEAR : (hoursPerWeek * intensity) / DAYS_PER_WEEK;
  const used = dayCount * perDay;
  const left = (life: number): number => (life - used) / perDay;
  return { used, leastPct: (100 * used) / to, mostPct: (100 * used) / from, ...(Number.isFinite(left(to)) ? { dueFromDays: left(from), dueToDays: left(to) } : {}) };
}
