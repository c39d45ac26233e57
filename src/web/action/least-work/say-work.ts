import type { ChangeKind, SingleChange, WorkDone } from '#action';
import type { Say } from '#text';

type Figures = (value: number, decimals: number, unit?: 'g', signed?: boolean) => string;

/** Kinds of change in the order of the bench. */
export const stageKinds = ['friction', 'ratio', 'hammer', 'front'] as const satisfies readonly ChangeKind[];

/** What a job is to do at a key: `friction −4.0 g`. */
export function sayChange(say: Say, figure: Figures, { changes, changeG, ratioChange }: WorkDone | SingleChange): string {
  return say(`leastWork.change.${changes}`, { by: ratioChange === undefined ? figure(changeG ?? 0, 1, 'g', true) : figure(ratioChange, 2, undefined, true) });
}
