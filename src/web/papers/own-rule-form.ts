import { type AskedFact, type Condition, type PaperRule, askedFacts, deeds, factKindOf, jurisdictions, materialGroups, paperOutcomes } from '#law';
import { type Issue, type Result, ok, refuse } from '#result';
import type { ShopCardDraft } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import type { CardField } from '../shop/card-fields.ts';
import { checkedCard, fieldsStated, fieldsTyped } from '../shop/card-form.ts';
import type { FieldsForm } from './fields-dialog.tsx';

const area = 'papers.own';
const field = (path: string, as: CardField['as'], rest: Partial<CardField> = {}): CardField => ({ path, as, area, ...rest });
const several = (path: string, choices: readonly string[], words: string): CardField => field(path, 'roles', { choices, words: `papers.${words}` });

/** Facts that are yes or no, or a number: what a rule typed by hand may hang on. */
export const plainFacts = askedFacts.filter((fact) => fact !== 'ageYears' && typeof factKindOf(fact) === 'string');

/** The fields of a rule of the shop's own, in the order they are asked for. */
export const ownRuleFields: readonly CardField[] = [
  field('text', 'lines', { maxLength: 1000 }), field('outcome', 'choice', { choices: paperOutcomes, words: 'papers.outcome' }), field('papers', 'lines', { isOptional: true, maxLength: 4000 }),
  several('jurisdictions', jurisdictions, 'jurisdiction'), several('deeds', deeds, 'deed'), several('materials', materialGroups, 'material'),
  field('source', 'line', { maxLength: 300 }), field('authority', 'line', { maxLength: 200 }),
  field('effectiveFrom', 'day'), field('effectiveUntil', 'day', { isOptional: true }), field('lastChecked', 'day'), field('reviewBy', 'day'),
];

/** How a fact is held against a value. */
export const factTests = ['yes', 'no', 'below', 'atLeast'] as const;

/** One thing a rule hangs on, as typed. */
export interface ConditionTyped {
  readonly fact: string;
  readonly test: string;
  readonly value: string;
}

/** A rule as typed: its plain fields, and what it hangs on, all of it or any. */
export interface OwnRuleForm extends FieldsForm {
  readonly joined: 'all' | 'any';
  readonly conditions: readonly ConditionTyped[];
}

type Held = Extract<Condition, { readonly fact: AskedFact }>;

const isHeld = (when: Condition): when is Held => 'fact' in when && (!('is' in when) || typeof when.is === 'boolean');

/** What a flat condition hangs on and how its parts are joined; nothing for one that is nested or says not. */
function flatOf(when: Condition | undefined): { readonly joined: OwnRuleForm['joined']; readonly held: readonly Held[] } | undefined {
  if (when === undefined) return { joined: 'all', held: [] };
  if (isHeld(when)) return { joined: 'all', held: [when] };
  const [joined, parts] = 'all' in when ? ['all' as const, when.all] : 'any' in when ? ['any' as const, when.any] : ['all' as const, undefined];
  return parts?.every(isHeld) === true ? { joined, held: parts.filter(isHeld) } : undefined;
}

/** True where this form holds all a rule says, so that correcting it loses nothing. */
export function isPlainRule({ when, text, authority, papers, otherwise }: PaperRule): boolean {
  return otherwise === undefined && flatOf(when) !== undefined && [text, authority, ...papers].every(({ en, de }) => en === de);
}

/** The form of a rule that stands, or of a new one. */
export function ownRuleFormOf(rule: PaperRule | undefined, locale: string): OwnRuleForm {
  if (rule === undefined) return { fields: fieldsTyped(ownRuleFields, undefined, locale), joined: 'all', conditions: [] };
  const shown = { ...rule, text: rule.text.en, authority: rule.authority.en, papers: rule.papers.map(({ en }) => en).join('\n') };
  const { joined, held } = flatOf(rule.when) ?? { joined: 'all', held: [] };
  return { fields: fieldsTyped(ownRuleFields, shown, locale), joined, conditions: held.map((one) => typedOf(one, locale)) };
}

function typedOf(when: Held, locale: string): ConditionTyped {
  if ('is' in when) return { fact: when.fact, test: when.is === true ? 'yes' : 'no', value: '' };
  return 'below' in when ? { fact: when.fact, test: 'below', value: shownFigure(when.below, locale) } : { fact: when.fact, test: 'atLeast', value: shownFigure(when.atLeast, locale) };
}

/** The rule a form states, or which fields are wrong; the words stand for both languages as typed. */
export function ownRuleDraftOf({ fields, joined, conditions }: OwnRuleForm, id: string, locale: string): Result<ShopCardDraft> {
  const held = conditionsOf(conditions, locale);
  const plain = fieldsStated(ownRuleFields, fields, locale);
  const issues = [...(plain.ok ? [] : plain.issues), ...(held.ok ? [] : held.issues)];
  if (!plain.ok || !held.ok) return refuse(...issues);
  const { text, authority, papers, effectiveUntil, ...rest } = plain.value;
  const both = (words: unknown): { en: unknown; de: unknown } => ({ en: words, de: words });
  const lines = (typeof papers === 'string' ? papers : '').split('\n').map((one) => one.trim()).filter((one) => one !== '');
  const when = held.value.length > 1 ? { [joined]: held.value } : held.value[0];
  const draft = checkedCard({ kind: 'ownRule', rule: { ...rest, id, seen: 'own', text: both(text), authority: both(authority), papers: lines.map(both), ...(effectiveUntil === null ? {} : { effectiveUntil }), ...(when === undefined ? {} : { when }) } });
  return draft.ok ? draft : { ok: false, issues: draft.issues.map((issue) => ({ ...issue, path: fieldOf(issue.path) })) };
}

function conditionsOf(conditions: readonly ConditionTyped[], locale: string): Result<readonly unknown[]> {
  const reader = figureReader(locale);
  const gaps: Issue[] = [];
  const need = (path: string): void => { gaps.push({ code: 'required', path, given: '', allowed: 'something stated' }); };
  const held = conditions.map(({ fact, test, value }, index): unknown => {
    const at = `conditions[${String(index)}]`;
    if (fact === '') need(`${at}.fact`);
    if (test === 'yes' || test === 'no') return { fact, is: test === 'yes' };
    if (value.trim() === '') need(`${at}.value`);
    return { fact, [test]: reader.read(value, `${at}.value`, '1') };
  });
  const issues = [...gaps, ...reader.issues];
  return issues.length > 0 ? refuse(...issues) : ok(held);
}

/** The field of the form an issue of the rule belongs to: `rule.when.all[1].below` is the number of the second condition, `rule.text.en` the words. */
function fieldOf(path: string): string {
  const condition = /^rule\.when(?:\.(?:all|any)\[(\d+)\])?(?:\.([a-zA-Z]+))?/u.exec(path);
  if (condition !== null) return `conditions[${condition[1] ?? '0'}].${condition[2] === 'below' || condition[2] === 'atLeast' ? 'value' : 'fact'}`;
  return /^rule\.([a-zA-Z]+)/u.exec(path)?.[1] ?? path;
}
