import type { readings as english } from '../en/readings.ts';

/** German: readings. ICU MessageFormat. */
export const readings: Readonly<Record<keyof typeof english, string>> = {
};
