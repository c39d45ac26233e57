import type { Issue } from '#result';
import { z } from 'zod';
import { conditionIssues, conditionSchema } from './condition.ts';
import { materialGroups } from './materials.ts';
import { outcomes } from './outcome.ts';
import { jurisdictions } from './places.ts';

/** What is done at one end of a journey, as rules speak of it. */
export const deeds = ['sell', 'buy', 'offer', 'hire', 'keep-for-sale', 'move-sold', 'export-sold', 'import-sold', 'travel', 'export-own', 'import-own', 'restore', 'dispose'] as const;
export type Deed = (typeof deeds)[number];

const day = z.iso.date();
const words = z.strictObject({ en: z.string().min(1).max(1000), de: z.string().min(1).max(1000) });

/** A rule as a file holds it. Shops may add their own; those that come with the program are replaced by a newer file. */
export const ruleSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]{2,60}$/u),
  jurisdictions: z.array(z.enum(jurisdictions)).min(1),
  materials: z.array(z.enum(materialGroups)).min(1),
  deeds: z.array(z.enum(deeds)).min(1),
  /** Left out, the rule holds always. */
  when: conditionSchema.optional(),
  outcome: z.enum(outcomes),
  /** Where `when` does not hold. */
  otherwise: z.enum(outcomes).optional(),
  papers: z.array(words).max(20),
  text: words,
  source: z.string().min(1).max(300),
  effectiveFrom: day,
  /** Last day it holds; left out, it holds on. */
  effectiveUntil: day.optional(),
  /** How far the wording was seen. */
  seen: z.enum(['read', 'second-hand', 'memory', 'own']),
  authority: words,
  lastChecked: day,
  reviewBy: day,
});
export type PaperRule = z.output<typeof ruleSchema>;

/** A file of rules. */
export const ruleFileSchema = z.strictObject({ schema: z.literal('wrestplank-papers/1'), issued: day, rules: z.array(ruleSchema).max(500) });
export type PaperRuleFile = z.output<typeof ruleFileSchema>;

/** What of a rule does not fit together though each field by itself may stand: days in the wrong order, a fact held against what it cannot be. */
export function ruleIssues({ effectiveFrom, effectiveUntil, lastChecked, reviewBy, when }: PaperRule, path: string): readonly Issue[] {
  return [
    ...(effectiveUntil === undefined ? [] : dayIssues(`${path}.effectiveUntil`, effectiveUntil, effectiveFrom)),
    ...dayIssues(`${path}.reviewBy`, reviewBy, lastChecked),
    ...(when === undefined ? [] : conditionIssues(when, `${path}.when`)),
  ];
}

/** What of a file of rules does not fit together, each with the cell it stands in. */
export function ruleFileIssues({ rules }: PaperRuleFile, path: string): readonly Issue[] {
  return rules.flatMap((rule, index) => {
    const at = `${path}.rules[${String(index)}]`;
    const first = rules.findIndex(({ id }) => id === rule.id);
    const again: readonly Issue[] = first === index ? [] : [{ code: 'conflict', path: `${at}.id`, given: rule.id, allowed: `a name no other rule has; rules[${String(first)}] has it`, params: { reason: 'ruleTwice', first } }];
    return [...again, ...ruleIssues(rule, at)];
  });
}

function dayIssues(path: string, day: string, first: string): readonly Issue[] {
  return day >= first ? [] : [{ code: 'order', path, given: day, allowed: `${first} or later`, params: { reason: 'dayBefore', first } }];
}
