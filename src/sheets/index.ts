export { sheetNames, sheets } from './sheets.ts';
export type { SheetName } from './sheets.ts';
export type { Sheet, SheetMaterial } from './sheet.ts';
