import { type Language, type Say, type Words, languageOf, loadCatalogue, loadFirstWords, sayFrom } from '#text';

const whole = new Set<Language>();
const known = new Map<Language, Words>();
const says = new Map<string, Say>();
const listeners = new Set<() => void>();

function keep(language: Language, words: Words): void {
  known.set(language, words);
  for (const locale of says.keys()) if (languageOf(locale) === language) says.delete(locale);
  for (const listener of listeners) listener();
}

/** Fetches what the first page says in a language, unless it is here; nothing is said in it before. */
export async function learnFirst(language: Language): Promise<void> {
  if (known.has(language)) return;
  const words = await loadFirstWords(language);
  if (!known.has(language)) keep(language, words);
}

/** Fetches all words of a language, unless they are here. */
export async function learn(language: Language): Promise<void> {
  if (whole.has(language)) return;
  const words = await loadCatalogue(language);
  whole.add(language);
  keep(language, words);
}

/** Calls back when more words have come; returns how to stop. */
export function onWords(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Says messages in one locale, whose language was learnt; the same function until more words come. */
export function sayIn(locale: string): Say {
  const made = says.get(locale);
  if (made !== undefined) return made;
  const words = known.get(languageOf(locale));
  if (words === undefined) throw new Error(`the words for ${locale} are not here yet`);
  const say = sayFrom(words, locale);
  says.set(locale, say);
  return say;
}
