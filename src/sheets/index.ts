export { sheetNames, sheets } from './sheets.ts';
export type { SheetName } from './sheets.ts';
export type { CareMaterial, Sheet, SheetMaterial } from './sheet.ts';
