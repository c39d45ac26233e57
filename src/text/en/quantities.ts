/** English: quantities. ICU MessageFormat. */
export const quantities = {
} as const;
