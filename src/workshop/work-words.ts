import type { LeastWork } from '#action';
import { type ActionTerms, type BenchOperation, type BenchPart, benchParts } from '#instrument';
import { currencyOf, formatMoney } from '#money';
import type { Say } from '#text';
import { formatMeasure } from '#units';
import { benchJobs } from './bench-jobs.ts';

/** Minutes as hours and minutes, to a tenth of a minute: `6 h 55 min`. */
export function sayMinutes(minutes: number, { say, locale }: { readonly say: Say; readonly locale: string }): string {
  const tenths = Math.round(minutes * 10);
  const hours = Math.floor(tenths / 600);
  const rest = tenths - 600 * hours;
  return say('leastWork.time', { hours, minutes: formatMeasure(rest / 10, { locale, decimals: rest % 10 === 0 ? 0 : 1 }) });
}

/** An amount of the shop's money; undefined where it states none. */
export function sayParts(minor: number, terms: Pick<ActionTerms, 'currency'> | null, locale: string): string | undefined {
  const currency = currencyOf(terms?.currency ?? '');
  return currency === undefined ? undefined : formatMoney({ minor, currency }, locale);
}

/** What a plan uses up, in words: `19 rollers`. */
export function partsNeeded({ stages }: Pick<LeastWork, 'stages'>, say: Say): readonly string[] {
  const counts = new Map<BenchPart, number>();
  for (const { operation, keys } of stages.flatMap(({ operations }) => operations)) {
    const { part } = benchJobs[operation as BenchOperation];
    if (part !== undefined) counts.set(part, (counts.get(part) ?? 0) + keys.length);
  }
  return benchParts.flatMap((part) => {
    const count = counts.get(part);
    return count === undefined ? [] : [say(`benchPart.${part}`, { count })];
  });
}
