import { currencyOf } from '#money';
import { type Result, map, refuse } from '#result';
import type { CardOf, ShopCard, ShopCardDraft } from '#workshop';
import { checkedCard } from '../shop/card-form.ts';
import { shownFigure, shownMoney, worthReader } from './typed-money.ts';

type Rates = CardOf<'rates'>;

/** Rates as typed; an empty text is nought but for the price of an hour, which is asked for. */
export interface RatesForm {
  readonly currency: string;
  readonly rate: string;
  readonly wage: string;
  readonly overhead: string;
}

/** The rates of a workshop in use: the newest stated. */
export function ratesOf(cards: readonly ShopCard[], workshopId: string): Rates | undefined {
  return cards.findLast((card): card is Rates => card.kind === 'rates' && card.workshopId === workshopId);
}

export function ratesFormOf(rates: Rates | undefined, locale: string): RatesForm {
  const money = (minor: number | undefined): string => shownMoney(minor, rates?.currency ?? '', locale);
  return { currency: rates?.currency ?? '', rate: money(rates?.rateMinor), wage: money(rates?.wageMinor), overhead: shownFigure(rates?.overheadPct, locale) };
}

/** The rates a form states, or which fields are wrong. */
export function ratesOfForm(form: RatesForm, locale: string): Result<Extract<ShopCardDraft, { kind: 'rates' }>> {
  const code = form.currency.trim().toUpperCase();
  if (currencyOf(code) === undefined) return refuse({ code: 'choice', path: 'currency', given: form.currency, allowed: 'a currency code of ISO 4217 in use, such as EUR', params: { reason: 'currency' } });
  const reader = worthReader(code, locale);
  const draft = {
    kind: 'rates' as const, currency: code, rateMinor: reader.needed(reader.money(form.rate, 'rateMinor'), form.rate, 'rateMinor') ?? 0,
    wageMinor: reader.money(form.wage, 'wageMinor') ?? 0, overheadPct: reader.figure(form.overhead, 'overheadPct', 'pct') ?? 0,
  };
  return reader.issues.length > 0 ? refuse(...reader.issues) : map(checkedCard(draft), () => draft);
}
