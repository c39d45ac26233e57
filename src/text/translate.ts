import { de } from './catalogue.de.ts';
import { en } from './catalogue.en.ts';
import { type Catalogue, type Language, type Say, languageOf, sayFrom } from './say.ts';

const catalogues: Readonly<Record<Language, Catalogue>> = { en, de };

/** Makes the function that says messages in one locale, whichever its language: both are at hand. */
export function createSay(locale: string): Say {
  return sayFrom(catalogues[languageOf(locale)], locale);
}
