import { type ActionTerms, type ActionTermsDraft, type BenchOperation, type BenchPart, type BenchSetUp, benchOperations, benchParts, benchSetUps } from '#instrument';
import { type Currency, currencyOf, formatAmount, parseMoney } from '#money';
import type { Issue, Result } from '#result';
import { usualMinutes, usualSetUpMinutes } from '#workshop';
import { type TypedFigures, figureReader, shownFigure, statedOver } from '../terms/typed-figures.ts';

/** Minutes and what else the least work hangs on, as typed. */
export interface WorkForm {
  readonly minutes: TypedFigures<BenchOperation>;
  readonly setUps: TypedFigures<BenchSetUp>;
  /** Code of the shop's money, and what a part costs in it. */
  readonly currency: string;
  readonly prices: TypedFigures<BenchPart>;
  readonly excessSits: NonNullable<ActionTerms['excessSits']> | '';
  readonly frictionLimit: NonNullable<ActionTerms['frictionLimit']> | '';
  readonly workRoom: NonNullable<ActionTerms['workRoom']> | '';
}

/** No part costs more, in the smallest unit of money; as the terms allow. */
const MOST_PRICE = 100_000_000;

/** No job takes longer than this at one key, no set-up at all; as the terms allow. */
const MOST_MINUTES = 2000;

/** The form that shows these terms, figures in the reader's locale. */
export function workFormOf(terms: ActionTerms | null, locale: string): WorkForm {
  const of = <Name extends string>(names: readonly Name[], shown: (name: Name) => string): TypedFigures<Name> => Object.fromEntries(names.map((name) => [name, shown(name)])) as TypedFigures<Name>;
  return {
    minutes: of(benchOperations, (name) => shownFigure(terms?.operationMinutes.find(({ operation }) => operation === name)?.minutes, locale)),
    setUps: of(benchSetUps, (name) => shownFigure(terms?.setUpMinutes.find(({ setUp }) => setUp === name)?.minutes, locale)),
    currency: terms?.currency ?? '', prices: of(benchParts, (part) => priceShown(terms, part, locale)),
    excessSits: terms?.excessSits ?? '', frictionLimit: terms?.frictionLimit ?? '', workRoom: terms?.workRoom ?? '',
  };
}

function priceShown(terms: ActionTerms | null, part: BenchPart, locale: string): string {
  const [currency, minor] = [currencyOf(terms?.currency ?? ''), terms?.partPrices.find((one) => one.part === part)?.priceMinor];
  return currency === undefined || minor === undefined ? '' : formatAmount({ minor, currency }, locale);
}

interface ReadPrices {
  readonly currency: Currency | null;
  readonly partPrices: readonly ActionTerms['partPrices'][number][];
  readonly issues: readonly Issue[];
}

/** Prices as typed; a currency is needed where there is one. */
function readPrices({ currency: typed, prices }: Pick<WorkForm, 'currency' | 'prices'>, locale: string): ReadPrices {
  const priced = benchParts.filter((part) => prices[part].trim() !== '');
  const currency = currencyOf(typed);
  const isNone = typed.trim() === '' && priced.length === 0;
  if (currency === undefined) return { currency: null, partPrices: [], issues: isNone ? [] : [{ code: 'choice', path: 'currency', given: typed, allowed: 'the code of a currency, such as EUR', params: { reason: 'currency' } }] };
  const read = priced.map((part) => ({ part, price: parseMoney(prices[part], { currency, path: `prices.${part}`, locale }) }));
  const issues = read.flatMap(({ part, price }): readonly Issue[] => {
    if (!price.ok) return price.issues;
    return price.value.minor >= 0 && price.value.minor <= MOST_PRICE ? [] : [{ code: 'range', path: `prices.${part}`, given: prices[part], allowed: 'a price from 0 on', params: { min: 0 } }];
  });
  return { currency, partPrices: read.flatMap(({ part, price }) => (price.ok ? [{ part, priceMinor: price.value.minor }] : [])), issues };
}

/** The terms a form states, over what stands of the rest of the action; or which fields are wrong. */
export function workTermsOf(form: WorkForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> {
  const reader = figureReader(locale);
  const outOfRange: Issue[] = [];
  const read = (typed: string, path: string): number | null => {
    const minutes = reader.read(typed, path, '1');
    if (minutes === null || (minutes >= 0 && minutes <= MOST_MINUTES)) return minutes;
    outOfRange.push({ code: 'range', path, given: typed, allowed: `0 to ${String(MOST_MINUTES)} minutes`, params: { min: 0, max: MOST_MINUTES } });
    return null;
  };
  const operationMinutes = benchOperations.flatMap((operation) => {
    const minutes = read(form.minutes[operation], `minutes.${operation}`);
    return minutes === null ? [] : [{ operation, minutes }];
  });
  const setUpMinutes = benchSetUps.flatMap((setUp) => {
    const minutes = read(form.setUps[setUp], `setUps.${setUp}`);
    return minutes === null ? [] : [{ setUp, minutes }];
  });
  const { issues: misread, ...money } = readPrices(form, locale);
  const rest = { currency: money.currency, partPrices: [...money.partPrices], excessSits: form.excessSits || null, frictionLimit: form.frictionLimit || null, workRoom: form.workRoom || null };
  return statedOver(standing, { operationMinutes, setUpMinutes, ...rest }, [...reader.issues, ...outOfRange, ...misread]);
}

/** Empty fields filled with usual minutes; nothing typed is touched. */
export function withUsualMinutes(form: WorkForm, jobs: readonly BenchOperation[], setUps: readonly BenchSetUp[], locale: string): WorkForm {
  const filled = <Name extends string>(typed: TypedFigures<Name>, usual: Readonly<Record<Name, number>>, names: readonly Name[]): TypedFigures<Name> =>
    ({ ...typed, ...Object.fromEntries(names.filter((name) => typed[name].trim() === '').map((name) => [name, shownFigure(usual[name], locale)])) });
  return { ...form, minutes: filled(form.minutes, usualMinutes, jobs), setUps: filled(form.setUps, usualSetUpMinutes, setUps) };
}
