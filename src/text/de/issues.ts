import type { issues as english } from '../en/issues.ts';

/** German: issues. ICU MessageFormat. */
export const issues: Readonly<Record<keyof typeof english, string>> = {
};
