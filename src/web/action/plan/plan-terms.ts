import { type ActionTerms, type ActionTermsDraft, type Compass, keyCountOf, noteNameOf } from '#instrument';
import type { Issue, Result } from '#result';
import type { UnitId } from '#units';
import { keyTyped } from '../../keys/key-typed.ts';
import { figureReader, shownFigure, statedOver } from '../terms/typed-figures.ts';

/** The figures of the plan, with the unit each is typed in, in the order they are asked. */
export const planFigures = [
  ['weightRatioNatural', '1'], ['weightRatioSharp', '1'], ['distanceRatioNatural', '1'], ['distanceRatioSharp', '1'],
  ['frictionBassG', 'g'], ['frictionMiddleG', 'g'], ['frictionTrebleG', 'g'],
  ['plannedWippenG', 'g'], ['plannedSpringG', 'g'], ['mostFrontWeightG', 'g'],
  ['wippenInertiaGMm2', '1'], ['shankG', 'g'], ['shankLengthMm', 'mm'],
] as const satisfies readonly (readonly [keyof ActionTerms, UnitId])[];
export type PlanFigureName = (typeof planFigures)[number][0];

interface AnchorForm {
  readonly key: string;
  readonly weight: string;
}

/** The terms of the plan, as typed; an empty text is not stated. */
export interface PlanTermsForm extends Readonly<Record<PlanFigureName | 'hammerLambda', string>> {
  readonly hammerCurve: NonNullable<ActionTerms['hammerCurve']> | '';
  readonly anchors: readonly AnchorForm[];
}

const NO_ANCHOR: AnchorForm = { key: '', weight: '' };

/** The form that shows these terms, figures in the reader's locale. */
export const planFormOf = (compass: Compass) => (terms: ActionTerms | null, locale: string): PlanTermsForm => {
  const show = (value: number | null | undefined): string => shownFigure(value, locale);
  const figures = Object.fromEntries(planFigures.map(([name]) => [name, show(terms?.[name])])) as Record<PlanFigureName, string>;
  const anchors = (terms?.hammerAnchors ?? []).map(({ key, weightG }) => ({ key: noteNameOf(compass, key), weight: show(weightG) }));
  return { ...figures, hammerLambda: show(terms?.hammerLambda), hammerCurve: terms?.hammerCurve ?? '', anchors: [0, 1, 2].map((index) => anchors[index] ?? NO_ANCHOR) };
};

/** The terms a form states, over what stands of leads, regulation and work; or which fields are wrong. */
export const planTermsOf = (compass: Compass) => (form: PlanTermsForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> => {
  const { issues: misread, read } = figureReader(locale);
  const issues: Issue[] = [];
  const anchorOf = ({ key: typed, weight }: AnchorForm, index: number): { readonly key: number; readonly weightG: number } => {
    const path = `hammerAnchors[${String(index)}]`;
    const key = keyTyped(typed, compass);
    if (key === undefined) issues.push({ code: 'choice', path: `${path}.key`, given: typed, allowed: `a key 1 to ${String(keyCountOf(compass))} or a note`, params: { min: 1, max: keyCountOf(compass) } });
    if (weight.trim() === '') issues.push({ code: 'required', path: `${path}.weightG`, given: weight, allowed: 'a weight', params: { kind: 'number' } });
    return { key: key ?? 1, weightG: read(weight, `${path}.weightG`, 'g') ?? 1 };
  };
  // Anchors typed before stay while another curve is chosen.
  const hammerAnchors = form.hammerCurve === 'anchors' ? form.anchors.map(anchorOf) : (standing?.hammerAnchors ?? []);
  const figures = Object.fromEntries([...planFigures, ['hammerLambda', '1'] as const].map(([name, unit]) => [name, read(form[name], name, unit)]));
  return statedOver(standing, { ...figures, hammerCurve: form.hammerCurve || null, hammerAnchors }, [...misread, ...issues]);
};
