import { type Compass, type KeyNumber, noteNameOf } from '#instrument';
import type { Say } from '#text';
import { formatMeasure } from '#units';
import { cell } from './build.ts';
import type { Cell } from './document.ts';

/** Decimals of a weight or a length in print; what is reckoned with is never rounded. */
const USUAL_DECIMALS = 1;

/** The language a report is written in. */
export interface Tongue {
  readonly say: Say;
  readonly locale: string;
}

/** A bare number, as in a table whose head names the unit. */
export function bare(value: number, { locale }: Tongue, options: { readonly signed?: boolean; readonly decimals?: number } = {}): string {
  return formatMeasure(value, { locale, decimals: options.decimals ?? USUAL_DECIMALS, signed: options.signed ?? false });
}

/** As many decimals as the figure was stated with: 49 stays 49, 0.75 stays 0.75. */
export function asStated(value: number, { locale }: Tongue): string {
  const decimals = /\.(\d+)$/u.exec(String(value))?.[1]?.length ?? 0;
  return formatMeasure(value, { locale, decimals: Math.min(decimals, 6) });
}

/** A day in the reader's own writing, in UTC so that no machine's clock decides it. */
export function dayOf(iso: string, { locale }: Tongue): string {
  const day = new Date(iso);
  return Number.isNaN(day.getTime()) ? iso : new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(day);
}

/** What is stated, or the words for what is not: never a default. */
export function statedOr(value: string | null | undefined, { say }: Tongue): Cell {
  return value === null || value === undefined || value.trim() === '' ? cell(say('proof.notStated'), 'quiet') : cell(value);
}

/** Note names of keys, neighbours drawn together: `A0–C1, E4`. */
export function noteRuns(keys: readonly KeyNumber[], compass: Compass): string {
  const runs: [KeyNumber, KeyNumber][] = [];
  for (const key of [...keys].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && key === run[1] + 1) run[1] = key;
    else runs.push([key, key]);
  }
  const name = (key: KeyNumber): string => noteNameOf(compass, key);
  return runs.map(([from, to]) => (from === to ? name(from) : to === from + 1 ? `${name(from)}, ${name(to)}` : `${name(from)}–${name(to)}`)).join(', ');
}
