import { checkInput } from '#operation';
import { type Result, map } from '#result';
import type { Say } from '#text';
import { type Estimate, type Quote, type QuoteDraft, quoteDraftSchema } from '#workshop';
import { shownFigure, worthReader } from './typed-money.ts';

/** A quote as typed. */
export interface QuoteForm {
  readonly alternative: string;
  readonly customer: string;
  readonly validUntil: string;
  readonly stages: readonly { readonly words: string; readonly share: string }[];
  readonly notIncluded: string;
  readonly remark: string;
}

/** The form of a new quote, of a draft, or of a new version of one that was sent. */
export function quoteFormOf(from: Quote | undefined, { alternatives }: Estimate, { say, locale }: { readonly say: Say; readonly locale: string }): QuoteForm {
  const known = alternatives.some(({ id }) => id === from?.alternative);
  return {
    alternative: known ? (from?.alternative ?? '') : (alternatives[0]?.id ?? ''),
    customer: from?.customer ?? '', validUntil: from?.validUntil ?? '',
    stages: from?.stages.map(({ words, share }) => ({ words, share: shownFigure(share, locale) })) ?? [{ words: say('quote.stage.deposit'), share: '30' }, { words: say('quote.stage.end'), share: '70' }],
    notIncluded: from?.notIncluded.join('\n') ?? '', remark: from?.remark ?? '',
  };
}

/** The quote a form states, or which fields are wrong. */
export function quoteDraftOf(form: QuoteForm, { cycle, replaces, locale }: { readonly cycle: number; readonly replaces: string | null; readonly locale: string }): Result<QuoteDraft> {
  const reader = worthReader('', locale);
  const draft: QuoteDraft = {
    cycle, replaces, alternative: form.alternative, customer: form.customer.trim() === '' ? null : form.customer.trim(), validUntil: form.validUntil === '' ? null : form.validUntil,
    stages: form.stages.map(({ words, share }, index) => ({ words, share: reader.needed(reader.figure(share, `stages[${String(index)}].share`), share, `stages[${String(index)}].share`) ?? 1 })),
    notIncluded: form.notIncluded.split('\n').map((line) => line.trim()).filter((line) => line !== ''), remark: form.remark,
  };
  if (reader.issues.length > 0) return { ok: false, issues: reader.issues };
  return map(checkInput(quoteDraftSchema, draft), () => draft);
}
