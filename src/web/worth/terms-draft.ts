import { currencyOf } from '#money';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import type { Say } from '#text';
import { type Estimate, estimateIssues, estimateSchema } from '#workshop';
import { shownFigure, shownMoney, worthReader } from './typed-money.ts';

/** A way as typed. */
export interface WayForm {
  readonly id: string;
  readonly words: string;
  readonly saleMinor: string;
  readonly months: string;
}

/** Rates, price, tax and ways as typed; an empty text is not stated. */
export interface EstimateForm {
  readonly currency: string;
  readonly rounding: Estimate['rounding'];
  readonly rateMinor: string;
  readonly wageMinor: string;
  readonly owner: Estimate['owner'];
  readonly purchaseMinor: string;
  readonly purchasedOn: string;
  readonly overheadPct: string;
  readonly contingency: Estimate['contingency']['kind'];
  readonly contingencyPct: string;
  readonly pricing: Estimate['pricing']['kind'];
  readonly pricingPct: string;
  readonly regime: Estimate['tax']['regime'];
  readonly ratePct: string;
  readonly asOf: string;
  readonly source: string;
  readonly correlation: string;
  readonly annualRatePct: string;
  readonly remark: string;
  readonly ways: readonly WayForm[];
}

/** The form that shows an estimate: its own, else the rates of the shop and the rest of its last one, else empty with three usual ways. */
export function estimateFormOf(standing: Estimate | null, last: Estimate | undefined, { say, locale }: { readonly say: Say; readonly locale: string }, rates?: Pick<Estimate, 'currency' | 'rateMinor' | 'wageMinor' | 'overheadPct'>): EstimateForm {
  const from = standing ?? last;
  const reckoned = standing ?? rates ?? last;
  const currency = reckoned?.currency ?? '';
  const money = (minor: number | null | undefined): string => shownMoney(minor, currency, locale);
  const figure = (value: number | null | undefined, usual = ''): string => (value === undefined ? usual : shownFigure(value, locale));
  return {
    currency, rounding: from?.rounding ?? 'half-up', rateMinor: money(reckoned?.rateMinor), wageMinor: money(reckoned?.wageMinor),
    owner: standing?.owner ?? 'customer', purchaseMinor: money(standing?.purchaseMinor), purchasedOn: standing?.purchasedOn ?? '',
    overheadPct: figure(reckoned?.overheadPct, '0'), contingency: from?.contingency.kind ?? 'p80', contingencyPct: figure(from?.contingency.pct, '0'),
    pricing: from?.pricing.kind ?? 'markup', pricingPct: figure(from?.pricing.pct, '0'),
    regime: from?.tax.regime ?? 'ordinary', ratePct: figure(from?.tax.ratePct), asOf: from?.tax.asOf ?? '', source: from?.tax.source ?? '',
    correlation: figure(from?.correlation, shownFigure(0.3, locale)), annualRatePct: figure(from?.annualRatePct, '0'), remark: standing?.remark ?? '',
    ways: standing?.alternatives.map(({ id, words, saleMinor, months }) => ({ id, words, saleMinor: money(saleMinor), months: figure(months) })) ?? usualWays(say),
  };
}

function usualWays(say: Say): readonly WayForm[] {
  return (['full', 'action', 'asIs'] as const).map((id) => ({ id, words: say(`worth.alternative.${id}`), saleMinor: '', months: '0' }));
}

/** The estimate a form states, its lines as they stand, or which fields are wrong. A way taken out leaves its lines. */
export function estimateOf(form: EstimateForm, standing: Estimate | null, locale: string): Result<Estimate> {
  const code = form.currency.trim().toUpperCase();
  if (currencyOf(code) === undefined) return { ok: false, issues: [{ code: 'choice', path: 'currency', given: form.currency, allowed: 'a currency code of ISO 4217 in use, such as EUR', params: { reason: 'currency' } }] };
  const reader = worthReader(code, locale);
  const needed = (path: 'overheadPct' | 'contingencyPct' | 'pricingPct' | 'ratePct' | 'correlation' | 'annualRatePct'): number => reader.needed(reader.figure(form[path], path, path === 'correlation' ? '1' : 'pct'), form[path], path) ?? 0;
  const draft = {
    currency: code, rounding: form.rounding, owner: form.owner, remark: form.remark,
    rateMinor: reader.needed(reader.money(form.rateMinor, 'rateMinor'), form.rateMinor, 'rateMinor') ?? 0, wageMinor: reader.money(form.wageMinor, 'wageMinor') ?? 0,
    purchaseMinor: reader.money(form.purchaseMinor, 'purchaseMinor'), purchasedOn: form.purchasedOn === '' ? null : form.purchasedOn,
    overheadPct: needed('overheadPct'), contingency: { kind: form.contingency, pct: needed('contingencyPct') }, pricing: { kind: form.pricing, pct: needed('pricingPct') },
    tax: { regime: form.regime, ratePct: needed('ratePct'), asOf: form.asOf === '' ? null : form.asOf, source: form.source.trim() },
    correlation: needed('correlation'), annualRatePct: needed('annualRatePct'),
    alternatives: form.ways.map(({ id, words, saleMinor, months }, index) => ({ id, words, saleMinor: reader.money(saleMinor, `alternatives[${String(index)}].saleMinor`), months: reader.figure(months, `alternatives[${String(index)}].months`) ?? 0 })),
    lines: (standing?.lines ?? []).map((line) => ({ ...line, ways: line.ways.filter((way) => form.ways.some(({ id }) => id === way)) })),
  };
  if (reader.issues.length > 0) return { ok: false, issues: reader.issues };
  return checked(checkInput(estimateSchema, draft));
}

function checked(result: Result<Estimate>): Result<Estimate> {
  const issues = result.ok ? estimateIssues(result.value) : result.issues;
  return issues.length > 0 ? { ok: false, issues: issues.map(atField) } : ok((result as { readonly value: Estimate }).value);
}

/** Where the form keeps what the estimate keeps deeper. */
const FIELDS: Readonly<Record<string, string>> = { 'contingency.pct': 'contingencyPct', 'pricing.pct': 'pricingPct', 'tax.ratePct': 'ratePct', 'tax.asOf': 'asOf', 'tax.source': 'source' };

function atField(issue: Issue): Issue {
  return { ...issue, path: FIELDS[issue.path] ?? issue.path };
}
