export { bibliography, sourceOf } from './bibliography.ts';
export type { Source, SourceAccess, SourceKey } from './bibliography.ts';
export { exactly, figuresFrom, printedTo } from './published.ts';
export type { PublishedCase, PublishedFigure, Tolerance } from './published.ts';
