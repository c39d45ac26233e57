/** English: operations. ICU MessageFormat. */
export const operations = {
} as const;
