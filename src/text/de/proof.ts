import type { proof as english } from '../en/proof.ts';

/** German: proof. ICU MessageFormat. */
export const proof: Readonly<Record<keyof typeof english, string>> = {
};
