import type { ActionTerms, ActionTermsDraft, InsertMetal } from '#instrument';
import type { Result } from '#result';
import type { UnitId } from '#units';
import { fromGPerCm3, isDensity, issueAsTyped, shownDensity } from '../terms/densities.ts';
import { type TypedFigures, figureReader, shownFigure, statedOver } from '../terms/typed-figures.ts';

/** The figures stated for the leads, with the unit each is typed in. */
export const leadFigures = [
  ['leadGapMm', 'mm'], ['leadGridMm', 'mm'], ['leadToleranceG', 'g'], ['mostLeads', '1'], ['newHoleCostG', 'g'], ['leadCostG', 'g'], ['plugCostG', 'g'], ['trimCostG', 'g'], ['leadGPerMm3', 'gcm3'], ['woodGPerMm3', 'gcm3'],
] as const satisfies readonly (readonly [keyof ActionTerms, UnitId])[];
export type LeadFigureName = (typeof leadFigures)[number][0];

interface StretchForm {
  readonly from: string;
  readonly to: string;
}

/** What the shop drills and where, as typed. */
export interface LeadsForm extends TypedFigures<LeadFigureName> {
  /** Diameters, with semicolons between. */
  readonly drills: string;
  readonly trimDrills: string;
  /** What new inserts are of; empty for lead. */
  readonly insertMetal: InsertMetal | '';
  readonly insertGPerMm3: string;
  readonly keepOuts: readonly StretchForm[];
}

/** A stretch nothing is typed of. */
export const NO_STRETCH: StretchForm = { from: '', to: '' };

/** The form that shows these terms, figures in the reader's locale. */
export function leadsFormOf(terms: ActionTerms | null, locale: string): LeadsForm {
  const figures = Object.fromEntries(leadFigures.map(([name]) => [name, isDensity(name) ? shownDensity(terms?.[name], locale) : shownFigure(terms?.[name], locale)])) as TypedFigures<LeadFigureName>;
  const keepOuts = (terms?.keepOuts ?? []).map(({ fromMm, toMm }) => ({ from: shownFigure(fromMm, locale), to: shownFigure(toMm, locale) }));
  const list = (drills: readonly number[] = []): string => drills.map((drill) => shownFigure(drill, locale)).join('; ');
  return { ...figures, drills: list(terms?.drillsMm), trimDrills: list(terms?.trimDrillsMm), insertMetal: terms?.insertMetal ?? '', insertGPerMm3: shownDensity(terms?.insertGPerMm3, locale), keepOuts: keepOuts.length === 0 ? [NO_STRETCH, NO_STRETCH] : keepOuts };
}

/** The terms a form states, over what stands of the rest of the action; or which fields are wrong. */
export function leadsTermsOf(form: LeadsForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> {
  const reader = figureReader(locale);
  const density = (name: 'leadGPerMm3' | 'woodGPerMm3' | 'insertGPerMm3'): number | null => {
    const typed = reader.read(form[name], name, 'gcm3');
    return typed === null ? null : fromGPerCm3(typed);
  };
  const figures = Object.fromEntries(leadFigures.map(([name, unit]) => [name, isDensity(name) ? density(name) : reader.read(form[name], name, unit)]));
  const insert = { insertMetal: form.insertMetal || null, insertGPerMm3: form.insertMetal === '' ? null : density('insertGPerMm3') };
  const listOf = (typed: string, name: 'drillsMm' | 'trimDrillsMm'): readonly number[] => typed.split(';').flatMap((each) => reader.read(each, name, 'mm') ?? []);
  const [drillsMm, trimDrillsMm] = [[...listOf(form.drills, 'drillsMm')], [...listOf(form.trimDrills, 'trimDrillsMm')]];
  const typed = form.keepOuts.filter(({ from, to }) => from.trim() !== '' || to.trim() !== '');
  const keepOuts = typed.map(({ from, to }, index) => ({ fromMm: reader.read(from, `keepOuts[${String(index)}].fromMm`, 'mm'), toMm: reader.read(to, `keepOuts[${String(index)}].toMm`, 'mm') }));
  const half = keepOuts.flatMap(({ fromMm, toMm }, index) => (fromMm !== null && toMm !== null ? [] : [`keepOuts[${String(index)}].${fromMm === null ? 'fromMm' : 'toMm'}`]));
  const unmetal = form.insertMetal === 'other' && form.insertGPerMm3.trim() === '' ? [{ code: 'required' as const, path: 'insertGPerMm3', given: '', allowed: 'a density', params: { kind: 'number' } }] : [];
  const unsaid = half.filter((path) => reader.issues.every((issue) => issue.path !== path)).map((path) => ({ code: 'required' as const, path, given: '', allowed: 'a length', params: { kind: 'number' } }));
  const stretches = keepOuts.map(({ fromMm, toMm }) => ({ fromMm: fromMm ?? 0, toMm: toMm ?? 1 }));
  const checked = statedOver(standing, { ...figures, ...insert, drillsMm, trimDrillsMm, keepOuts: stretches }, [...reader.issues, ...unsaid, ...unmetal]);
  return checked.ok ? checked : { ok: false, issues: checked.issues.map(issueAsTyped).map((issue) => ({ ...issue, path: issue.path.replace(/^(drillsMm|trimDrillsMm)\[\d+\]$/u, '$1') })) };
}
