import { type Reading, instrumentSchema, scaleTermsSchema } from '#instrument';
import { createSay } from '#text';
import { demoShop, standingOf } from '#workshop';
import type { OrderDocumentInput } from '../document-input.ts';
import { type OrderMaterial } from '../ordered-notes.ts';
import { stringOrderOf } from '../string-order.ts';

/** What an order of the demo grand is read from. */
export function demoMaterial(change: Partial<OrderMaterial> = {}): OrderMaterial & { readonly readings: readonly Reading[] } {
  const [piano] = demoShop();
  if (piano === undefined) throw new Error('the demo is empty');
  const terms = piano.steps.flatMap((step) => (step.kind === 'scale' ? [scaleTermsSchema.parse(step.terms)] : [])).at(-1) ?? null;
  return { instrument: demoInstrument(), readings: standingOf(piano.steps).readings, cycle: 1, state: 'planned', terms, orderTerms: {}, ...change };
}

/** The card of the demo grand. */
export function demoInstrument() {
  const [piano] = demoShop();
  return instrumentSchema.parse({ ...piano?.draft, id: 'demo', workshopId: 'demo', cycle: 1, demo: true });
}

/** What a document of the demo order is made of. */
export function demoOrder(locale = 'en', change: Partial<OrderMaterial> = {}): OrderDocumentInput {
  return {
    instrument: demoInstrument(), order: stringOrderOf(demoMaterial(change)), cycle: 1, printedAt: '2026-11-25T10:00:00Z', locale, say: createSay(locale),
    head: { seq: 1234, hash: 'b94d27b9934d3e08a52e52d7da7dabfac484efe37a5380ee9088f7ace2efcde9' },
  };
}
