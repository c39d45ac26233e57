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

/** How far a figure may lie off, and why. */
export type Tolerance = Pick<PublishedFigure, 'tolerance' | 'because'>;

/** One row of a source: what, given what, the figure there, and the way to the same figure here. */
export type PublishedCase = readonly [what: string, given: string, expected: number, found: () => number];

/** Not a last place of difference. */
export const exactly: Tolerance = { tolerance: 0, because: 'exact in binary' };

/** Half a unit of the last decimal the source prints. */
export const printedTo = (decimals: number): Tolerance => ({ tolerance: 0.5 * 10 ** -decimals, because: `printed to ${String(decimals)} decimal${decimals === 1 ? '' : 's'}` });

/** Rows of one source and place that share a tolerance. */
export const figuresFrom = (source: SourceKey, place: string, tolerance: Tolerance, ...cases: readonly PublishedCase[]): readonly PublishedFigure[] =>
  cases.map(([what, given, expected, found]) => ({ source, place, what, given, expected, found, ...tolerance }));
