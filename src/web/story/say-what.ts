import type { Say } from '#text';
import { sayMaybe } from '../language/say-maybe.ts';

/** Kinds of changes in the words of the log: `Figures`, `Jobs`. */
export function sayWhat(entity: string, say: Say): string {
  return sayMaybe(say, `story.what.${entity}`);
}
