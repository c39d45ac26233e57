import { type ActionTerms, type ActionTermsDraft, actionTermsSchema } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import { type UnitId, parseMeasure } from '#units';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

/** Figures of a form as typed; an empty text is not stated. */
export type TypedFigures<Name extends string> = Readonly<Record<Name, string>>;

/** A figure as a field shows it, every decimal of it. */
export function shownFigure(value: number | null | undefined, locale: string): string {
  return value == null ? '' : wholeNumber(value, locale);
}

/** A reader of typed figures: an empty text is null, and what is wrong is gathered in `issues`. */
export function figureReader(locale: string): { readonly issues: readonly Issue[]; readonly read: (typed: string, path: string, unit: UnitId) => number | null } {
  const issues: Issue[] = [];
  const read = (typed: string, path: string, unit: UnitId): number | null => {
    if (typed.trim() === '') return null;
    const parsed = parseMeasure(typed, { unit, path, locale });
    if (parsed.ok) return parsed.value.value;
    issues.push(...parsed.issues);
    return null;
  };
  return { issues, read };
}

/** The terms with a part of them stated anew, checked; the rest stays as it stands. */
export function statedOver(standing: ActionTerms | null, part: ActionTermsDraft, issues: readonly Issue[]): Result<ActionTermsDraft> {
  if (issues.length > 0) return { ok: false, issues };
  const draft: ActionTermsDraft = { ...(standing ?? {}), ...part };
  const checked = checkInput(actionTermsSchema, draft);
  return checked.ok ? ok(draft) : checked;
}
