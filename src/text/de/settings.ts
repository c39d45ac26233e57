import type { settings as english } from '../en/settings.ts';

/** German: settings. ICU MessageFormat. */
export const settings: Readonly<Record<keyof typeof english, string>> = {
};
