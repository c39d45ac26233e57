export { buildReport, cell, opening } from './build.ts';
export type { Block, Cell, Column, FigureBlock, FigureName, Furniture, HeadingBlock, HeadlineBlock, KeyValuesBlock, ListBlock, NoteBlock, PageBreakBlock, ParagraphBlock, ReportDocument, TableBlock, Tone } from './document.ts';
export { textOf } from './text.ts';
export { asStated, bare, dayOf, noteRuns, statedOr } from './words.ts';
export type { Tongue } from './words.ts';
