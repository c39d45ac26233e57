import type { ChangeKind, SingleChange, WorkDone } from '#action';
import type { Say } from '#text';
import { decimalsFor } from '../../story/say-event.ts';

type Figures = (value: number, decimals: number, unit?: 'g', signed?: boolean) => string;

/** Kinds of change in the order of the bench. */
export const stageKinds = ['friction', 'ratio', 'hammer', 'front'] as const satisfies readonly ChangeKind[];

/** Minutes as hours and minutes: `6 h 55 min`. */
export function sayTime(say: Say, figure: Figures, minutes: number): string {
  const tenths = Math.round(minutes * 10) / 10;
  const hours = Math.floor(tenths / 60);
  const rest = Math.round((tenths - 60 * hours) * 10) / 10;
  return say('leastWork.time', { hours, minutes: figure(rest, decimalsFor(rest, 1)) });
}

/** What a job is to do at a key: `friction −4.0 g`. */
export function sayChange(say: Say, figure: Figures, { changes, changeG, ratioChange }: WorkDone | SingleChange): string {
  return say(`leastWork.change.${changes}`, { by: ratioChange === undefined ? figure(changeG ?? 0, 1, 'g', true) : figure(ratioChange, 2, undefined, true) });
}
