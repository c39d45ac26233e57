import { type Compass, type PitchClass, type TemperamentName, type TuningTerms, type TuningTermsDraft, noteNameOf, octaveTypes, tuningTermsSchema } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import { keyTyped } from '../../keys/key-typed.ts';
import { type TypedFigures, figureReader, shownFigure } from '../../action/terms/typed-figures.ts';

export const tuningFigures = [['curveToleranceCt', 'ct'], ['unisonToleranceCt', 'ct'], ['driftToleranceCt', 'ct'], ['smoothness', '1']] as const;
export type TuningFigureName = (typeof tuningFigures)[number][0];

/** The terms of the tuning, as typed; an empty text is not stated. */
export interface TuningTermsForm extends TypedFigures<TuningFigureName> {
  readonly temperament: TemperamentName | '';
  readonly root: PitchClass | '';
  readonly octaves: string;
  readonly strungOn: string;
  readonly remark: string;
}

/** `A0–B2 6:3, C3–B4 4:2`. */
export function sayOctaves(rules: TuningTerms['octaves'], compass: Compass): string {
  return rules.map(({ fromKey, toKey, type }) => `${noteNameOf(compass, fromKey)}–${noteNameOf(compass, toKey)} ${type}`).join(', ');
}

/** Octave rules as typed, or what of them was not understood. */
export function octavesTyped(typed: string, compass: Compass): Result<TuningTermsDraft['octaves'] & object> {
  const issues: Issue[] = [];
  const rules = typed.split(/[,;\n]/u).map((part) => part.trim()).filter((part) => part !== '').flatMap((part) => {
    const [, from = '', to = '', type = ''] = /^(\S+?)\s*(?:–|-|\.\.|to|bis)\s*(\S+)\s+(\d:\d)$/u.exec(part) ?? [];
    const [fromKey, toKey, known] = [keyTyped(from, compass), keyTyped(to, compass), octaveTypes.find((one) => one === type)];
    if (fromKey !== undefined && toKey !== undefined && known !== undefined && fromKey <= toKey) return [{ fromKey, toKey, type: known }];
    issues.push({ code: 'format', path: 'octaves', given: part, allowed: 'two notes from low to high and 2:1, 4:2 or 6:3, such as A0–B2 6:3' });
    return [];
  });
  return issues.length > 0 ? { ok: false, issues } : ok(rules);
}

export const tuningFormOf = (compass: Compass) => (terms: TuningTerms | null, locale: string): TuningTermsForm => ({
  ...(Object.fromEntries(tuningFigures.map(([name]) => [name, shownFigure(terms?.[name], locale)])) as TypedFigures<TuningFigureName>),
  temperament: terms?.temperament ?? '', root: terms?.root ?? '', octaves: sayOctaves(terms?.octaves ?? [], compass), strungOn: terms?.strungOn ?? '', remark: terms?.remark ?? '',
});

/** The terms a form states, or which fields are wrong. */
export const tuningTermsOf = (compass: Compass) => (form: TuningTermsForm, _: TuningTerms | null, locale: string): Result<TuningTermsDraft> => {
  const reader = figureReader(locale);
  const figures = Object.fromEntries(tuningFigures.map(([name, unit]) => [name, reader.read(form[name], name, unit)]));
  const octaves = octavesTyped(form.octaves, compass);
  const issues = [...reader.issues, ...(octaves.ok ? [] : octaves.issues)];
  if (issues.length > 0) return { ok: false, issues };
  const draft: TuningTermsDraft = { ...figures, octaves: octaves.ok ? octaves.value : [], temperament: form.temperament || null, root: form.root || null, strungOn: form.strungOn || null, remark: form.remark };
  const checked = checkInput(tuningTermsSchema, draft);
  return checked.ok ? ok(draft) : checked;
};
