/** English: issues. ICU MessageFormat. */
export const issues = {
} as const;
