import { currencyOf } from '#money';
import { type Issue, type Result, map, refuse } from '#result';
import { parseMeasure } from '#units';
import type { CardOf, ShopCardDraft, stockUnits } from '#workshop';
import { shownFigure } from '../action/terms/typed-figures.ts';
import { checkedCard } from '../shop/card-form.ts';
import { shownMoney, worthReader } from '../worth/typed-money.ts';

/** One line of a purchase as typed. */
export interface LineForm {
  readonly stock: string;
  readonly name: string;
  readonly size: string;
  readonly amount: string;
  readonly unit: (typeof stockUnits)[number];
  readonly price: string;
}

/** A purchase as typed. */
export interface PurchaseForm {
  readonly person: string;
  readonly pianoId: string;
  readonly orderedOn: string;
  readonly expectedOn: string;
  readonly status: CardOf<'purchase'>['status'];
  readonly words: string;
  readonly currency: string;
  readonly lines: readonly LineForm[];
}

export const emptyLine: LineForm = { stock: '', name: '', size: '', amount: '', unit: 'm', price: '' };

/** The form of a purchase that stands, or of a new one. */
export function purchaseFormOf(purchase: CardOf<'purchase'> | undefined, locale: string): PurchaseForm {
  if (purchase === undefined) return { person: '', pianoId: '', orderedOn: '', expectedOn: '', status: 'draft', words: '', currency: '', lines: [emptyLine] };
  const { person, pianoId, orderedOn, expectedOn, status, lines, currency, details } = purchase;
  return { person: person ?? '', pianoId: pianoId ?? '', orderedOn: orderedOn ?? '', expectedOn: expectedOn ?? '', status, words: details?.words ?? '', currency: currency ?? '', lines: lines.map((line) => lineFormOf(line, locale, currency ?? '')) };
}

/** A line as its form shows it. */
export function lineFormOf({ stock, name, sizeMm, amount, unit, priceMinor = null }: { readonly stock: string | null; readonly name: string; readonly sizeMm: number | null; readonly amount: number; readonly unit: LineForm['unit']; readonly priceMinor?: number | null }, locale: string, currency = ''): LineForm {
  return { stock: stock ?? '', name, size: shownFigure(sizeMm, locale), amount: shownFigure(amount, locale), unit, price: shownMoney(priceMinor, currency, locale) };
}

/** The purchase a form states, or which fields are wrong; a line with nothing in it is none. */
export function purchaseOf(form: PurchaseForm, receivedOn: string | null, locale: string): Result<Extract<ShopCardDraft, { kind: 'purchase' }>> {
  const issues: Issue[] = [];
  const code = form.currency.trim().toUpperCase();
  const money = worthReader(code, locale);
  if (code !== '' && currencyOf(code) === undefined) issues.push({ code: 'choice', path: 'currency', given: form.currency, allowed: 'a currency code of ISO 4217 in use, such as EUR', params: { reason: 'currency' } });
  if (code === '' && form.lines.some(({ price }) => price.trim() !== '')) issues.push({ code: 'required', path: 'currency', given: '', allowed: 'a currency code of ISO 4217, such as EUR', params: { reason: 'currency' } });
  const figure = (typed: string, path: string, unit: 'mm' | '1'): number => {
    const parsed = parseMeasure(typed, { unit, path, locale });
    if (!parsed.ok) issues.push(...parsed.issues);
    return parsed.ok ? parsed.value.value : 1;
  };
  const lines = form.lines.flatMap(({ stock, name, size, amount, unit, price }, index) => {
    if ([stock, name, size, amount, price].every((typed) => typed.trim() === '')) return [];
    const path = `lines[${String(index)}]`;
    return [{ stock: stock === '' ? null : stock, name, sizeMm: size.trim() === '' ? null : figure(size, `${path}.sizeMm`, 'mm'), amount: figure(amount, `${path}.amount`, '1'), unit, priceMinor: money.money(price, `${path}.priceMinor`) }];
  });
  if (issues.length + money.issues.length > 0) return refuse(...issues, ...money.issues);
  const orNull = (text: string): string | null => (text === '' ? null : text);
  const draft = {
    kind: 'purchase' as const, person: orNull(form.person), pianoId: orNull(form.pianoId), orderedOn: orNull(form.orderedOn), expectedOn: orNull(form.expectedOn), receivedOn, status: form.status, currency: orNull(code), lines, details: { words: form.words },
  };
  return map(checkedCard(draft), () => draft);
}
