/** English: touch. ICU MessageFormat. */
export const touch = {
} as const;
