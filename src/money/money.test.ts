import * as dineroCurrencies from 'dinero.js/currencies';
import * as dineroBig from 'dinero.js/bigint';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currencyCodes, currencyOf, decimalText, digitsOf, formatAmount, formatMoney, fractionOf, minorFrom, parseMoney, percentAsFraction, productOf, roundFraction, roundings, scaled, splitMinor, sumMinor, taxInGross, taxOnMargin, taxOnNet, totalOf } from './index.ts';

const currency = (code: string) => {
  const found = currencyOf(code);
  if (found === undefined) throw new Error(code);
  return found;
};
const EUR = currency('EUR');
const read = (typed: string, code = 'EUR', locale = 'en') => {
  const result = parseMoney(typed, { currency: currency(code), locale, path: 'price' });
  return result.ok ? result.value.minor : result.issues[0]?.code;
};
const wholes = fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n });

describe('currencies', () => {
  it('have the digits of the ISO 4217 table that a money library carries', () => {
    // MGA and MRU stand there in fifths, which have no decimals; fund and metal codes are left out here.
    const table = Object.values(dineroCurrencies).filter(({ base, code }) => base === 10 && currencyCodes.includes(code));
    expect(table.length).toBeGreaterThan(140);
    expect(table.filter(({ code, exponent }) => digitsOf(currency(code)) !== exponent)).toEqual([]);
    const missing = Object.keys(dineroCurrencies).filter((code) => !currencyCodes.includes(code));
    expect(missing.sort()).toEqual(['BGN', 'BOV', 'CHE', 'CHW', 'CLF', 'COU', 'MXV', 'USN', 'UYI', 'UYW', 'XAD']);
  });

  it('are all known to the runtime’s CLDR data, which never prints more decimals than ISO 4217 has', () => {
    const known = Intl.supportedValuesOf('currency');
    // CLDR holds the digital bolívar for no legal tender and leaves it out of the list.
    expect(currencyCodes.filter((code) => !known.includes(code) && code !== 'VED')).toEqual([]);
    const cldr = (code: string) => new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits ?? -1;
    const differing = currencyCodes.filter((code) => cldr(code) !== digitsOf(currency(code)));
    expect(differing.every((code) => cldr(code) === 0 || cldr(code) < digitsOf(currency(code)))).toBe(true);
    for (const code of ['EUR', 'GBP', 'USD', 'CHF', 'JPY', 'KWD', 'BHD', 'SEK', 'PLN', 'CZK']) expect(differing).not.toContain(code);
  });

  it('are found in any case, and not where there is none', () => {
    expect(currencyOf(' eur ')).toBe('EUR');
    expect(currencyOf('XXX')).toBeUndefined();
    expect(() => digitsOf('XXX' as never)).toThrow();
  });
});

describe('fractions', () => {
  it('take a decimal for what it is written as', () => {
    expect(fractionOf(0.1)).toEqual({ top: 1n, bottom: 10n });
    expect(fractionOf('17.50')).toEqual({ top: 1750n, bottom: 100n });
    expect(fractionOf(1e21)).toEqual({ top: 10n ** 21n, bottom: 1n });
    expect(fractionOf(5e-7)).toEqual({ top: 5n, bottom: 10n ** 7n });
    expect(fractionOf(-2.5)).toEqual({ top: -25n, bottom: 10n });
    expect(percentAsFraction(17.5)).toEqual({ top: 175n, bottom: 1000n });
    expect(totalOf(fractionOf(0.1), fractionOf(0.2))).toEqual({ top: 30n, bottom: 100n });
    expect(productOf()).toEqual({ top: 1n, bottom: 1n });
    for (const wrong of ['1,5', '', 'x', Number.NaN, Infinity]) expect(() => fractionOf(wrong)).toThrow();
  });
});

describe('rounding', () => {
  it.each([
    [5n, 10n, 1n, 0n, 0n], [15n, 10n, 2n, 2n, 1n], [25n, 10n, 3n, 2n, 2n], [-5n, 10n, -1n, 0n, 0n], [-15n, 10n, -2n, -2n, -1n], [14n, 10n, 1n, 1n, 1n], [16n, 10n, 2n, 2n, 1n], [-16n, 10n, -2n, -2n, -1n],
  ])('%d/%d is %d half-up, %d half-even, %d down', (top, bottom, up, even, down) => {
    expect(roundings.map((rounding) => roundFraction({ top, bottom }, rounding))).toEqual([up, even, down]);
  });

  it('agrees with a money library’s division', () => {
    const rivals = { 'half-up': dineroBig.halfAwayFromZero, 'half-even': dineroBig.halfEven } as const;
    const calculator = { zero: () => 0n, increment: (a: bigint) => a + 1n, decrement: (a: bigint) => a - 1n, add: (a: bigint, b: bigint) => a + b, subtract: (a: bigint, b: bigint) => a - b, multiply: (a: bigint, b: bigint) => a * b, integerDivide: (a: bigint, b: bigint) => a / b, modulo: (a: bigint, b: bigint) => a % b, power: (a: bigint, b: bigint) => a ** b, compare: (a: bigint, b: bigint) => (a < b ? -1 : a > b ? 1 : 0) };
    fc.assert(fc.property(wholes, fc.bigInt({ min: 1n, max: 1000n }), fc.constantFrom('half-up', 'half-even'), (top, bottom, rounding) => {
      expect(roundFraction({ top, bottom }, rounding)).toBe(rivals[rounding](top, bottom, calculator as never));
    }));
  });

  it('is never a unit off', () => {
    fc.assert(fc.property(wholes, fc.bigInt({ min: 1n, max: 10n ** 9n }), fc.constantFrom(...roundings), (top, bottom, rounding) => {
      const off = roundFraction({ top, bottom }, rounding) * bottom - top;
      expect((off < 0n ? -off : off) < bottom).toBe(true);
    }));
  });
});

describe('amounts', () => {
  it('are refused where a number would lose units', () => {
    expect(minorFrom(BigInt(Number.MAX_SAFE_INTEGER), 'total')).toEqual({ ok: true, value: Number.MAX_SAFE_INTEGER });
    expect(minorFrom(BigInt(Number.MAX_SAFE_INTEGER) + 2n, 'total')).toMatchObject({ ok: false, issues: [{ code: 'range', path: 'total', given: '9007199254740993' }] });
  });

  it('are rounded once, at the end', () => {
    expect(scaled(6550, 'half-up', fractionOf(7.25))).toBe(47488n);
    expect(scaled(1, 'half-up', fractionOf(0.5), fractionOf(0.9))).toBe(0n);
    expect(sumMinor([1, 2n, Number.MAX_SAFE_INTEGER])).toBe(BigInt(Number.MAX_SAFE_INTEGER) + 3n);
  });
});

describe('parts of a total', () => {
  it('go to the largest remainders, the first on a tie', () => {
    expect(splitMinor(100, [1, 1, 1])).toEqual([34n, 33n, 33n]);
    expect(splitMinor(100001, [0.3, 0.3, 0.4])).toEqual([30000n, 30000n, 40001n]);
    expect(splitMinor(-100, [1, 1, 1])).toEqual([-34n, -33n, -33n]);
    expect(splitMinor(5, [0, 1])).toEqual([0n, 5n]);
    expect(() => splitMinor(5, [0, 0])).toThrow();
    expect(() => splitMinor(5, [-1, 3])).toThrow();
  });

  it('sum exactly, lie within a unit of the exact share, and keep the order of the shares', () => {
    fc.assert(fc.property(wholes, fc.array(fc.integer({ min: 1, max: 10_000 }), { minLength: 1, maxLength: 12 }), (total, shares) => {
      const parts = splitMinor(total, shares);
      const sum = BigInt(shares.reduce((a, b) => a + b, 0));
      expect(sumMinor(parts)).toBe(total);
      parts.forEach((part, i) => {
        const off = part * sum - total * BigInt(shares[i] ?? 0);
        expect((off < 0n ? -off : off) < sum).toBe(true);
      });
      const ranked = [...parts.keys()].sort((a, b) => (shares[a] ?? 0) - (shares[b] ?? 0));
      if (total > 0n) ranked.slice(1).forEach((at, i) => { const before = ranked[i] ?? 0; if ((shares[at] ?? 0) > (shares[before] ?? 0)) expect((parts[at] ?? 0n) >= (parts[before] ?? 0n)).toBe(true); });
    }));
  });
});

describe('tax', () => {
  it('on the margin is never negative', () => {
    expect(taxOnMargin({ purchaseMinor: 200_000, saleMinor: 150_000, ratePct: 20, rounding: 'half-up' })).toEqual({ margin: -50_000n, tax: 0n });
  });

  it('added to a net amount is found again in the gross, to the unit', () => {
    fc.assert(fc.property(fc.bigInt({ min: 0n, max: 10n ** 14n }), fc.constantFrom(5, 7, 7.7, 8.1, 19, 20, 21, 25.5), (net, ratePct) => {
      const tax = taxOnNet(net, ratePct, 'half-up');
      const off = taxInGross(net + tax, ratePct, 'half-up') - tax;
      expect(off >= -1n && off <= 1n).toBe(true);
    }));
  });
});

describe('money as typed', () => {
  it.each([
    ['1,234.50', 'EUR', 'en', 123450], ['1.234,50', 'EUR', 'de', 123450], ['1.234,50', 'EUR', 'en', 123450], ['1,234.50', 'EUR', 'de', 123450], ['1 234,5', 'EUR', 'de', 123450], ["1'234.50", 'CHF', 'de-CH', 123450],
    ['1.234', 'EUR', 'de', 123400], ['1,234', 'EUR', 'en', 123400], ['12,5', 'EUR', 'en', 1250], ['12.5', 'EUR', 'de', 1250], ['.5', 'EUR', 'en', 50], ['-3.20', 'EUR', 'en', -320], ['\u22123,20 €', 'EUR', 'de', -320],
    ['EUR 5', 'EUR', 'en', 500], ['5 eur', 'EUR', 'en', 500], ['1234', 'JPY', 'en', 1234], ['12,345', 'JPY', 'en', 12345], ['1.2345', 'KWD', 'en', 'format'], ['1.234', 'KWD', 'en', 1234], ['1,234', 'KWD', 'en', 'ambiguous'], ['1.234', 'KWD', 'de', 'ambiguous'], ['1,234,567', 'EUR', 'en', 123456700], ['1.234.567', 'EUR', 'de', 123456700],
    ['12.345', 'EUR', 'en', 'format'], ['12,345', 'EUR', 'de', 'format'], ['1.5', 'JPY', 'en', 'format'], ['5 USD', 'EUR', 'en', 'unit'], ['$5', 'EUR', 'en', 'unit'], ['', 'EUR', 'en', 'required'], ['abc', 'EUR', 'en', 'format'], ['1,23,4', 'EUR', 'en', 'format'], ['12,34.50', 'EUR', 'en', 'format'], ['99999999999999999', 'EUR', 'en', 'range'], ['1e5', 'EUR', 'en', 'format'], ['1+2', 'EUR', 'en', 'format'], ['5--', 'EUR', 'en', 'format'],
  ])('%s in %s (%s) gives %s', (typed, code, locale, expected) => {
    expect(read(typed, code, locale)).toBe(expected);
  });

  it('says cell, what was given and what is allowed', () => {
    expect(parseMoney('12.345', { currency: EUR, path: 'lines[2].priceMinor' })).toEqual({ ok: false, issues: [{ code: 'format', path: 'lines[2].priceMinor', given: '12.345', allowed: 'at most 2 decimals in EUR', params: { reason: 'moneyDigits', currency: 'EUR', digits: 2, sample: '1234.50' } }] });
  });

  it.each(['en', 'de', 'de-CH', 'fr', 'ja'])('comes back from print in %s, to the last unit', (locale) => {
    fc.assert(fc.property(fc.maxSafeInteger(), fc.constantFrom('EUR', 'JPY', 'GBP', 'CHF'), (minor, code) => {
      const money = { minor, currency: currency(code) };
      expect(read(formatMoney(money, locale), code, locale)).toBe(minor);
      expect(read(formatAmount(money, locale), code, locale)).toBe(minor);
      expect(read(decimalText(money), code)).toBe(minor);
    }));
  });

  it('prints the decimals its currency has', () => {
    expect(decimalText({ minor: -5, currency: EUR })).toBe('-0.05');
    expect(decimalText({ minor: 5, currency: currency('KWD') })).toBe('0.005');
    expect(decimalText({ minor: 5, currency: currency('JPY') })).toBe('5');
    expect(formatMoney({ minor: 123450, currency: EUR }, 'de')).toBe('1.234,50\u00A0EUR');
    expect(formatMoney({ minor: -123450, currency: EUR }, 'en')).toBe('\u2212EUR\u00A01,234.50');
  });
});
