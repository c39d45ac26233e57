import { estimateFiguresOf, offerOf } from '#estimate';
import type { Issue } from '#result';
import { type Estimate, type Quote, type QuoteAnswer, type QuoteDraft, answerIssues, quoteAnswerSchema, quoteDraftSchema, quoteSendSchema, sendIssues } from '#workshop';
import { StoreFailure } from '../bench-store.ts';
import { accepted, fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { type Sight, checkCycle, writeAt } from '../write.ts';
import { cardAt, cardThere, cardsOf, fieldChange } from './card.ts';
import { personIssues } from './named-person.ts';

const REFUSED = 'The quote cannot be kept as given.';
type Wanted = Pick<Quote, keyof QuoteDraft>;

/** Draws up a quote: lines and prices are copied from the estimate of the stay as it stands now. */
export async function addQuote(bench: Bench, id: string, draft: QuoteDraft, by: string): Promise<Quote> {
  const wanted = fitting(quoteDraftSchema, draft, REFUSED);
  return await writeAt(bench, id, by, async (sight) => {
    checkCycle(sight, wanted.cycle);
    const version = wanted.replaces === null ? 1 : (await cardThere<Quote>(sight.tx, sight.chain, 'quote', wanted.replaces)).version + 1;
    const quote: Quote = { ...wanted, ...(await offered(sight, wanted)), id: bench.newId(), version, madeAt: sight.at.toISOString(), state: 'draft', sentOn: null, answeredOn: null, acceptedLines: null };
    return { kind: 'quote.added', changes: [{ entity: 'quote', place: quote.id, before: null, after: quote }], rests: [cycleAspect(wanted.cycle, id), ...(wanted.replaces === null ? [] : [`quote/${wanted.replaces}`])], answer: () => quote };
  });
}

/** Corrects a draft, and takes its prices from the estimate as it stands now. What was sent stays as it was. */
export async function changeQuote(bench: Bench, id: string, quoteId: string, change: Partial<QuoteDraft>, by: string): Promise<Quote> {
  return await writeAt(bench, id, by, async (sight) => {
    const quote = await cardThere<Quote>(sight.tx, sight.chain, 'quote', quoteId);
    refuseUnlessDraft(quote);
    const { cycle, alternative, customer, validUntil, stages, notIncluded, remark, replaces } = quote;
    const wanted = fitting(quoteDraftSchema, { cycle, alternative, customer, validUntil, stages, notIncluded, remark, replaces, ...stated(change) }, REFUSED);
    const after: Quote = { ...quote, ...wanted, ...(await offered(sight, wanted)) };
    const made = fieldChange('quote', quoteId, quote, after);
    return { kind: 'quote.changed', changes: made === undefined ? [] : [made], answer: () => after };
  });
}

/** Takes a draft away; undo brings it back. */
export async function withdrawQuote(bench: Bench, id: string, quoteId: string, by: string): Promise<Quote> {
  return await writeAt(bench, id, by, async ({ tx, chain }) => {
    const quote = await cardThere<Quote>(tx, chain, 'quote', quoteId);
    refuseUnlessDraft(quote);
    return { kind: 'quote.withdrawn', changes: [{ entity: 'quote', place: quoteId, before: quote, after: null }], answer: () => quote };
  });
}

/** Marks a draft as sent. The event stands for good, and so does everything the quote said on that day. */
export async function sendQuote(bench: Bench, id: string, quoteId: string, sending: { readonly on: string }, by: string): Promise<Quote> {
  const { on } = fitting(quoteSendSchema, sending, REFUSED);
  return await writeAt(bench, id, by, async ({ tx, chain }) => {
    const quote = await cardThere<Quote>(tx, chain, 'quote', quoteId);
    refuseWhere(sendIssues(quote, on));
    return decided(quote, { state: 'sent', sentOn: on }, 'quote.sent');
  });
}

/** Notes the customer’s answer to a quote that was sent: taken whole or by line, declined, or lapsed. The event stands for good. */
export async function answerQuote(bench: Bench, id: string, quoteId: string, given: QuoteAnswer, by: string): Promise<Quote> {
  const answer = fitting(quoteAnswerSchema, given, REFUSED);
  return await writeAt(bench, id, by, async ({ tx, chain }) => {
    const quote = await cardThere<Quote>(tx, chain, 'quote', quoteId);
    refuseWhere(answerIssues(quote, answer));
    const taken = answer.lines ?? quote.lines.map((line) => line.id);
    return decided(quote, { state: answer.answer, answeredOn: answer.on, acceptedLines: answer.answer === 'accepted' ? quote.lines.map((line) => line.id).filter((line) => taken.includes(line)) : null }, 'quote.answered');
  });
}

/** A change of state rests on every field of the quote, so that no earlier event of it can be taken back. */
function decided(quote: Quote, fields: Partial<Quote>, kind: 'quote.sent' | 'quote.answered') {
  const after: Quote = { ...quote, ...fields };
  const made = fieldChange('quote', quote.id, quote, after);
  return { kind, changes: made === undefined ? [] : [made], rests: Object.keys(quote).map((field) => `quote/${quote.id}/${field}`), answer: () => after };
}

async function offered({ tx, chain }: Sight, wanted: Wanted) {
  const estimate = await cardAt<Estimate>(tx, chain, 'estimate', `c${String(wanted.cycle)}`);
  if (estimate === undefined) throw new StoreFailure('refused', REFUSED, [{ code: 'required', path: 'cycle', given: wanted.cycle, allowed: 'a stay with an estimate to quote from', params: { reason: 'estimate' } }]);
  const alternative = estimate.alternatives.find((way) => way.id === wanted.alternative);
  if (alternative === undefined) throw new StoreFailure('refused', REFUSED, [{ code: 'choice', path: 'alternative', given: wanted.alternative, allowed: `one of ${estimate.alternatives.map((way) => way.id).join(', ')}`, params: { choices: estimate.alternatives.map((way) => way.id).join(', ') } }]);
  // A customer may be typed by hand, so that one who is not in the book is nobody forgotten.
  refuseWhere((await personIssues({ tx, chain }, 'customer', wanted.customer)).filter(({ code }) => code !== 'unknown'));
  if (wanted.replaces !== null) await refuseStrangers({ tx, chain }, wanted);
  return offerOf(estimate, alternative, accepted(estimateFiguresOf(estimate, alternative), REFUSED));
}

/** A new version belongs to the same stay as the one it replaces. */
async function refuseStrangers({ tx, chain }: Pick<Sight, 'tx' | 'chain'>, { replaces, cycle }: Wanted): Promise<void> {
  const before = (await cardsOf<Quote>(tx, chain, 'quote')).find(({ id }) => id === replaces);
  if (before?.cycle !== cycle) throw new StoreFailure('refused', REFUSED, [{ code: 'choice', path: 'replaces', given: replaces, allowed: 'a quote of the same stay' }]);
}

function refuseUnlessDraft({ state }: Quote): void {
  refuseWhere(state === 'draft' ? [] : [{ code: 'conflict', path: 'state', given: state, allowed: 'a quote that is draft; what was sent stays as it was, and a new version takes its place', params: { reason: 'quote.draft' } }]);
}

function refuseWhere(issues: readonly Issue[]): void {
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
}
