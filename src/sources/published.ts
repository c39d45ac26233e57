import type { SourceKey } from './bibliography.ts';

/** A figure that someone outside this program worked out, and the way this program works out the same. */
export interface PublishedFigure {
  /** What is compared, with its unit. */
  readonly what: string;
  readonly source: SourceKey;
  /** Page, table or item of the source. */
  readonly place: string;
  readonly given: string;
  readonly expected: number;
  /** Largest difference that still counts as the same. */
  readonly tolerance: number;
  /** Why the tolerance is what it is. */
  readonly because: string;
  readonly found: () => number;
}
