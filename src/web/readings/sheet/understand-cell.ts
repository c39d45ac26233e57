import { type Outcome, type QuantityName, outcomes, understandFigure } from '#instrument';
import type { Issue } from '#result';

/** Words a person types for an outcome, in lower case, in every language they may use. */
export type OutcomeWords = ReadonlyMap<string, Outcome>;

/** What a text in a cell means: nothing, an outcome, a figure, or something that cannot stand there. */
export type UnderstoodCell =
  | { readonly kind: 'empty' }
  | { readonly kind: 'outcome'; readonly outcome: Outcome }
  | { readonly kind: 'figure'; readonly typed: string; readonly value: number; readonly converted: boolean; readonly warning?: Issue }
  | { readonly kind: 'refused'; readonly typed: string; readonly issues: readonly Issue[] };

/** Makes the word list out of the catalogue's words; the registry's own names always count. */
export function outcomeWords(words: Iterable<readonly [Outcome, string]>): OutcomeWords {
  return new Map([...outcomes.map((outcome): [string, Outcome] => [outcome.toLowerCase(), outcome]), ...[...words].map(([outcome, word]): [string, Outcome] => [word.toLowerCase(), outcome])]);
}

/** Understands the text of one cell. What was typed is kept as it is, but for space around it. */
export function understandCell(quantity: QuantityName, text: string, options: { readonly path: string; readonly locale: string; readonly words: OutcomeWords }): UnderstoodCell {
  const typed = text.trim();
  if (typed === '') return { kind: 'empty' };
  const outcome = options.words.get(typed.toLowerCase());
  if (outcome !== undefined) return { kind: 'outcome', outcome };
  const figure = understandFigure(quantity, typed, { path: options.path, locale: options.locale });
  if (!figure.ok) return { kind: 'refused', typed, issues: figure.issues };
  return { kind: 'figure', typed, ...figure.value };
}
