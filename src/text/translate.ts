import { IntlMessageFormat } from 'intl-messageformat';
import { de } from './catalogue.de.ts';
import { type MessageKey, en } from './catalogue.en.ts';

export type Language = 'en' | 'de';
export type MessageValues = Readonly<Record<string, string | number>>;

/** Says a message of the catalogue; ICU MessageFormat, so that counts and choices read right in each language. */
export type Say = (key: MessageKey, values?: MessageValues) => string;

const catalogues: Readonly<Record<Language, Readonly<Record<MessageKey, string>>>> = { en, de };

/** The languages the catalogue speaks. */
export const languages: readonly Language[] = ['en', 'de'];

/** The catalogue language for a BCP 47 locale; English where there is none of its own. */
export function languageOf(locale: string): Language {
  return locale.toLowerCase().startsWith('de') ? 'de' : 'en';
}

/** Makes the function that says messages in one locale. Messages are parsed once, when first said. */
export function createSay(locale: string): Say {
  const catalogue = catalogues[languageOf(locale)];
  const parsed = new Map<MessageKey, IntlMessageFormat>();
  return (key, values) => {
    const message = catalogue[key];
    if (values === undefined && !message.includes('{')) return message;
    let format = parsed.get(key);
    if (format === undefined) {
      format = new IntlMessageFormat(message, locale, undefined, { ignoreTag: true });
      parsed.set(key, format);
    }
    return String(format.format(values));
  };
}

/** True for a key of the catalogue: for keys put together at run time, such as those of operations and quantities. */
export function isMessageKey(key: string): key is MessageKey {
  return Object.hasOwn(en, key);
}
