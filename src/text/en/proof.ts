/** English: proof. ICU MessageFormat. */
export const proof = {
} as const;
