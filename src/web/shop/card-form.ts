import type { Photo } from '#instrument';
import { currencyOf } from '#money';
import { checkInput } from '#operation';
import { type Issue, type Result, andThen, map, ok, refuse } from '#result';
import { parseMeasure } from '#units';
import { type LoanCondition, type ShopCard, type ShopCardChange, type ShopCardDraft, type ShopKind, loanParts, orderIssues, shopCardDraftSchema } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import { shownMoney, worthReader } from '../worth/typed-money.ts';
import { type CardField, cardFields } from './card-fields.ts';

/** A condition as typed, part by part. */
export interface ConditionForm {
  readonly on: string;
  readonly a4: string;
  readonly humidity: string;
  readonly grades: Readonly<Record<string, string>>;
  readonly words: Readonly<Record<string, string>>;
  readonly photos: readonly Photo[];
}

/** A card as typed, by the paths of its fields; nothing is understood before it is asked for. */
export interface CardForm {
  readonly fields: Readonly<Record<string, string>>;
  readonly before: ConditionForm;
  readonly after: ConditionForm;
}

export const emptyCondition: ConditionForm = { on: '', a4: '', humidity: '', grades: {}, words: {}, photos: [] };

/** The form of a card that stands, or of a new one with some fields known. */
export function cardFormOf(kind: ShopKind, card: ShopCard | undefined, locale: string, known: Readonly<Record<string, string>> = {}): CardForm {
  const fields = fieldsTyped(cardFields[kind].filter(({ as }) => as !== 'condition'), card, locale, known);
  const loan = card?.kind === 'loan' ? card : undefined;
  return { fields, before: conditionFormOf(loan?.before, locale), after: conditionFormOf(loan?.after, locale) };
}

/** Fields as a form shows them, by their paths: of something that stands, or of something new with some of it known. */
export function fieldsTyped(fields: readonly CardField[], standing: unknown, locale: string, known: Readonly<Record<string, string>> = {}): Readonly<Record<string, string>> {
  return Object.fromEntries(fields.map((field) => [field.path, known[field.path] ?? textOf(field, valueAt(standing, field.path), locale, codeIn(standing))]));
}

/** What the fields of a form state, by their paths, or which are wrong. */
export function fieldsStated(fields: readonly CardField[], typed: Readonly<Record<string, string>>, locale: string): Result<Readonly<Record<string, unknown>>> {
  const results = fields.map((field) => [field.path, valueOf(field, typed, locale)] as const);
  const issues = results.flatMap(([, result]) => (result.ok ? [] : result.issues));
  return issues.length > 0 ? refuse(...issues) : ok(Object.fromEntries(results.flatMap(([path, result]) => (result.ok ? [[path, result.value]] : []))));
}

/** The card a form states, or which fields are wrong, by their paths. */
export function cardDraftOf(kind: ShopKind, form: CardForm, locale: string): Result<ShopCardDraft> {
  const issues: Issue[] = [];
  const take = <T>(result: Result<T>): T | undefined => {
    if (!result.ok) issues.push(...result.issues);
    return result.ok ? result.value : undefined;
  };
  const draft: Record<string, unknown> = { kind };
  for (const field of cardFields[kind]) {
    const value = take(field.as === 'condition' ? conditionOf(form[field.path as 'before' | 'after'], field.path, locale) : valueOf(field, form.fields, locale));
    put(draft, field.path, value);
  }
  if (issues.length > 0) return refuse(...issues);
  return checkedCard(draft);
}

/** A draft that fits its schema and whose days stand in order. */
export function checkedCard(draft: unknown): Result<ShopCardDraft> {
  return andThen(checkInput(shopCardDraftSchema, draft), (card) => {
    const wrong = orderIssues(card);
    return wrong.length > 0 ? refuse(...wrong) : ok(card);
  });
}

/** What a draft changes of a card: only the fields that differ, so that nobody's other edits are written over. */
export function cardChangeOf(card: ShopCard, draft: ShopCardDraft): ShopCardChange {
  const known = card as unknown as Readonly<Record<string, unknown>>;
  const differing = Object.entries(draft).filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(known[name]));
  return { ...Object.fromEntries(differing), kind: card.kind };
}

/** A moment as the browser's own field takes it, by the clock of this device: `2031-05-01T10:30`. */
export function localMoment(iso: string): string {
  const at = new Date(iso);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

/** The currency a standing card is in, empty where it has none. */
function codeIn(standing: unknown): string {
  const code = valueAt(standing, 'currency');
  return typeof code === 'string' ? code : '';
}

function textOf({ as, choices, isOptional = false }: CardField, value: unknown, locale: string, code: string): string {
  if (as === 'truth') return value === true ? 'yes' : value === false || !isOptional ? 'no' : '';
  if (Array.isArray(value)) return value.join(' ');
  if (typeof value !== 'string' && typeof value !== 'number') return as === 'choice' ? (choices?.[0] ?? '') : as === 'roles' && choices?.includes('customer') === true ? 'customer' : '';
  if (as === 'money' && typeof value === 'number') return shownMoney(value, code, locale);
  if ((as === 'number' || as === 'measure') && typeof value === 'number') return shownFigure(value, locale);
  return as === 'moment' ? localMoment(String(value)) : String(value);
}

function valueOf({ path, as, unit, isOptional = false, empty }: CardField, all: Readonly<Record<string, string>>, locale: string): Result<unknown> {
  const typed = all[path] ?? '';
  const text = typed.trim();
  if (path.startsWith('details.')) return text === '' && !isOptional ? missing(path) : ok(as === 'lines' ? typed : text);
  if (as === 'roles') return text === '' ? missing(path) : ok(text.split(' '));
  if (as === 'truth' && text !== '') return ok(text === 'yes');
  if (text === '') return isOptional ? ok(empty ?? null) : missing(path);
  if (as === 'currency') return currencyOf(text.toUpperCase()) === undefined ? refuse({ code: 'choice', path, given: typed, allowed: 'a currency code of ISO 4217 in use, such as EUR', params: { reason: 'currency' } }) : ok(text.toUpperCase());
  if (as === 'money') return moneyOf(text, path, all['currency'] ?? '', locale);
  if (as === 'number' || as === 'measure') return map(parseMeasure(text, { unit: unit ?? (as === 'measure' ? 'mm' : '1'), path, locale }), ({ value }) => value);
  if (as === 'whole') return /^\d{1,6}$/u.test(text) ? ok(Number(text)) : refuse({ code: 'type', path, given: typed, allowed: 'a whole number', params: { kind: 'int' } });
  if (as === 'moment') return Number.isNaN(Date.parse(text)) ? refuse({ code: 'format', path, given: typed, allowed: '2031-05-01T10:30' }) : ok(new Date(text).toISOString());
  return ok(text);
}

/** An amount in the currency typed beside it. */
function moneyOf(text: string, path: string, typedCode: string, locale: string): Result<unknown> {
  const code = typedCode.trim().toUpperCase();
  if (code === '') return refuse({ code: 'required', path: 'currency', given: '', allowed: 'a currency code of ISO 4217, such as EUR', params: { reason: 'currency' } });
  const reader = worthReader(code, locale);
  const minor = reader.money(text, path);
  return reader.issues.length > 0 ? refuse(...reader.issues) : ok(minor);
}

function missing(path: string): Result<never> {
  return refuse(need(path));
}

/** The form of a condition that stands, or of none. */
export function conditionFormOf(condition: LoanCondition | null | undefined, locale: string): ConditionForm {
  if (condition === null || condition === undefined) return emptyCondition;
  const { on, a4Hz, humidityPct, points, photos } = condition;
  return {
    on, a4: shownFigure(a4Hz, locale), humidity: shownFigure(humidityPct, locale), photos,
    grades: Object.fromEntries(points.map(({ part, grade }) => [part, grade])), words: Object.fromEntries(points.map(({ part, words }) => [part, words])),
  };
}

/** A condition nothing is stated of is none. One with anything in it needs its day, and words on a part need its grade. */
export function conditionOf(form: ConditionForm, path: string, locale: string): Result<LoanCondition | null> {
  const issues: Issue[] = [];
  const points = loanParts.flatMap((part): LoanCondition['points'] => {
    const [grade = '', words = ''] = [form.grades[part], form.words[part]?.trim()];
    if (grade === '' && words !== '') issues.push(need(`${path}.${part}`));
    return grade === '' ? [] : [{ part, grade: grade as LoanCondition['points'][number]['grade'], words }];
  });
  const figures = figureReader(locale);
  const [a4Hz, humidityPct] = [figures.read(form.a4, `${path}.a4Hz`, 'Hz'), figures.read(form.humidity, `${path}.humidityPct`, 'pct')];
  issues.push(...figures.issues);
  const isEmpty = issues.length === 0 && points.length === 0 && form.photos.length === 0 && a4Hz === null && humidityPct === null && form.on === '';
  if (isEmpty) return ok(null);
  if (form.on === '') issues.push(need(`${path}.on`));
  return issues.length > 0 ? refuse(...issues) : ok({ on: form.on, points, a4Hz, humidityPct, photos: [...form.photos] });
}

function need(path: string): Issue {
  return { code: 'required', path, given: '', allowed: 'something stated' };
}

function valueAt(card: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((value, part) => (typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[part] : undefined), card);
}

function put(draft: Record<string, unknown>, path: string, value: unknown): void {
  const [first = '', second] = path.split('.');
  if (second === undefined) draft[first] = value;
  else draft[first] = { ...(draft[first] as object | undefined), [second]: value };
}
