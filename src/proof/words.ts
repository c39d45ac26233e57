import { type Compass, type KeyNumber, type TouchIntent, noteNameOf } from '#instrument';
import { type Cell, cell } from '#report';
import type { Say } from '#text';
import { formatMeasure } from '#units';

/** Decimals of weights in print; what is reckoned with is never rounded. */
const WEIGHT_DECIMALS = 1;

interface Tongue {
  readonly say: Say;
  readonly locale: string;
}

/** A weight with its unit. */
export function grams(value: number, { locale }: Tongue, options: { readonly signed?: boolean; readonly decimals?: number } = {}): string {
  return formatMeasure(value, { locale, unit: 'g', decimals: options.decimals ?? WEIGHT_DECIMALS, signed: options.signed ?? false });
}

/** A bare number, as in a table whose head names the unit. */
export function bare(value: number, { locale }: Tongue, options: { readonly signed?: boolean; readonly decimals?: number } = {}): string {
  return formatMeasure(value, { locale, decimals: options.decimals ?? WEIGHT_DECIMALS, signed: options.signed ?? false });
}

/** As many decimals as the figure was stated with: 49 stays 49, 0.75 stays 0.75. */
export function asStated(value: number, { locale }: Tongue): string {
  const decimals = /\.(\d+)$/u.exec(String(value))?.[1]?.length ?? 0;
  return formatMeasure(value, { locale, decimals: Math.min(decimals, 6) });
}

/** The same with grams behind it. */
export function statedGrams(value: number, tongue: Tongue): string {
  return `${asStated(value, tongue)}\u00A0g`;
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

/** What was asked for, in words: `down weight 49 ± 2 g`. */
export function intentWords(intent: TouchIntent, compass: Compass, tongue: Tongue): string {
  const { say } = tongue;
  const tolerance = asStated(intent.toleranceG, tongue);
  if (intent.even !== 'curve') return say(`proof.intent.${intent.even}`, { target: asStated(intent.targetG, tongue), tolerance });
  const anchors = intent.anchors.map(({ key, downWeightG }) => `${noteNameOf(compass, key)} ${statedGrams(downWeightG, tongue)}`).join(', ');
  return say('proof.intent.curve', { anchors, tolerance });
}
