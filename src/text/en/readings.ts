/** English: readings. ICU MessageFormat. */
export const readings = {
} as const;
