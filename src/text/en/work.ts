/** English: work. ICU MessageFormat. */
export const work = {
} as const;
