import { moveSheet } from './care/move-sheet.ts';
import { ownerSheet } from './care/owner-sheet.ts';
import { drillingSheet } from './drilling-sheet.ts';
import { leastWorkSheet } from './least-work-sheet.ts';
import { papersSheet } from './papers-sheet.ts';
import { regulationSheet } from './regulation-sheet.ts';
import { roomSheet } from './room-sheet.ts';
import type { Sheet } from './sheet.ts';
import { surveySheet } from './survey-sheet.ts';
import { tuningSheet } from './tuning-sheet.ts';

/** Every sheet for the bench, by the name commands and routes know it by. */
export const sheets = { leastWork: leastWorkSheet, drilling: drillingSheet, regulation: regulationSheet, tuning: tuningSheet, survey: surveySheet, papers: papersSheet, room: roomSheet, owner: ownerSheet, move: moveSheet } as const satisfies Readonly<Record<string, Sheet>>;
export type SheetName = keyof typeof sheets;

/** The names, in the order lists show them. */
export const sheetNames = Object.keys(sheets) as readonly SheetName[];
