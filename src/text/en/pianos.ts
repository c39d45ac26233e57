/** English: pianos. ICU MessageFormat. */
export const pianos = {
} as const;
