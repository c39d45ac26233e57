import { type ScaleTerms, type ScaleTermsDraft, scaleTermsSchema } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import { type UnitId, parseMeasure } from '#units';
import { wholeNumber } from '../readings/grid/grid-block.ts';

/** The figures stated and asked of the bearing, with the unit each is typed in. */
export const bearingTermFigures = [
  ['bearingTargetDeg', 'deg'], ['bearingToleranceDeg', 'deg'], ['heightUncertaintyMm', 'mm'], ['lengthUncertaintyMm', 'mm'],
  ['gaugeFrontSpanMm', 'mm'], ['gaugeRearSpanMm', 'mm'], ['boardStiffnessNPerMm', '1'], ['boardStiffnessUncertaintyNPerMm', '1'],
] as const satisfies readonly (readonly [keyof ScaleTerms, UnitId])[];
export type BearingTermName = (typeof bearingTermFigures)[number][0];

/** The form as typed; an empty text is not stated. */
export type BearingTermsForm = Readonly<Record<BearingTermName, string>>;

/** The form that shows these terms, figures in the reader's locale. */
export function bearingFormOf(terms: ScaleTerms | null, locale: string): BearingTermsForm {
  return Object.fromEntries(bearingTermFigures.map(([name]) => [name, terms?.[name] == null ? '' : wholeNumber(terms[name], locale)])) as BearingTermsForm;
}

/** The terms a form states, over what stands of the strings; or which fields are wrong. */
export function bearingTermsOf(form: BearingTermsForm, standing: ScaleTerms | null, locale: string): Result<ScaleTermsDraft> {
  const issues: Issue[] = [];
  const figures = Object.fromEntries(bearingTermFigures.map(([name, unit]) => {
    if (form[name].trim() === '') return [name, null];
    const parsed = parseMeasure(form[name], { unit, path: name, locale });
    if (parsed.ok) return [name, parsed.value.value];
    issues.push(...parsed.issues);
    return [name, null];
  }));
  if (issues.length > 0) return { ok: false, issues };
  const draft: ScaleTermsDraft = { ...(standing ?? {}), ...figures };
  const checked = checkInput(scaleTermsSchema, draft);
  return checked.ok ? ok(draft) : checked;
}
