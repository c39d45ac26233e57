import { actionTermsSchema, instrumentSchema, scaleTermsSchema, tuningTermsSchema } from '#instrument';
import { createSay } from '#text';
import { demoShop, standingOf } from '#workshop';
import type { ProofInput } from './input.ts';
import { proofInputOf } from './material.ts';

/** What a proof of the demo grand is made of once both states are weighed. */
export function demoProof(locale = 'en', change: Partial<ProofInput> = {}): ProofInput {
  const [piano] = demoShop();
  if (piano === undefined) throw new Error('the demo is empty');
  const { sessions, readings } = standingOf(piano.steps);
  const input = proofInputOf({
    instrument: instrumentSchema.parse({ ...piano.draft, id: 'demo', workshopId: 'demo', cycle: 1, demo: true }),
    sessions, readings, cycle: 1, intent: piano.intent,
    terms: piano.steps.flatMap((step) => (step.kind === 'scale' ? [scaleTermsSchema.parse(step.terms)] : [])).at(-1) ?? null,
    tuningTerms: piano.steps.flatMap((step) => (step.kind === 'tuning' ? [tuningTermsSchema.parse(step.terms)] : [])).at(-1) ?? null,
    action: piano.steps.flatMap((step) => (step.kind === 'action' ? [actionTermsSchema.parse(step.terms)] : [])).at(-1) ?? null,
    head: { seq: 1234, hash: 'b94d27b9934d3e08a52e52d7da7dabfac484efe37a5380ee9088f7ace2efcde9' },
    printedAt: '2026-11-25T10:00:00Z', locale, say: createSay(locale),
  });
  return { ...input, ...change };
}
