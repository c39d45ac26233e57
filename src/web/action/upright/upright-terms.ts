import type { ActionTerms, ActionTermsDraft } from '#instrument';
import type { Result } from '#result';
import type { UnitId } from '#units';
import { type TypedFigures, figureReader, shownFigure, statedOver } from '../terms/typed-figures.ts';

/** What is stated of an upright for all keys, with the unit each is typed in. */
export const uprightFigures = [['buttMm', 'mm'], ['tiltDeg', 'deg'], ['plannedSpringTorqueGMm', 'gmm'], ['plannedDamperG', 'g']] as const satisfies readonly (readonly [keyof ActionTerms, UnitId])[];
export type UprightFigure = (typeof uprightFigures)[number][0];
export type UprightForm = TypedFigures<UprightFigure>;

/** The form that shows these terms, figures in the reader's locale. */
export function uprightFormOf(terms: ActionTerms | null, locale: string): UprightForm {
  return Object.fromEntries(uprightFigures.map(([name]) => [name, shownFigure(terms?.[name], locale)])) as UprightForm;
}

/** The terms a form states, over what stands of the rest of the action; or which fields are wrong. */
export function uprightTermsOf(form: UprightForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> {
  const reader = figureReader(locale);
  const figures = Object.fromEntries(uprightFigures.map(([name, unit]) => [name, reader.read(form[name], name, unit)]));
  return statedOver(standing, figures, reader.issues);
}
