import { type Issue, type Result, refuse } from '#result';
import type { z } from 'zod';
import type { Operation } from './operation.ts';

/** Checks raw input against the schema, runs, and holds the answer to be finite: NaN never leaves an operation. */
export function runOperation<I, O>(operation: Operation<I, O>, raw: unknown): Result<O> {
  const parsed = operation.input.safeParse(raw, { reportInput: true });
  if (!parsed.success) return refuse(...parsed.error.issues.flatMap((issue) => issuesOf(issue, raw)));
  const result = operation.run(parsed.data);
  if (result.ok) refuseNaN(operation.name, result.value);
  return result;
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
  if (given === undefined) return [{ code: 'required', path, given, allowed: allowedText(issue) }];
  return [{ code: codeOf(issue), path, given, allowed: allowedText(issue) }];
}

/** Of several allowed shapes, the one that fits best speaks: fewest issues, the first on a tie. */
function unionIssues(issue: z.core.$ZodIssueInvalidUnion, raw: unknown): readonly Issue[] {
  const branches = issue.errors.map((branch) =>
    branch.flatMap((inner) => issuesOf({ ...inner, path: [...issue.path, ...inner.path] } as z.core.$ZodIssue, raw)),
  );
  const best = branches.filter((branch) => branch.length > 0).sort((a, b) => a.length - b.length)[0];
  return best ?? [{ code: 'choice', path: pathText(issue.path), given: valueAt(raw, issue.path), allowed: issue.message }];
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
      return 'range';
    default:
      return 'type';
  }
}

function allowedText(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'too_small':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `at least ${String(issue.minimum)} ${issue.origin === 'array' ? 'entries' : 'characters'}`
        : `${issue.inclusive === false ? 'more than' : 'at least'} ${String(issue.minimum)}`;
    case 'too_big':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `at most ${String(issue.maximum)} ${issue.origin === 'array' ? 'entries' : 'characters'}`
        : `${issue.inclusive === false ? 'less than' : 'at most'} ${String(issue.maximum)}`;
    case 'invalid_type':
      return issue.expected === 'number' ? 'a finite number' : issue.expected === 'int' ? 'a whole number' : `a value of kind ${issue.expected}`;
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    default:
      return issue.message;
  }
}

/** `['notes', 3, 'keyRatio']` as `notes[3].keyRatio`. */
function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => (typeof step === 'number' ? `${text}[${String(step)}]` : text === '' ? String(step) : `${text}.${String(step)}`), '');
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, step) => (typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined), root);
}

function refuseNaN(name: string, value: unknown, path = ''): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${name} answered ${String(value)} at ${path || 'its root'}`);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) refuseNaN(name, inner, `${path}/${key}`);
}
