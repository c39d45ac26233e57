import { type ActionTerms, actionTermsSchema } from '#instrument';
import { checkInput } from '#operation';
import type { Issue } from '#result';
import { type UnitId, parseMeasure } from '#units';
import type { ShiftTerms } from '#workshop';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import { fromGPerCm3, isDensity, issueAsTyped, shownDensity } from '../terms/densities.ts';
import { shownFigure } from '../terms/typed-figures.ts';

/** What may be tried on every key alike: the unit it is typed in, and how far a step goes. */
export const shiftFields = [
  ['rollerShiftMm', 'mm', 0.25], ['capstanShiftMm', 'mm', 0.5], ['hammerChangeG', 'g', 0.1], ['hammerChangePct', 'pct', 1], ['boreShiftMm', 'mm', 0.5],
] as const satisfies readonly (readonly [keyof ShiftTerms, UnitId, number])[];

/** What must be said of new key tops, and how much of the wood is planed. */
export const topShiftFields = [
  ['topOldMm', 'mm', 0.1], ['topOldGPerMm3', 'gcm3', 0.05], ['topNewMm', 'mm', 0.1], ['topNewGPerMm3', 'gcm3', 0.05], ['topPlanedMm', 'mm', 0.1], ['topAreaMm2', '1', 50], ['topCentroidMm', 'mm', 1],
] as const satisfies readonly (readonly [keyof ShiftTerms, UnitId, number])[];

const all = [...shiftFields, ...topShiftFields];
export type ShiftName = (typeof all)[number][0];

/** What is tried, as typed; an empty text changes nothing. */
export type ShiftDraft = Readonly<Record<ShiftName, string>>;

/** The draft that would give these terms, figures in the reader's locale. */
export function shiftDraftOf(terms: ActionTerms | null, locale: string): ShiftDraft {
  return Object.fromEntries(all.map(([name]) => [name, isDensity(name) ? shownDensity(terms?.[name], locale) : shownFigure(terms?.[name], locale)])) as ShiftDraft;
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
    const value = isDensity(name) ? fromGPerCm3(parsed.value.value) : parsed.value.value;
    const checked = checkInput(actionTermsSchema, { [name]: value });
    if (checked.ok) return [name, value];
    issues.push(...checked.issues.map(issueAsTyped));
    return [name, null];
  });
  const terms = Object.fromEntries(read) as Record<ShiftName, number | null>;
  if (terms.hammerChangeG === null || terms.hammerChangePct === null) return { terms, issues };
  const both: Issue = { code: 'type', path: 'hammerChangePct', given: draft.hammerChangePct, allowed: 'grams or per cent, not both', params: { reason: 'gramsOrPercent' } };
  return { terms: { ...terms, hammerChangePct: null }, issues: [...issues, both] };
}

/** One step up or down from what is typed; from nothing, from nought. */
export function stepped(typed: string, { unit, step }: { readonly unit: UnitId; readonly step: number }, direction: 1 | -1, locale: string): string {
  const parsed = typed.trim() === '' ? undefined : parseMeasure(typed, { unit, path: '', locale });
  const now = parsed?.ok === true ? parsed.value.value : 0;
  const next = Math.round((now + direction * step) / step) * step;
  return wholeNumber(Number(next.toFixed(6)), locale);
}
