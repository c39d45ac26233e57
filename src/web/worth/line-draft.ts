import { checkInput } from '#operation';
import { type Result, andThen, ok } from '#result';
import { type Estimate, type EstimateLine, estimateIssues, estimateSchema } from '#workshop';
import { shownFigure, shownMoney, worthReader } from './typed-money.ts';

export type LineKind = EstimateLine['kind'];

/** A line as typed; an empty text is not stated. */
export interface LineForm {
  readonly words: string;
  readonly operation: string;
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly chancePct: string;
  readonly rateMinor: string;
  readonly actualH: string;
  readonly priceMinor: string;
  readonly quantity: string;
  readonly leadDays: string;
  readonly supplier: string;
  readonly ways: readonly string[];
}

/** A new line, or one as it stands. */
export function lineFormOf(line: EstimateLine | undefined, { currency, alternatives }: Estimate, locale: string): LineForm {
  const empty: LineForm = { words: '', operation: '', low: '', likely: '', high: '', chancePct: '100', rateMinor: '', actualH: '', priceMinor: '', quantity: '1', leadDays: '', supplier: '', ways: alternatives.slice(0, 1).map(({ id }) => id) };
  if (line === undefined) return empty;
  const figure = (value: number | null): string => shownFigure(value, locale);
  const shared = { ...empty, words: line.words, ways: line.ways };
  if (line.kind === 'labour') return { ...shared, operation: line.operation, low: figure(line.low), likely: figure(line.likely), high: figure(line.high), chancePct: figure(line.chancePct), rateMinor: shownMoney(line.rateMinor, currency, locale), actualH: figure(line.actualH) };
  return { ...shared, priceMinor: shownMoney(line.priceMinor, currency, locale), leadDays: figure(line.leadDays), supplier: line.supplier, ...(line.kind === 'part' ? { quantity: figure(line.quantity) } : {}) };
}

/** The estimate with the line of a form in its place, new at the end, or which fields of the form are wrong. */
export function estimateWithLine(estimate: Estimate, kind: LineKind, form: LineForm, { standing, locale }: { readonly standing: EstimateLine | undefined; readonly locale: string }): Result<Estimate> {
  const id = standing?.id ?? freeId('line', estimate.lines);
  const read = lineOf(kind, form, { id, currency: estimate.currency, locale });
  return andThen(read, (line) => {
    const lines = standing === undefined ? [...estimate.lines, line] : estimate.lines.map((one) => (one.id === id ? line : one));
    return checkedAt(checkInput(estimateSchema, { ...estimate, lines }), lines.findIndex((one) => one.id === id));
  });
}

/** Issues of the line alone, under the names of the fields of its form. */
function checkedAt(checked: Result<Estimate>, index: number): Result<Estimate> {
  const prefix = `lines[${String(index)}].`;
  const issues = checked.ok ? estimateIssues(checked.value) : checked.issues;
  const own = issues.flatMap((issue) => (issue.path.startsWith(prefix) ? [{ ...issue, path: issue.path.slice(prefix.length).replace(/\[\d+\]$/u, '') }] : []));
  return own.length > 0 ? { ok: false, issues: own } : checked;
}

function lineOf(kind: LineKind, form: LineForm, { id, currency, locale }: { readonly id: string; readonly currency: string; readonly locale: string }): Result<EstimateLine> {
  const reader = worthReader(currency, locale);
  const needed = (path: 'low' | 'likely' | 'high' | 'chancePct' | 'quantity'): number => reader.needed(reader.figure(form[path], path), form[path], path) ?? 0;
  const words = form.words.trim();
  const shared = { id, words, ways: [...form.ways] };
  const line: EstimateLine = kind === 'labour'
    ? { kind, ...shared, operation: form.operation.trim(), low: needed('low'), likely: needed('likely'), high: needed('high'), chancePct: needed('chancePct'), rateMinor: reader.money(form.rateMinor, 'rateMinor'), actualH: reader.figure(form.actualH, 'actualH') }
    : bought(kind, { ...shared, priceMinor: reader.needed(reader.money(form.priceMinor, 'priceMinor'), form.priceMinor, 'priceMinor') ?? 0, leadDays: reader.figure(form.leadDays, 'leadDays'), supplier: form.supplier.trim() }, kind === 'part' ? needed('quantity') : 1);
  const missing = [
    ...(words === '' ? [{ code: 'required', path: 'words', given: form.words, allowed: 'words', params: { reason: 'words' } } as const] : []),
    ...(form.ways.length === 0 ? [{ code: 'required', path: 'ways', given: [], allowed: 'at least one way' } as const] : []),
  ];
  const issues = [...reader.issues, ...missing];
  return issues.length > 0 ? { ok: false, issues } : ok(line);
}

type Bought = Omit<Extract<EstimateLine, { kind: 'outside' }>, 'kind'>;

function bought(kind: 'part' | 'outside', line: Bought, quantity: number): EstimateLine {
  return kind === 'part' ? { kind, ...line, quantity } : { kind, ...line };
}

/** A name that none of the list has. */
export function freeId(stem: string, list: readonly { readonly id: string }[]): string {
  const numbers = list.map(({ id }) => Number(new RegExp(`^${stem}-(\\d+)$`, 'u').exec(id)?.[1] ?? 0));
  return `${stem}-${String(Math.max(0, ...numbers) + 1)}`;
}
