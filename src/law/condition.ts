import type { Issue } from '#result';
import { z } from 'zod';
import { type DatedFacts, type FactName, factsSchema } from './facts.ts';

/** True, false, or not to be told from what is known. */
export type Verdict = 'yes' | 'no' | 'unknown';

/** What a rule hangs on, as data: facts held against values, put together by all, any and not. */
export type Condition =
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition }
  | { readonly fact: AskedFact; readonly is: boolean | string }
  | { readonly fact: AskedFact; readonly below: number }
  | { readonly fact: AskedFact; readonly atLeast: number };
/** A fact as given, or the age that follows from the year. */
export type AskedFact = FactName | 'ageYears';

/** Every fact a condition may ask for. */
export const askedFacts = ['ageYears', ...Object.keys(factsSchema.shape).filter((name) => name !== 'material' && name !== 'speciesProven')] as [AskedFact, ...AskedFact[]];
const fact = z.enum(askedFacts);

/** A condition as a file of rules holds it. */
export const conditionSchema: z.ZodType<Condition> = z.lazy(() => z.union([
  z.strictObject({ all: z.array(conditionSchema).min(1).max(50) }),
  z.strictObject({ any: z.array(conditionSchema).min(1).max(50) }),
  z.strictObject({ not: conditionSchema }),
  z.strictObject({ fact, is: z.union([z.boolean(), z.string()]) }),
  z.strictObject({ fact, below: z.number() }),
  z.strictObject({ fact, atLeast: z.number() }),
]));

/** Half-width of a range that holds the value 19 times in 20, in standard uncertainties. */
const COVERAGE = 2;

const toVerdict = (holds: boolean): Verdict => (holds ? 'yes' : 'no');
const turned = (verdict: Verdict): Verdict => (verdict === 'unknown' ? 'unknown' : toVerdict(verdict === 'no'));

/** Whether a condition holds, in Kleene’s logic of three values: what is not known stays so unless the rest decides. @source KLEENE-1938 */
export function holds(condition: Condition, facts: DatedFacts): Verdict {
  if ('all' in condition) return together(condition.all.map((each) => holds(each, facts)), 'no');
  if ('any' in condition) return together(condition.any.map((each) => holds(each, facts)), 'yes');
  if ('not' in condition) return turned(holds(condition.not, facts));
  const value = facts[condition.fact];
  if (value === undefined) return 'unknown';
  if ('is' in condition) return toVerdict(value === condition.is);
  if (typeof value !== 'number') return 'unknown';
  return 'below' in condition ? isBelow(value, condition.below, doubtOf(condition.fact, facts)) : turned(isBelow(value, condition.atLeast, doubtOf(condition.fact, facts)));
}

/** All hold unless one does not; any holds if one does. */
function together(verdicts: readonly Verdict[], deciding: 'yes' | 'no'): Verdict {
  if (verdicts.includes(deciding)) return deciding;
  return verdicts.includes('unknown') ? 'unknown' : turned(deciding);
}

function isBelow(value: number, limit: number, doubt: number): Verdict {
  if (doubt > 0 && Math.abs(value - limit) <= COVERAGE * doubt) return 'unknown';
  return toVerdict(value < limit);
}

const doubtOf = (name: AskedFact, { ivoryMassUncertaintyG }: DatedFacts): number => (name === 'ivoryMassG' ? ivoryMassUncertaintyG ?? 0 : 0);

/** Facts a condition asks for that are not known. */
export function missingFacts(condition: Condition, facts: DatedFacts): readonly FactName[] {
  if ('all' in condition) return condition.all.flatMap((each) => missingFacts(each, facts));
  if ('any' in condition) return condition.any.flatMap((each) => missingFacts(each, facts));
  if ('not' in condition) return missingFacts(condition.not, facts);
  return facts[condition.fact] === undefined ? [condition.fact === 'ageYears' ? 'yearMade' : condition.fact] : [];
}

/** What a fact can be held against: true or false, one of some words, or a number. */
export function factKindOf(name: AskedFact): 'truth' | 'number' | readonly string[] {
  if (name === 'ageYears') return 'number';
  const inner = factsSchema.shape[name].unwrap();
  if (inner instanceof z.ZodBoolean) return 'truth';
  return inner instanceof z.ZodEnum ? inner.options.map(String) : 'number';
}

/** The fact and its words, where a condition asks that a fact be one of some words; nothing for any other condition. */
export function wordsHeld(condition: Condition): { readonly fact: AskedFact; readonly words: readonly string[] } | undefined {
  const parts = 'any' in condition ? condition.any : [condition];
  const words = parts.flatMap((part) => ('is' in part && typeof part.is === 'string' ? [part.is] : []));
  const facts = new Set(parts.map((part) => ('fact' in part ? part.fact : undefined)));
  const [fact] = facts;
  return fact === undefined || facts.size > 1 || words.length < parts.length ? undefined : { fact, words };
}

/** Facts of a condition that are held against what they can never be, so that the rule could never be decided. */
export function conditionIssues(condition: Condition, path: string): readonly Issue[] {
  if ('all' in condition) return condition.all.flatMap((each, index) => conditionIssues(each, `${path}.all[${String(index)}]`));
  if ('any' in condition) return condition.any.flatMap((each, index) => conditionIssues(each, `${path}.any[${String(index)}]`));
  if ('not' in condition) return conditionIssues(condition.not, `${path}.not`);
  const kind = factKindOf(condition.fact);
  if (!('is' in condition)) return kind === 'number' ? [] : [misfit(`${path}.fact`, condition.fact, 'a fact that is a number, for below and atLeast')];
  if (kind === 'number') return [misfit(`${path}.fact`, condition.fact, 'a fact that is true or false or one of some words, for is')];
  if (kind === 'truth') return typeof condition.is === 'boolean' ? [] : [misfit(`${path}.is`, condition.is, 'true or false')];
  return kind.includes(String(condition.is)) ? [] : [{ ...misfit(`${path}.is`, condition.is, `one of ${kind.join(', ')}`), params: { choices: kind.join(', ') } }];
}

function misfit(path: string, given: unknown, allowed: string): Issue {
  return { code: 'choice', path, given, allowed, params: { choices: allowed } };
}
