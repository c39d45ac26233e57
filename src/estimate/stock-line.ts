import { taxOnMargin } from '#money';
import type { CardOf, StockGap, StockLine } from '#workshop';
import { rateOn } from './tax-rates.ts';

type Acquisition = CardOf<'acquisition'>;
type Sale = CardOf<'sale'>;
type Tried = { readonly value: StockLine['ratePct']; readonly since: string | null; readonly gaps: readonly StockGap[] };

const NOBODY = { name: '', address: '' } as const;
const gap = (isGap: boolean, name: StockGap): readonly StockGap[] => (isGap ? [name] : []);

/**
 * One line of the stock book from a purchase and its sale, each null where there is none. What is missing or does not fit
 * together is named in `gaps`; what hangs on it stays null.
 * margin = sale − purchase; loss = max(0, −margin); tax = max(0, margin)·r/(100 + r), rounded once, of a sale under the margin
 * scheme of what was bought without deductible tax. The price of the purchase is that of its invoice: restoration is no part of it.
 * @source VATMARG02300; EU-2006-112 art. 315
 */
export function stockLineOf(bought: Acquisition | null, sold: Sale | null, isTwice = false): StockLine {
  const isScheme = sold?.regime === 'margin';
  const margin = marginOf(bought, sold);
  const rate = isScheme ? rateOf(sold) : { value: null, since: null, gaps: [] };
  const gaps = [...purchaseGaps(bought, isTwice), ...(sold === null ? [] : saleGaps(bought, sold)), ...rate.gaps];
  const isTaxed = isScheme && bought?.eligible === true && margin !== null && rate.value !== null;
  const tax = isTaxed ? Number(taxOnMargin({ purchaseMinor: bought.priceMinor ?? 0, saleMinor: sold.priceMinor ?? 0, ratePct: rate.value, rounding: sold.rounding }).tax) : null;
  return { ...purchaseFields(bought), ...saleFields(sold), ratePct: rate.value, rateSince: rate.since, marginMinor: margin, lossMinor: margin === null ? null : Math.max(0, -margin), taxMinor: tax, gaps };
}

/** Sale less purchase, in one currency; null while one of them is not known. */
function marginOf(bought: Acquisition | null, sold: Sale | null): number | null {
  if (bought?.priceMinor == null || sold?.priceMinor == null || bought.currency !== sold.currency) return null;
  return sold.priceMinor - bought.priceMinor;
}

/** The rate stated, else the one that stood at the place on the day of the sale. */
function rateOf({ place, on, ratePct }: Sale): Tried {
  const dated = place === null || on === null ? undefined : rateOn(place, on);
  if (ratePct !== null) return { value: ratePct, since: null, gaps: gap(dated !== undefined && dated.ratePct !== ratePct, 'rateDiffers') };
  return dated === undefined ? { value: null, since: null, gaps: ['rate'] } : { value: dated.ratePct, since: dated.since, gaps: [] };
}

function purchaseGaps(bought: Acquisition | null, isTwice: boolean): readonly StockGap[] {
  if (bought === null) return ['acquisition'];
  const { on, details, description, priceMinor, eligible } = bought;
  return [
    ...gap(isTwice, 'numberTwice'), ...gap(on === null, 'boughtOn'), ...gap(isBlank(details?.name), 'seller'), ...gap(isBlank(details?.address), 'sellerAddress'),
    ...gap(isBlank(description), 'description'), ...gap(priceMinor === null, 'purchasePrice'), ...gap(eligible === null, 'eligible'),
  ];
}

function saleGaps(bought: Acquisition | null, { on, details, priceMinor, currency, invoice, regime }: Sale): readonly StockGap[] {
  const isEarly = bought?.on != null && on !== null && on < bought.on;
  return [
    ...gap(on === null, 'soldOn'), ...gap(isBlank(details?.name), 'buyer'), ...gap(priceMinor === null, 'salePrice'), ...gap(isBlank(invoice), 'saleInvoice'),
    ...gap(isEarly, 'order'), ...gap(bought?.priceMinor != null && priceMinor !== null && bought.currency !== currency, 'currencies'),
    ...gap(regime === 'margin' && bought?.eligible === false, 'notEligible'),
  ];
}

const isBlank = (text: string | undefined): boolean => text === undefined || text.trim() === '';

const partyOf = (card: Acquisition | Sale | null): StockLine['seller'] => (card?.details == null ? NOBODY : { name: card.details.name, address: card.details.address });

function purchaseFields(bought: Acquisition | null) {
  return {
    number: bought?.number ?? null, acquisitionId: bought?.id ?? null, pianoId: bought?.pianoId ?? null, boughtOn: bought?.on ?? null, purchaseInvoice: bought?.invoice ?? '', seller: partyOf(bought),
    description: bought?.description ?? '', purchaseMinor: bought?.priceMinor ?? null, purchaseCurrency: bought?.currency ?? null, eligible: bought?.eligible ?? null,
  };
}

function saleFields(sold: Sale | null) {
  return {
    saleId: sold?.id ?? null, isSold: sold !== null, soldOn: sold?.on ?? null, saleInvoice: sold?.invoice ?? '', buyer: partyOf(sold),
    saleMinor: sold?.priceMinor ?? null, saleCurrency: sold?.currency ?? null, regime: sold?.regime ?? null, rounding: sold?.rounding ?? null,
  };
}
