import { type Result, all, map, under } from '#result';
import { alongKeysOf } from './along-keys.ts';
import { FENCE } from './evenness.ts';

/** What is looked through for keys that stand out; a buzz shows as sound between the partials. */
export const outlierFigures = ['betweenPartialsDb', 'attackNoiseDb', 'beatDepthDb', 'unisonSpreadCents'] as const;
export type OutlierFigure = (typeof outlierFigures)[number];

/** Figures of one key, as far as they were measured. */
export type OutlierNote = { readonly key: number } & { readonly [figure in OutlierFigure]?: number | undefined };

/** A key that stands out, in what, and how far. */
export interface ToneOutlier {
  readonly key: number;
  readonly figure: OutlierFigure;
  readonly value: number;
  readonly curve: number;
  readonly offset: number;
  readonly scatters: number;
}

/** Offsets smaller than this are never called: what one strike and the next differ by. Common practice, no source. */
const LEAST_OFFSET: Readonly<Record<OutlierFigure, number>> = { betweenPartialsDb: 3, attackNoiseDb: 3, beatDepthDb: 3, unisonSpreadCents: 0.5 };

/** Keys that stand above the curve through their neighbours by more than 3.5 scatters, in each figure that six keys and more have. Most striking first. */
export function toneOutliersOf(notes: readonly OutlierNote[], lambda?: number): Result<readonly ToneOutlier[]> {
  const rows = outlierFigures.map((figure) => {
    const figures = notes.flatMap(({ key, [figure]: value }) => (value === undefined ? [] : [{ key, value }]));
    return { figure, figures };
  }).filter(({ figures }) => figures.length >= 6);
  const found = rows.map(({ figure, figures }) => {
    const along = alongKeysOf(figures, lambda);
    if (!along.ok) return { ok: false as const, issues: under('', along.issues) };
    const floor = LEAST_OFFSET[figure];
    return map(along, ({ keys, scatter }) => keys.filter(({ offset }) => offset > Math.max(FENCE * scatter, floor))
      .map(({ key, value, curve, offset }): ToneOutlier => ({ key, figure, value, curve, offset, scatters: offset / Math.max(scatter, floor / FENCE) })));
  });
  return map(all(found), (lists) => lists.flat().sort((a, b) => b.scatters - a.scatters));
}
