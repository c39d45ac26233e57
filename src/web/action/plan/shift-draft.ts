import { type ActionTerms, actionTermsSchema } from '#instrument';
import { checkInput } from '#operation';
import type { Issue } from '#result';
import { type UnitId, parseMeasure } from '#units';
import type { ShiftTerms } from '#workshop';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

/** What may be tried on every key alike: the unit it is typed in, and how far a step goes. */
export const shiftFields = [
  ['rollerShiftMm', 'mm', 0.25], ['capstanShiftMm', 'mm', 0.5], ['hammerChangeG', 'g', 0.1], ['hammerChangePct', 'pct', 1], ['boreShiftMm', 'mm', 0.5],
] as const satisfies readonly (readonly [keyof ShiftTerms, UnitId, number])[];

/** What must be said of new key tops, and how much of the wood is planed. */
export const topShiftFields = [
  ['topOldMm', 'mm', 0.1], ['topOldGPerMm3', '1', 0.0001], ['topNewMm', 'mm', 0.1], ['topNewGPerMm3', '1', 0.0001], ['topPlanedMm', 'mm', 0.1], ['topAreaMm2', '1', 50], ['topCentroidMm', 'mm', 1],
] as const satisfies readonly (readonly [keyof ShiftTerms, UnitId, number])[];

const all = [...shiftFields, ...topShiftFields];
export type ShiftName = (typeof all)[number][0];

/** What is tried, as typed; an empty text changes nothing. */
export type ShiftDraft = Readonly<Record<ShiftName, string>>;

/** The draft that would give these terms, figures in the reader's locale. */
export function shiftDraftOf(terms: ActionTerms | null, locale: string): ShiftDraft {
  return Object.fromEntries(all.map(([name]) => [name, terms?.[name] == null ? '' : wholeNumber(terms[name], locale)])) as ShiftDraft;
}

export interface ReadShifts {
  /** A field that is wrong counts as not stated. */
  readonly terms: Readonly<Record<ShiftName, number | null>>;
  readonly issues: readonly Issue[];
}

/** What a draft says, and what is wrong with it, by field. */
export function readShifts(draft: ShiftDraft, locale: string): ReadShifts {
  const issues: Issue[] = [];
  const read = all.map(([name, unit]): readonly [ShiftName, number | null] => {
    if (draft[name].trim() === '') return [name, null];
    const parsed = parseMeasure(draft[name], { unit, path: name, locale });
    if (!parsed.ok) {
      issues.push(...parsed.issues);
      return [name, null];
    }
    const checked = checkInput(actionTermsSchema, { [name]: parsed.value.value });
    if (checked.ok) return [name, parsed.value.value];
    issues.push(...checked.issues);
    return [name, null];
  });
  const terms = Object.fromEntries(read) as Record<ShiftName, number | null>;
  if (terms.hammerChangeG === null || terms.hammerChangePct === null) return { terms, issues };
  const both: Issue = { code: 'type', path: 'hammerChangePct', given: draft.hammerChangePct, allowed: 'grams or per cent, not both', params: { reason: 'gramsOrPercent' } };
  return { terms: { ...terms, hammerChangePct: null }, issues: [...issues, both] };
}

/** One step up or down from what is typed; from nothing, from nought. */
export function stepped(typed: string, step: number, direction: 1 | -1, locale: string): string {
  const parsed = typed.trim() === '' ? undefined : parseMeasure(typed, { unit: '1', path: '', locale });
  const now = parsed?.ok === true ? parsed.value.value : 0;
  const next = Math.round((now + direction * step) / step) * step;
  return wholeNumber(Number(next.toFixed(6)), locale);
}
