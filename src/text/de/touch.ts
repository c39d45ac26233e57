import type { touch as english } from '../en/touch.ts';

/** German: touch. ICU MessageFormat. */
export const touch: Readonly<Record<keyof typeof english, string>> = {
};
