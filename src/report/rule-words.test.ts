import { type Condition, shippedRules } from '#law';
import { createSay } from '#text';
import { describe, expect, it } from 'vitest';
import { type ConditionTold, conditionTold } from './rule-words.ts';

const flat = ({ text, parts }: ConditionTold): string => (parts.length === 0 ? text : `${text} (${parts.map(flat).join('; ')})`);
const said = (condition: Condition, locale = 'en'): string => flat(conditionTold(condition, { say: createSay(locale), locale })).replaceAll('\u00A0', ' ');
const before = { fact: 'yearMade', below: 1947 } as const;
const raw = { fact: 'ivoryRaw', is: true } as const;
const how = (...words: readonly string[]) => ({ any: words.map((is) => ({ fact: 'ivoryMassHow', is }) as const) });

describe('conditions of rules in words', () => {
  it.each<[Condition, string, string]>([
    [before, 'Year of making: below 1947', 'Baujahr: unter 1947'],
    [{ not: before }, 'Year of making: 1947 or more', 'Baujahr: 1947 oder mehr'],
    [{ not: raw }, 'Raw ivory: No', 'Rohelfenbein: Nein'],
    [{ fact: 'ivoryShareOfValuePct', atLeast: 50.5 }, 'Ivory by value: 50.5 % or more', 'Elfenbein nach Wert: 50,5 % oder mehr'],
    [how('weighed', 'measured'), 'How the mass is known: one of weighed, measured', 'Woher die Masse bekannt ist: eines von gewogen, gemessen'],
    [{ not: how('estimated') }, 'How the mass is known: not estimated', 'Woher die Masse bekannt ist: nicht geschätzt'],
    [{ not: { all: [before, { not: raw }] } }, 'Not all of these: (Year of making: below 1947; Raw ivory: No)', 'Nicht alles davon: (Baujahr: unter 1947; Rohelfenbein: Nein)'],
    [{ all: [raw, { not: { any: [before, raw] } }] }, 'All of these: (Raw ivory: Yes; None of these: (Year of making: below 1947; Raw ivory: Yes))', 'Alles davon: (Rohelfenbein: Ja; Nichts davon: (Baujahr: unter 1947; Rohelfenbein: Ja))'],
  ])('%j', (condition, en, de) => {
    expect(said(condition)).toBe(en);
    expect(said(condition, 'de')).toBe(de);
  });

  it('leave no fact and no limit of the shipped rules unsaid', () => {
    for (const { id, when } of shippedRules.rules) {
      if (when === undefined) continue;
      const text = said(when);
      for (const [, limit = ''] of JSON.stringify(when).matchAll(/(?:below|atLeast)":([\d.]+)/gu)) expect(text, id).toContain(limit);
      for (const [, fact = ''] of JSON.stringify(when).matchAll(/fact":"(\w+)"/gu)) expect(text, id).toContain(createSay('en')(`field.${fact as 'yearMade'}`));
    }
  });
});
