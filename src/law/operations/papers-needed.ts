import { defineOperation } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { type FactName, factsSchema, paperActions } from '../facts.ts';
import { listedMaterials } from '../materials.ts';
import { outcomes } from '../outcome.ts';
import { papersNeededOf, reasonKinds } from '../papers-needed.ts';
import { placeSchema } from '../places.ts';
import { ruleSchema } from '../rule.ts';
import { shippedRules } from '../rules.ts';

/** Printed with every answer. */
const CAUTION = 'A checklist, not legal advice. Ask the authority named, and do not advertise, sell, ship, remove or replace listed material before its answer.';

/** Which papers a sale, a shipment or a journey asks for. */
export const papersNeededOperation = defineOperation({
  name: 'papers-needed',
  input: z.strictObject({
    facts: factsSchema,
    from: placeSchema, to: placeSchema,
    action: z.enum(paperActions).describe('What is to be done'),
    date: z.iso.date().describe('Day it is to be done'),
    rules: z.array(ruleSchema).max(600).describe('Rules to go by; left out, those that come with the program').optional(),
  }),
  output: z.strictObject({
    outcome: z.enum(outcomes).describe('Worst of all that matched; ask: put it to the authority'),
    papers: z.array(z.string()).describe('Papers to have in hand'),
    reasons: z.array(z.strictObject({
      rule: z.string().describe('Name of the rule, or of what is not known'),
      outcome: z.enum(outcomes),
      kind: z.enum(reasonKinds).describe('Whether the rule holds, or what is wanting'),
      place: z.string().describe('End of the journey'),
      material: z.enum(listedMaterials).optional(),
      missing: z.array(z.string()).describe('Facts that would decide'),
      wouldBe: z.enum(outcomes).describe('Worst it may come to once what is wanting is known').optional(),
      text: z.string().optional(),
      source: z.string().optional(),
      authority: z.string().optional(),
      reviewBy: z.string().optional(),
    })),
    caution: z.string().describe('Goes with every answer'),
  }),
  formula: ['every rule that matches at either end; the worst wins: prohibited > papers > ask > note', 'a missing fact, an unknown species or country, or a rule past its review: ask'],
  sources: ['OWN', 'KLEENE-1938'],
  example: { facts: { material: ['ivory:african-elephant', 'wood:other-rosewood'], yearMade: 1905, ivoryVolPct: 0.1, finished: true }, from: 'GB', to: 'GB', action: 'sell', date: '2026-12-01' },
  run: ({ rules = shippedRules.rules, ...question }) => {
    const { outcome, reasons } = papersNeededOf(question, rules);
    return ok({
      outcome,
      papers: [...new Set(reasons.filter((reason) => reason.outcome === 'papers').flatMap(({ rule }) => rule?.papers.map(({ en }) => en) ?? []))],
      reasons: reasons.map(({ rule, missing, kind, place: at, outcome: found, material, wouldBe }) => ({
        rule: rule?.id ?? kind, outcome: found, kind, place: at, missing: [...missing] satisfies FactName[],
        ...(material === undefined ? {} : { material }), ...(wouldBe === undefined ? {} : { wouldBe }),
        ...(rule === undefined ? {} : { text: rule.text.en, source: rule.source, authority: rule.authority.en, reviewBy: rule.reviewBy }),
      })),
      caution: CAUTION,
    });
  },
});
