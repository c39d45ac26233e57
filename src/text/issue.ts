import type { Issue } from '#result';
import type { MessageKey } from './catalogue.en.ts';
import type { MessageValues, Say } from './say.ts';

/**
 * Says one issue to a person, in the language of `say` and with the decimal sign of `locale`.
 * An issue with `params.reason` is said by `issue.<code>.<reason>` where the catalogue has it, else by `issue.<code>`.
 * Where the bounds or choices are not in `params`, the English `allowed` stands in for them.
 */
export function explainIssue(say: Say, issue: Issue, locale: string): string {
  const number = new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 12 });
  const printed = Object.entries(issue.params ?? {}).map(([name, value]) => [name, typeof value === 'number' ? number.format(value) : value] as const);
  const values: MessageValues = {
    given: givenText(issue.given, number),
    allowed: issue.allowed,
    kind: 'other',
    of: 'other',
    choices: issue.allowed,
    ...Object.fromEntries(printed),
    unit: String(issue.params?.['unit'] ?? '') || 'none',
    bounds: boundsOf(issue),
  };
  return say(keyOf(say, issue), values);
}

function keyOf(say: Say, { code, params }: Issue): MessageKey {
  const special = `issue.${code}.${String(params?.['reason'])}`;
  return say.knows(special) ? special : `issue.${code}`;
}

function boundsOf({ params = {} }: Issue): string {
  const has = (name: string): boolean => params[name] !== undefined;
  if (has('min') && has('max')) return 'between';
  return ['min', 'above', 'max', 'below'].find(has) ?? 'other';
}

function givenText(given: unknown, number: Intl.NumberFormat): string {
  if (given === undefined || given === null || given === '') return '—';
  if (typeof given === 'number') return Number.isFinite(given) ? number.format(given) : String(given);
  const text = typeof given === 'string' ? given : (typeof given === 'object' || typeof given === 'boolean' ? JSON.stringify(given) : typeof given);
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
}
