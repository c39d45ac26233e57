import { type Catalogue, type Language, type Say, languageOf, loadCatalogue, sayFrom } from '#text';

const catalogues = new Map<Language, Catalogue>();
const says = new Map<string, Say>();

/** Fetches the words of a language, unless they are here; nothing is said in it before. */
export async function learn(language: Language): Promise<void> {
  if (!catalogues.has(language)) catalogues.set(language, await loadCatalogue(language));
}

/** Says messages in one locale, whose language was learnt. */
export function sayIn(locale: string): Say {
  const known = says.get(locale);
  if (known !== undefined) return known;
  const catalogue = catalogues.get(languageOf(locale));
  if (catalogue === undefined) throw new Error(`the words for ${locale} are not here yet`);
  const made = sayFrom(catalogue, locale);
  says.set(locale, made);
  return made;
}
