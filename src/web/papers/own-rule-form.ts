import { type Condition, type PaperRule, askedFacts, deeds, factKindOf, jurisdictions, materialGroups, paperOutcomes, wordsHeld } from '#law';
import { type Issue, type Result, ok, refuse } from '#result';
import type { ShopCardDraft } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import type { CardField } from '../shop/card-fields.ts';
import { checkedCard, fieldsStated, fieldsTyped } from '../shop/card-form.ts';
import type { FieldsForm } from './fields-dialog.tsx';

const area = 'papers.own';
const field = (path: string, as: CardField['as'], rest: Partial<CardField> = {}): CardField => ({ path, as, area, ...rest });
const several = (path: string, choices: readonly string[], words: string): CardField => field(path, 'roles', { choices, words: `papers.${words}` });

/** The fields of a rule of the shop's own, in the order they are asked for. */
export const ownRuleFields: readonly CardField[] = [
  field('text', 'lines', { maxLength: 1000 }), field('outcome', 'choice', { choices: paperOutcomes, words: 'papers.outcome' }), field('otherwise', 'choice', { choices: ['', ...paperOutcomes], words: 'papers.outcome', isOptional: true }), field('papers', 'lines', { isOptional: true, maxLength: 4000 }),
  several('jurisdictions', jurisdictions, 'jurisdiction'), several('deeds', deeds, 'deed'), several('materials', materialGroups, 'material'),
  field('source', 'line', { maxLength: 300 }), field('authority', 'line', { maxLength: 200 }),
  field('effectiveFrom', 'day'), field('effectiveUntil', 'day', { isOptional: true }), field('lastChecked', 'day'), field('reviewBy', 'day'),
];

/** How a fact may be held against a value, by what it can be: yes or no, one of some words, or a number. */
export function testsOf(fact: string): readonly FactTest[] {
  const asked = askedFacts.find((one) => one === fact);
  const kind = asked === undefined ? 'truth' : factKindOf(asked);
  return kind === 'truth' ? ['yes', 'no'] : kind === 'number' ? ['below', 'atLeast'] : ['oneOf', 'noneOf'];
}
type FactTest = 'yes' | 'no' | 'below' | 'atLeast' | 'oneOf' | 'noneOf';

/** One thing a rule hangs on, as typed. */
export interface ConditionTyped {
  readonly fact: string;
  readonly test: string;
  /** The number it is held against. */
  readonly value: string;
  /** The words it is held against. */
  readonly words: readonly string[];
}

/** A rule as typed: its plain fields, and what it hangs on, all of it or any. Where all conditions have to hold, any part of one will do; where any will do, all its parts have to hold. */
export interface OwnRuleForm extends FieldsForm {
  readonly joined: 'all' | 'any';
  readonly conditions: readonly (readonly ConditionTyped[])[];
}

/** How the parts of a condition are joined where the conditions are joined so. */
export const innerOf = (joined: OwnRuleForm['joined']): OwnRuleForm['joined'] => (joined === 'all' ? 'any' : 'all');

/** One fact held against a value, as typed; nothing for what is put together of several. */
function typedOf(when: Condition, locale: string): ConditionTyped | undefined {
  const blank = { value: '', words: [] };
  const held = wordsHeld('not' in when ? when.not : when);
  if (held !== undefined) return { ...blank, ...held, test: 'not' in when ? 'noneOf' : 'oneOf' };
  if (!('fact' in when)) return undefined;
  const { fact } = when;
  if ('is' in when) return { ...blank, fact, test: when.is === true ? 'yes' : 'no' };
  return 'below' in when ? { ...blank, fact, test: 'below', value: shownFigure(when.below, locale) } : { ...blank, fact, test: 'atLeast', value: shownFigure(when.atLeast, locale) };
}

/** What a condition hangs on, as typed; nothing for one nested deeper than the form holds. */
function conditionsTyped(when: Condition | undefined, locale: string): Pick<OwnRuleForm, 'joined' | 'conditions'> | undefined {
  if (when === undefined) return { joined: 'all', conditions: [] };
  const alone = typedOf(when, locale);
  if (alone !== undefined) return { joined: 'all', conditions: [[alone]] };
  const joined = 'any' in when ? 'any' : 'all';
  const conditions = partsOf(when, joined)?.map((part): readonly (ConditionTyped | undefined)[] | undefined => {
    const one = typedOf(part, locale);
    return one === undefined ? partsOf(part, innerOf(joined))?.map((inner) => typedOf(inner, locale)) : [one];
  });
  const known = conditions?.filter(isTyped);
  return known === undefined || known.length !== conditions?.length ? undefined : { joined, conditions: known };
}

const partsOf = (when: Condition, joined: OwnRuleForm['joined']): readonly Condition[] | undefined => (joined in when ? (when as Readonly<Record<string, readonly Condition[]>>)[joined] : undefined);
const isTyped = (parts: readonly (ConditionTyped | undefined)[] | undefined): parts is readonly ConditionTyped[] => parts?.every((part) => part !== undefined) === true;

/** True where this form holds all a rule says, so that correcting it loses nothing. */
export function isPlainRule({ when, text, authority, papers }: PaperRule): boolean {
  return conditionsTyped(when, 'en') !== undefined && [text, authority, ...papers].every(({ en, de }) => en === de);
}

/** The form of a rule that stands, or of a new one. */
export function ownRuleFormOf(rule: PaperRule | undefined, locale: string): OwnRuleForm {
  if (rule === undefined) return { fields: fieldsTyped(ownRuleFields, undefined, locale), joined: 'all', conditions: [] };
  const shown = { ...rule, text: rule.text.en, authority: rule.authority.en, papers: rule.papers.map(({ en }) => en).join('\n') };
  return { fields: fieldsTyped(ownRuleFields, shown, locale), joined: 'all', conditions: [], ...conditionsTyped(rule.when, locale) };
}

/** The rule a form states, or which fields are wrong; the words stand for both languages as typed. */
export function ownRuleDraftOf({ fields, joined, conditions }: OwnRuleForm, id: string, locale: string): Result<ShopCardDraft> {
  const held = conditionOf({ joined, conditions }, locale);
  const plain = fieldsStated(ownRuleFields, fields, locale);
  const issues = [...(plain.ok ? [] : plain.issues), ...(held.ok ? [] : held.issues)];
  if (!plain.ok || !held.ok) return refuse(...issues);
  const { text, authority, papers, effectiveUntil, otherwise, ...rest } = plain.value;
  const both = (words: unknown): { en: unknown; de: unknown } => ({ en: words, de: words });
  const lines = (typeof papers === 'string' ? papers : '').split('\n').map((one) => one.trim()).filter((one) => one !== '');
  const draft = checkedCard({ kind: 'ownRule', rule: { ...rest, id, seen: 'own', text: both(text), authority: both(authority), papers: lines.map(both), ...(effectiveUntil === null ? {} : { effectiveUntil }), ...(otherwise === null ? {} : { otherwise }), ...held.value } });
  return draft.ok ? draft : { ok: false, issues: draft.issues.map((issue) => ({ ...issue, path: fieldOf(issue.path, conditions) })) };
}

type Joined = Readonly<Record<string, unknown>>;

/** What the rule hangs on, or which parts are wrong; nothing where it holds always. */
function conditionOf({ joined, conditions }: Pick<OwnRuleForm, 'joined' | 'conditions'>, locale: string): Result<{ readonly when?: unknown }> {
  const reader = figureReader(locale);
  const gaps: Issue[] = [];
  const need = (path: string): void => { gaps.push({ code: 'required', path, given: '', allowed: 'something stated' }); };
  const heldOf = ({ fact, test, value, words }: ConditionTyped, at: string): Joined => {
    if (fact === '') need(`${at}.fact`);
    if (test === 'yes' || test === 'no') return { fact, is: test === 'yes' };
    if (test === 'below' || test === 'atLeast') {
      if (value.trim() === '') need(`${at}.value`);
      return { fact, [test]: reader.read(value, `${at}.value`, '1') };
    }
    if (words.length === 0) need(`${at}.words`);
    const one = together('any', words.map((word) => ({ fact, is: word })));
    return test === 'oneOf' ? one : { not: one };
  };
  const held = conditions.map((parts, index) => together(innerOf(joined), parts.map((part, inner) => heldOf(part, placeOf(index, inner)))));
  const issues = [...gaps, ...reader.issues];
  return issues.length > 0 ? refuse(...issues) : ok(held.length === 0 ? {} : { when: together(joined, held) });
}

/** The place of a part of a condition in the form. */
export const placeOf = (index: number, inner: number): string => `conditions[${String(index)}][${String(inner)}]`;

const together = (joined: string, parts: readonly Joined[]): Joined => (parts.length === 1 && parts[0] !== undefined ? parts[0] : { [joined]: parts });

/** The field of the form an issue of the rule belongs to: `rule.when.all[1].any[0].below` is the number of the first part of the second condition, `rule.text.en` the words. */
function fieldOf(path: string, conditions: OwnRuleForm['conditions']): string {
  const condition = /^rule\.when(?<steps>(?:\.(?:all|any)\[\d+\])*)(?:\.not)?.*?(?:\.(?<cell>[a-zA-Z]+))?$/u.exec(path)?.groups;
  if (condition === undefined) return /^rule\.([a-zA-Z]+)/u.exec(path)?.[1] ?? path;
  const steps = [...(condition['steps'] ?? '').matchAll(/\d+/gu)].map(([step]) => Number(step));
  const index = conditions.length > 1 ? steps.shift() ?? 0 : 0;
  const inner = (conditions[index]?.length ?? 0) > 1 ? steps.shift() ?? 0 : 0;
  const { cell } = condition;
  return `${placeOf(index, inner)}.${cell === 'below' || cell === 'atLeast' ? 'value' : 'fact'}`;
}
