/**
 * One thing wrong with what a user gave: which cell, what stood there, what is allowed.
 * `code` and `params` let a screen say it in the user's language; `allowed` says it in English to scripts.
 */
export interface Issue {
  readonly code: IssueCode;
  /** Where: `downWeightG`, `notes[3].hammerWeightG`, `row 12, column B`. Empty for the whole input. */
  readonly path: string;
  readonly given: unknown;
  readonly allowed: string;
  readonly params?: Readonly<Record<string, string | number>>;
}

export type IssueCode =
  | 'required'
  | 'type'
  | 'range'
  | 'order'
  | 'length'
  | 'choice'
  | 'format'
  | 'ambiguous'
  | 'unit'
  | 'unknown'
  | 'duplicate'
  | 'conflict'
  | 'unreachable'
  | 'unsolvable';

/** A value, or the list of what was wrong with what was given. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Wraps a value as a success. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** Wraps one or more issues as a refusal. */
export function refuse(...issues: readonly Issue[]): Result<never> {
  return { ok: false, issues };
}

/** Turns the value of a success, leaves a refusal as it is. */
export function map<T, U>(result: Result<T>, turn: (value: T) => U): Result<U> {
  return result.ok ? ok(turn(result.value)) : result;
}

/** Feeds a success into the next step, leaves a refusal as it is. */
export function andThen<T, U>(result: Result<T>, next: (value: T) => Result<U>): Result<U> {
  return result.ok ? next(result.value) : result;
}

/** All values, or all issues of all refusals: nobody corrects a form one field at a time. */
export function all<T>(results: readonly Result<T>[]): Result<readonly T[]> {
  const issues = results.flatMap((result) => (result.ok ? [] : result.issues));
  if (issues.length > 0) return { ok: false, issues };
  return ok(results.flatMap((result) => (result.ok ? [result.value] : [])));
}

/** The same issues under a longer path: `prefix(issue, 'notes[3]')` gives `notes[3].downWeightG`. */
export function under(prefix: string, issues: readonly Issue[]): readonly Issue[] {
  return issues.map((issue) => ({
    ...issue,
    path: issue.path === '' ? prefix : issue.path.startsWith('[') ? prefix + issue.path : `${prefix}.${issue.path}`,
  }));
}

/**
 * The value of a result that cannot fail here.
 * @throws Error when it did fail: a broken invariant, never a user's mistake.
 */
export function mustBe<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.issues.map(sayIssue).join('; '));
}

/** One issue in plain English: where, what was given, what is allowed. */
export function sayIssue(issue: Issue): string {
  const where = issue.path === '' ? '' : `${issue.path}: `;
  return `${where}given ${showGiven(issue.given)}, allowed ${issue.allowed}`;
}

/** A short printable form of whatever was given. */
export function showGiven(given: unknown): string {
  if (given === undefined) return 'nothing';
  if (typeof given === 'number' || typeof given === 'bigint') return String(given);
  const text = typeof given === 'object' || typeof given === 'string' || typeof given === 'boolean' ? JSON.stringify(given) : typeof given;
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}
