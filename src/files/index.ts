export { MAX_FILE_BYTES } from './limits.ts';
export { planFile } from './plan-file.ts';
export type { PlannedFile } from './plan-file.ts';
export { fileTooLarge, readTable } from './read-table.ts';
export type { TableFile } from './read-table.ts';
export { tableFormats, typeOfFormat, writeTable } from './write-table.ts';
export type { TableFormat, WriteOptions } from './write-table.ts';
export { renderPdf } from './pdf.ts';
export type { Paper } from './pdf.ts';
