import { useSyncExternalStore } from 'react';
import type { Language, Say } from '#text';
import { type UnitId, formatMeasure } from '#units';
import { preferences, usePreferences } from '../theme/preferences.ts';
import { onWords, sayIn } from './catalogue.ts';

export { sayMaybe } from './say-maybe.ts';

const locales = new Map<Language, string>();
globalThis.addEventListener('languagechange', () => { locales.clear(); });

/** The locale numbers and dates are shown in: the browser's own where it agrees with the language chosen. Asked once, since every figure on a page is shown in it. */
export function localeOf(language: Language): string {
  const known = locales.get(language);
  if (known !== undefined) return known;
  const found = ownLocaleOf(language);
  locales.set(language, found);
  return found;
}

function ownLocaleOf(language: Language): string {
  const own = navigator.languages.find((tag) => tag.toLowerCase().split('-')[0] === language);
  return own ?? (language === 'en' ? 'en-GB' : 'de-DE');
}

export function useLocale(): string {
  return localeOf(usePreferences().language);
}

/** Says messages of the catalogue in the language chosen; a component that uses it follows a change of language, and words that come later. */
export function useSay(): Say {
  const locale = useLocale();
  return useSyncExternalStore(onWords, () => sayIn(locale));
}

/** For what speaks outside a component, such as a toast. */
export function sayNow(): Say {
  return sayIn(localeOf(preferences().language));
}

/** Prints figures in the reader's locale; what is stored stays as it is. */
export function useFigures(): (value: number, decimals: number, unit?: UnitId, signed?: boolean) => string {
  const locale = useLocale();
  return (value, decimals, unit, signed = false) => formatMeasure(value, { locale, decimals, signed, ...(unit === undefined ? {} : { unit }) });
}

/** Days of the calendar in the reader's own writing; a day has no clock, so no time zone moves it. */
export function useDays(): (iso: string) => string {
  const locale = useLocale();
  return (iso) => new Date(iso).toLocaleDateString(locale, { dateStyle: 'long', timeZone: 'UTC' });
}

/** Prints a moment as date and time of the reader's own clock. */
export function useMoments(): (iso: string) => string {
  const locale = useLocale();
  return (iso) => new Date(iso).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short' });
}
