import { type AskedFact, type Condition, wordsHeld } from '#law';
import { type UnitId, unitSign } from '#units';
import { type Tongue, asStated } from './words.ts';

/** What a rule hangs on in the reader’s words, with the parts it speaks of below it. */
export interface ConditionTold {
  readonly text: string;
  readonly parts: readonly ConditionTold[];
}

/** A condition in words, whole however deep it goes; what is denied is said as what is not so. */
export function conditionTold(condition: Condition, tongue: Tongue, isSo = true): ConditionTold {
  const { say } = tongue;
  if ('not' in condition) return conditionTold(condition.not, tongue, !isSo);
  const held = wordsHeld(condition);
  if (held !== undefined) return leaf(say(isSo ? 'papers.when.oneOf' : 'papers.when.noneOf', { fact: say(`field.${held.fact}`), count: held.words.length, words: held.words.map((word) => factWord(word, tongue)).join(', ') }));
  if ('all' in condition) return { text: say(isSo ? 'papers.when.all' : 'papers.when.notAll'), parts: condition.all.map((part) => conditionTold(part, tongue)) };
  if ('any' in condition) return { text: say(isSo ? 'papers.when.any' : 'papers.when.notAny'), parts: condition.any.map((part) => conditionTold(part, tongue)) };
  const fact = say(`field.${condition.fact}`);
  if ('is' in condition) return leaf(say('papers.when.truth', { fact, value: say((condition.is === true) === isSo ? 'papers.truth.yes' : 'papers.truth.no') }));
  const [limit, isBelow] = 'below' in condition ? [condition.below, isSo] : [condition.atLeast, !isSo];
  return leaf(say(isBelow ? 'papers.when.below' : 'papers.when.atLeast', { fact, value: measured(limit, condition.fact, tongue) }));
}

/** A word a fact may be held against, in the reader’s language. */
export function factWord(word: string, { say }: Pick<Tongue, 'say'>): string {
  const key = `papers.massHow.${word}`;
  return say.knows(key) ? say(key) : word;
}

const leaf = (text: string): ConditionTold => ({ text, parts: [] });

function measured(value: number, fact: AskedFact, tongue: Tongue): string {
  const unit: UnitId | undefined = fact.endsWith('Pct') ? 'pct' : fact.endsWith('G') ? 'g' : undefined;
  return unit === undefined ? asStated(value, tongue) : `${asStated(value, tongue)}\u00A0${unitSign[unit]}`;
}
