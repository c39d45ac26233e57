import { type Instrument, type Reading, checkPlace, compassOf, isQuantityName, outcomes, understandFigure } from '#instrument';
import { type Issue, type Result, all, ok, refuse } from '#result';
import { type FigurePlace, placeText, type readingBatchSchema } from '#workshop';
import type { z } from 'zod';

export type Batch = z.output<typeof readingBatchSchema>;
type Entry = Batch['entries'][number];

/** One cell as it was understood: where it belongs and what shall stand there; null clears it. */
export interface Understood {
  readonly path: string;
  readonly place: FigurePlace;
  readonly placeText: string;
  readonly entry: Entry;
  readonly figure: Pick<Reading, 'typed' | 'value' | 'outcome'> | null;
  readonly warning?: Issue;
}

/** Understands every cell of a batch, or says of each bad one what was given and what is allowed. */
export function understandBatch(batch: Batch, instrument: Instrument): Result<readonly Understood[]> {
  const cells = all(batch.entries.map((entry, index) => understandEntry(batch, entry, `entries[${String(index)}]`, instrument)));
  if (!cells.ok) return cells;
  const twice = repeated(cells.value);
  return twice.length > 0 ? refuse(...twice) : cells;
}

function understandEntry(batch: Batch, entry: Entry, path: string, instrument: Instrument): Result<Understood> {
  const place = checkPlace(entry.quantity, entry, compassOf(instrument), path);
  const { quantity, scope, index, repeat } = entry;
  if (!isQuantityName(quantity)) return { ok: false, issues: place.ok ? [] : place.issues };
  const figure = figureOf(batch, entry, path);
  if (!place.ok || !figure.ok) return { ok: false, issues: [...(place.ok ? [] : place.issues), ...(figure.ok ? [] : figure.issues)] };
  const { cycle, state } = batch;
  const whole = { cycle, state, quantity, scope, index, repeat };
  return ok({ path, place: whole, placeText: placeText(whole), entry, ...figure.value });
}

/** Exactly one of the three: typed text, an outcome, or `clear`. */
function figureOf(batch: Batch, entry: Entry, path: string): Result<Pick<Understood, 'figure' | 'warning'>> {
  const { typed, outcome, clear, quantity } = entry;
  const given = { typed, outcome, clear };
  const stated = Object.values(given).filter((value) => value !== undefined).length;
  const allowed = `exactly one of typed, outcome (${outcomes.join(', ')}) and clear`;
  if (stated !== 1) return refuse({ code: stated === 0 ? 'required' : 'conflict', path, given: stated === 0 ? undefined : given, allowed });
  if (clear === true) return ok({ figure: null });
  if (typed === undefined) return ok({ figure: { typed: null, value: null, outcome: outcome ?? null } });
  const understood = understandFigure(quantity, typed, { path: `${path}.typed`, ...(batch.locale === undefined ? {} : { locale: batch.locale }) });
  if (!understood.ok) return understood;
  const { value, warning } = understood.value;
  return ok({ figure: { typed, value, outcome: null }, ...(warning === undefined ? {} : { warning }) });
}

function repeated(cells: readonly Understood[]): readonly Issue[] {
  const first = new Map<string, string>();
  return cells.flatMap(({ path, placeText: place }): readonly Issue[] => {
    const earlier = first.get(place);
    if (earlier !== undefined) return [{ code: 'duplicate', path, given: place, allowed: `each place once; ${earlier} is the same` }];
    first.set(place, path);
    return [];
  });
}

