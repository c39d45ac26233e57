import { IntlMessageFormat } from 'intl-messageformat';
import type { MessageKey } from './catalogue.en.ts';

export type Language = 'en' | 'de';
export type MessageValues = Readonly<Record<string, string | number>>;
export type Catalogue = Readonly<Record<MessageKey, string>>;
/** The words that have come so far: the whole catalogue, or only what the first page needs. */
export type Words = Readonly<Partial<Record<MessageKey, string>>>;

/** Says a message of the catalogue; ICU MessageFormat, so that counts and choices read right in each language. */
export interface Say {
  (key: MessageKey, values?: MessageValues): string;
  /** True for a key of the catalogue: for keys put together at run time, such as those of operations and quantities. */
  readonly knows: (key: string) => key is MessageKey;
}

/** The languages the catalogue speaks. */
export const languages: readonly Language[] = ['en', 'de'];

/** The catalogue language for a BCP 47 locale; English where there is none of its own. */
export function languageOf(locale: string): Language {
  return locale.toLowerCase().startsWith('de') ? 'de' : 'en';
}

/** Fetches the messages of one language alone: a page needs no other. */
export async function loadCatalogue(language: Language): Promise<Catalogue> {
  return language === 'de' ? (await import('./catalogue.de.ts')).de : (await import('./catalogue.en.ts')).en;
}

/** Fetches only the messages the first page and the frame around every page need. */
export async function loadFirstWords(language: Language): Promise<Words> {
  return language === 'de' ? (await import('./first.de.ts')).first : (await import('./first.en.ts')).first;
}

/** Makes the function that says messages in one locale; one whose words are still on their way is empty. Messages are parsed once, when first said. */
export function sayFrom(words: Words, locale: string): Say {
  const parsed = new Map<MessageKey, IntlMessageFormat>();
  const say = (key: MessageKey, values?: MessageValues): string => {
    const message = words[key] ?? '';
    if (values === undefined && !message.includes('{')) return message;
    let format = parsed.get(key);
    if (format === undefined) {
      format = new IntlMessageFormat(message, locale, undefined, { ignoreTag: true });
      parsed.set(key, format);
    }
    return String(format.format(values));
  };
  return Object.assign(say, { knows: (key: string): key is MessageKey => Object.hasOwn(words, key) });
}
