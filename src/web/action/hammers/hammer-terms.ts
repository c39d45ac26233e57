import type { ActionTerms, ActionTermsDraft } from '#instrument';
import type { Result } from '#result';
import type { UnitId } from '#units';
import { type TypedFigures, figureReader, shownFigure, statedOver } from '../terms/typed-figures.ts';

/** The figures of use and wear, with the unit each is typed in. */
export const wearFigures = [
  ['hoursPerWeek', '1'], ['hammerAgeYears', '1'], ['reshapeCount', '1'], ['reshapeHours', '1'], ['mostReshapes', '1'], ['leastFeltBassMm', 'mm'], ['leastFeltTrebleMm', 'mm'],
] as const satisfies readonly (readonly [keyof ActionTerms, UnitId])[];
export type WearName = (typeof wearFigures)[number][0];

/** Use and wear of the hammers, as typed. */
export interface HammerForm extends TypedFigures<WearName> {
  readonly hammerUse: NonNullable<ActionTerms['hammerUse']> | '';
}

/** The form that shows these terms, figures in the reader's locale. */
export function hammerFormOf(terms: ActionTerms | null, locale: string): HammerForm {
  const figures = Object.fromEntries(wearFigures.map(([name]) => [name, shownFigure(terms?.[name], locale)])) as TypedFigures<WearName>;
  return { ...figures, hammerUse: terms?.hammerUse ?? '' };
}

/** The terms a form states, over what stands of the rest of the action; or which fields are wrong. */
export function hammerTermsOf(form: HammerForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> {
  const reader = figureReader(locale);
  const figures = Object.fromEntries(wearFigures.map(([name, unit]) => [name, reader.read(form[name], name, unit)]));
  return statedOver(standing, { ...figures, hammerUse: form.hammerUse === '' ? null : form.hammerUse }, reader.issues);
}
