/** English: settings. ICU MessageFormat. */
export const settings = {
} as const;
