/** Currencies by the decimal places of their smallest unit. @source ISO-4217 list one, active codes of states */
const CODES_BY_DIGITS: readonly (readonly [digits: number, codes: string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF'],
  [2, `AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP
    CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS
    KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD
    PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP
    TRY TTD TWD TZS UAH USD UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG`],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
];

const digitsByCode: ReadonlyMap<string, number> = new Map(
  CODES_BY_DIGITS.flatMap(([digits, codes]) => codes.split(/\s+/u).map((code) => [code, digits] as const)),
);

declare const currencyBrand: unique symbol;
/** A currency of ISO 4217 that this program knows the decimal places of. Made by `currencyOf`. */
export type Currency = string & { readonly [currencyBrand]: true };

/** The codes known, in alphabetical order. @source ISO-4217 */
export const currencyCodes: readonly string[] = [...digitsByCode.keys()].sort();

/** The currency of a code as typed, in any case and with space around; undefined where there is none. @source ISO-4217 */
export function currencyOf(code: string): Currency | undefined {
  const tidy = code.trim().toUpperCase();
  return digitsByCode.has(tidy) ? (tidy as Currency) : undefined;
}

/** Decimal places of a currency's smallest unit: JPY 0, EUR 2, KWD 3. @source ISO-4217 */
export function digitsOf(currency: Currency): number {
  const digits = digitsByCode.get(currency);
  if (digits === undefined) throw new Error(`no currency: ${currency}`);
  return digits;
}
