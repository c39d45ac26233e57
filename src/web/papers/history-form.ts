import { checkInput } from '#operation';
import { type Result, andThen } from '#result';
import { type PaperDraft, type PaperHistory, paperDraftSchema } from '#workshop';
import type { CardField } from '../shop/card-fields.ts';
import { fieldsStated, fieldsTyped } from '../shop/card-form.ts';
import type { FieldsForm } from './fields-dialog.tsx';

const area = 'papers.field';
const truth = (path: string): CardField => ({ path, as: 'truth', isOptional: true, area });
const words = (path: string): CardField => ({ path, as: 'lines', maxLength: 4000, isOptional: true, area });
const share = (path: string): CardField => ({ path, as: 'number', unit: 'pct', isOptional: true, area });

/** What is asked of the history of an instrument, in order. */
export const historyFields: readonly CardField[] = [
  { path: 'yearMade', as: 'whole', isOptional: true, area }, words('yearEvidence'), share('ivoryVolumePct'), share('ivoryValuePct'),
  truth('isRepairedWithListedSince1973'), truth('isImportedToUsBefore1990'), truth('isPlayedUntilRecently'), truth('isForRepairBefore1975'), words('evidence'),
];

/** The form of a history that stands, or of one not stated yet. */
export const historyFormOf = (history: PaperHistory | undefined, locale: string): FieldsForm => ({ fields: fieldsTyped(historyFields, history, locale) });

/** The history a form states, or which fields are wrong. */
export function historyDraftOf({ fields }: FieldsForm, locale: string): Result<PaperDraft> {
  return andThen(fieldsStated(historyFields, fields, locale), ({ yearEvidence, evidence, ...rest }) =>
    checkInput(paperDraftSchema, { kind: 'history', ...rest, yearEvidence: yearEvidence ?? '', evidence: evidence ?? '' }));
}
