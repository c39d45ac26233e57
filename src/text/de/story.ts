import type { story as english } from '../en/story.ts';

/** German: story. ICU MessageFormat. */
export const story: Readonly<Record<keyof typeof english, string>> = {
};
