import { type Issue, type Result, ok, refuse } from '#result';
import type { z } from 'zod';

/** Checks raw input against a schema; what is wrong comes back as issues that name field, given and allowed. */
export function checkInput<T>(schema: z.ZodType<T>, raw: unknown): Result<T> {
  const parsed = schema.safeParse(raw, { reportInput: true });
  return parsed.success ? ok(parsed.data) : refuse(...parsed.error.issues.flatMap((issue) => issuesOf(issue, raw)));
}

function issuesOf(issue: z.core.$ZodIssue, raw: unknown): readonly Issue[] {
  const path = pathText(issue.path);
  if (issue.code === 'invalid_union') return unionIssues(issue, raw);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      code: 'unknown' as const,
      path: path === '' ? key : `${path}.${key}`,
      given: valueAt(valueAt(raw, issue.path), [key]),
      allowed: 'no such field',
    }));
  }
  const given = valueAt(raw, issue.path);
  const { allowed, params } = limitOf(issue);
  return [{ code: given === undefined ? 'required' : codeOf(issue), path, given, allowed, ...(params === undefined ? {} : { params }) }];
}

/** Of several allowed shapes, the one that fits best speaks: fewest fields it does not know, then of the kind given, then fewest issues, the first on a tie. */
function unionIssues(issue: z.core.$ZodIssueInvalidUnion, raw: unknown): readonly Issue[] {
  const branches = issue.errors.map((branch) =>
    branch.flatMap((inner) => issuesOf({ ...inner, path: [...issue.path, ...inner.path] }, raw)),
  );
  const strangers = (branch: readonly Issue[]): number => branch.filter(({ code }) => code === 'unknown').length;
  const here = pathText(issue.path);
  const otherKind = (branch: readonly Issue[]): number => branch.filter(({ code, path }) => code === 'type' && path === here).length;
  const best = branches.filter((branch) => branch.length > 0).sort((a, b) => strangers(a) - strangers(b) || otherKind(a) - otherKind(b) || a.length - b.length)[0];
  return best ?? [noBranch(issue, raw)];
}

/** A discriminated union whose key names no branch: the branches themselves say what the key may be. */
function noBranch(issue: z.core.$ZodIssueInvalidUnion, raw: unknown): Issue {
  const given = valueAt(raw, issue.path);
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String).join(', ') : undefined;
  return {
    code: given === undefined ? 'required' : 'choice',
    path: pathText(issue.path),
    given,
    allowed: options === undefined ? issue.message : `one of ${options}`,
    ...(options === undefined ? {} : { params: { choices: options } }),
  };
}

function codeOf(issue: z.core.$ZodIssue): Issue['code'] {
  switch (issue.code) {
    case 'too_small':
    case 'too_big':
      return issue.origin === 'array' || issue.origin === 'string' ? 'length' : 'range';
    case 'invalid_value':
      return 'choice';
    case 'invalid_format':
      return 'format';
    case 'custom':
      return issue.params?.['kind'] === 'sound' ? 'type' : 'range';
    default:
      return 'type';
  }
}

type Limit = Pick<Issue, 'allowed' | 'params'>;

function limitOf(issue: z.core.$ZodIssue): Limit {
  switch (issue.code) {
    case 'too_small':
      return boundOf(issue.origin, Number(issue.minimum), issue.inclusive === false ? 'above' : 'min');
    case 'too_big':
      return boundOf(issue.origin, Number(issue.maximum), issue.inclusive === false ? 'below' : 'max');
    case 'invalid_type':
      return { allowed: KINDS[issue.expected] ?? `a value of kind ${issue.expected}`, params: { kind: issue.expected } };
    case 'invalid_value': {
      const choices = issue.values.map(String).join(', ');
      return { allowed: `one of ${choices}`, params: { choices } };
    }
    case 'invalid_format':
      return issue.format === 'date' ? { allowed: 'a day as YYYY-MM-DD, such as 2026-03-09', params: { reason: 'day' } } : { allowed: issue.message };
    case 'custom':
      return { allowed: issue.message, ...(issue.params?.['kind'] === 'sound' ? { params: { kind: 'sound' } } : {}) };
    default:
      return { allowed: issue.message };
  }
}

const KINDS: Readonly<Record<string, string>> = { number: 'a finite number', int: 'a whole number' };
const BOUNDS = { min: 'at least', above: 'more than', max: 'at most', below: 'less than' } as const;

function boundOf(origin: string, limit: number, bound: keyof typeof BOUNDS): Limit {
  const what = origin === 'array' ? ' entries' : origin === 'string' ? ' characters' : '';
  return { allowed: `${BOUNDS[bound]} ${String(limit)}${what}`, params: { [bound]: limit, of: origin } };
}

/** `['notes', 3, 'keyRatio']` as `notes[3].keyRatio`. */
function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => (typeof step === 'number' ? `${text}[${String(step)}]` : text === '' ? String(step) : `${text}.${String(step)}`), '');
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, step) => (typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined), root);
}
