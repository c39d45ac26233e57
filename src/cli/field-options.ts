import { type AnyOperation, type FieldRow, type JsonSchema, describeOperation, fieldRowsOf, readJson } from '#operation';
import { type Issue, type Result, ok, refuse } from '#result';
import { parseMeasure } from '#units';
import { locale } from './language.ts';

/** Options as they were typed, by the name of the field. */
export type TypedFields = Readonly<Record<string, unknown>>;

/** What yargs puts beside the options a person typed. */
const NOT_TYPED = new Set(['_', '$0', 'name', 'list', 'example', 'json']);

/** The fields of a calculation that were typed as options: `--file note.wav --key 40`. */
export function typedFieldsOf(argv: object): TypedFields {
  return Object.fromEntries(Object.entries(argv).filter(([name]) => !NOT_TYPED.has(name)));
}

/**
 * The input of a calculation, from options named as its fields. Figures may be typed as everywhere, with the decimal sign
 * of the shell; lists and groups as JSON. An option that is no field is refused by name.
 */
export function inputOfOptions(operation: AnyOperation, typed: TypedFields): Result<object> {
  const rows = fieldRowsOf(describeOperation(operation, String).inputSchema as JsonSchema).filter(({ path }) => !/[.[]/u.test(path));
  const names = [...new Set(rows.map(({ path }) => path))];
  const issues: Issue[] = [];
  const fields = Object.entries(typed).flatMap(([name, value]) => {
    const row = rows.find(({ path }) => path === name);
    const read: Result<unknown> = row === undefined ? refuse({ code: 'unknown', path: `--${name}`, given: value, allowed: names.map((one) => `--${one}`).join(', ') }) : valueOf(row, value);
    if (!read.ok) issues.push(...read.issues);
    return read.ok ? [[name, read.value] as const] : [];
  });
  return issues.length > 0 ? refuse(...issues) : ok(Object.fromEntries(fields));
}

function valueOf({ path, kind }: FieldRow, typed: unknown): Result<unknown> {
  const at = `--${path}`;
  if (Array.isArray(typed)) return refuse({ code: 'duplicate', path: at, given: typed.map(String).join(', '), allowed: 'the option once' });
  if (typeof typed !== 'string') return kind === 'yes or no' ? ok(typed) : refuse({ code: 'required', path: at, given: undefined, allowed: 'a value behind the option' });
  if (kind === 'recording' || kind === 'text' || kind === 'choice') return ok(typed);
  if (kind === 'yes or no') return ok(typed === 'true' ? true : typed === 'false' ? false : typed);
  if (kind === 'number' || kind === 'whole number') {
    const figure = parseMeasure(typed, { unit: '1', path: at, locale });
    return figure.ok ? ok(figure.value.value) : figure;
  }
  const read = readJson(typed);
  return read.ok ? read : refuse({ code: 'format', path: at, given: typed, allowed: 'JSON (RFC 8259)' });
}
