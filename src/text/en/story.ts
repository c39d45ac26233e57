/** English: story. ICU MessageFormat. */
export const story = {
} as const;
