import type { PaperRule, PaperRuleFile } from './rule.ts';

/** Rules a day is judged by. */
export interface RulesOn {
  /** Day the file was issued, ISO 8601. */
  readonly issued: string;
  /** Those of the file, then those the shop added. */
  readonly rules: readonly PaperRule[];
}

/**
 * The rules a day is judged by: those of the newest file issued by then, so that what was shipped keeps the rules it was
 * shipped under; a day before every file goes by the oldest. What the shop added stands beside them.
 * @source OWN
 * @throws RangeError without a file: the one that comes with the program always stands.
 */
export function rulesOn(date: string, files: readonly PaperRuleFile[], own: readonly PaperRule[]): RulesOn {
  const ordered = files.toSorted((a, b) => a.issued.localeCompare(b.issued));
  const file = ordered.findLast(({ issued }) => issued <= date) ?? ordered[0];
  if (file === undefined) throw new RangeError('no file of rules');
  return { issued: file.issued, rules: [...file.rules, ...own] };
}
