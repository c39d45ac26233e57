import { drillingSheet } from './drilling-sheet.ts';
import { leastWorkSheet } from './least-work-sheet.ts';
import { regulationSheet } from './regulation-sheet.ts';
import type { Sheet } from './sheet.ts';
import { tuningSheet } from './tuning-sheet.ts';

/** Every sheet for the bench, by the name commands and routes know it by. */
export const sheets = { leastWork: leastWorkSheet, drilling: drillingSheet, regulation: regulationSheet, tuning: tuningSheet } as const satisfies Readonly<Record<string, Sheet>>;
export type SheetName = keyof typeof sheets;

/** The names, in the order lists show them. */
export const sheetNames = Object.keys(sheets) as readonly SheetName[];
