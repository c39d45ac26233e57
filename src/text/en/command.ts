/** English: command. ICU MessageFormat. */
export const command = {
} as const;
