export { bibliography, sourceOf } from './bibliography.ts';
export type { Source, SourceAccess, SourceKey } from './bibliography.ts';
export type { PublishedFigure } from './published.ts';
