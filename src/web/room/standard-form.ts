import { type Issue, type Result, refuse } from '#result';
import type { UnitId } from '#units';
import type { CardOf, ShopCardDraft } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import type { FieldsForm } from '../papers/fields-dialog.tsx';
import type { CardField } from '../shop/card-fields.ts';
import { checkedCard } from '../shop/card-form.ts';

const area = 'standard.field';
const line = (path: string, isOptional: boolean): CardField => ({ path, as: 'line', area, isOptional, maxLength: 120 });
const figure = (path: string, unit: UnitId): CardField => ({ path, as: 'number', area, unit, isOptional: true });

/** The fields of a target of the shop’s own, in the order they are asked for. */
export const standardFields: readonly CardField[] = [
  line('name', false), figure('slopeS', 's'), figure('offsetS', 's'), figure('fixedS', 's'), line('lower', false), line('upper', false), figure('fromM3', '1'), figure('toM3', '1'),
  { path: 'source', as: 'lines', area, isOptional: true, maxLength: 2000 },
];

type Target = CardOf<'standard'>['target'];

/** The form of a target that stands, or of a new one. */
export function standardFormOf(target: Target | undefined, locale: string): FieldsForm {
  const shown = (value: number | null | undefined): string => shownFigure(value, locale);
  const shares = (all: readonly number[] | undefined): string => (all ?? []).map(shown).join(' ');
  const time = target?.time;
  const [formula, fixed] = time === undefined ? [undefined, undefined] : 'fixedS' in time ? [undefined, time] : [time, undefined];
  return {
    fields: {
      name: target?.name ?? '', slopeS: shown(formula?.slopeS), offsetS: shown(formula?.offsetS), fixedS: shown(fixed?.fixedS), lower: shares(target?.lower), upper: shares(target?.upper),
      fromM3: shown(target?.volumes?.fromM3), toM3: shown(target?.volumes?.toM3), source: target?.source ?? '',
    },
  };
}

/** The target a form states, by a formula or by one time, or which fields are wrong. */
export function standardDraftOf({ fields }: FieldsForm, locale: string): Result<ShopCardDraft> {
  const reader = figureReader(locale);
  const gaps: Issue[] = [];
  const typed = (path: string): string => (fields[path] ?? '').trim();
  const need = (path: string): void => { gaps.push({ code: 'required', path, given: '', allowed: 'something stated' }); };
  const six = (path: string): readonly (number | null)[] => {
    const parts = typed(path).split(/[\s;]+/u).filter((part) => part !== '');
    if (parts.length !== 6) gaps.push({ code: 'range', path, given: typed(path), allowed: 'six figures', params: { reason: 'sixShares', count: parts.length } });
    return parts.map((part) => reader.read(part, path, '1'));
  };
  const [slopeS, offsetS, fixedS] = (['slopeS', 'offsetS', 'fixedS'] as const).map((path) => reader.read(typed(path), path, 's'));
  const [fromM3, toM3] = (['fromM3', 'toM3'] as const).map((path) => reader.read(typed(path), path, '1'));
  const [lower, upper] = [six('lower'), six('upper')];
  const isFormula = typed('slopeS') !== '' || typed('offsetS') !== '';
  if (isFormula && typed('fixedS') !== '') gaps.push({ code: 'conflict', path: 'fixedS', given: typed('fixedS'), allowed: 'a formula or one time, not both', params: { reason: 'formulaOrTime' } });
  if (!isFormula && typed('fixedS') === '') need('slopeS');
  if (isFormula && typed('slopeS') === '') need('slopeS');
  if (isFormula && typed('offsetS') === '') need('offsetS');
  if ((typed('fromM3') === '') !== (typed('toM3') === '')) need(typed('fromM3') === '' ? 'fromM3' : 'toM3');
  const issues = [...reader.issues, ...gaps];
  if (issues.length > 0) return refuse(...issues);
  const target = { name: typed('name'), time: isFormula ? { slopeS, offsetS } : { fixedS }, lower, upper, volumes: typed('fromM3') === '' ? null : { fromM3, toM3 }, source: typed('source') };
  const draft = checkedCard({ kind: 'standard', target });
  return draft.ok ? draft : { ok: false, issues: draft.issues.map((issue) => ({ ...issue, path: fieldOf(issue.path) })) };
}

/** The field of the form an issue of the card belongs to: `target.time.slopeS`, `target.lower[2]`. */
const fieldOf = (path: string): string => /([a-zA-Z0-9]+)(?:\[\d+\])?$/u.exec(path)?.[1]?.replace(/^time$/u, 'slopeS') ?? path;
