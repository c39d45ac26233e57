import { type Issue, type IssueCode, sayIssue, showGiven } from './result.ts';

/** Kinds of problem, each with its HTTP status and a title; described on the reference page. */
export const problemKinds = {
  malformed: { status: 400, title: 'The request could not be read' },
  forbidden: { status: 403, title: 'Not asked from this machine' },
  notFound: { status: 404, title: 'There is no such thing here' },
  conflict: { status: 409, title: 'Another write came first' },
  notUndoable: { status: 409, title: 'This can no longer be undone' },
  tooLarge: { status: 413, title: 'More was sent than is accepted' },
  unsupported: { status: 415, title: 'Sent in a form that is not accepted' },
  refused: { status: 422, title: 'Something given was refused' },
  internal: { status: 500, title: 'The program failed' },
  inUse: { status: 503, title: 'Another process owns the data folder' },
  unavailable: { status: 503, title: 'The store cannot be reached' },
} as const satisfies Readonly<Record<string, { readonly status: number; readonly title: string }>>;

export type ProblemKind = keyof typeof problemKinds;

/** One bad field of a problem document. `given` is shown as text where JSON cannot carry it or it is long. */
export interface ProblemEntry {
  readonly path: string;
  readonly given: string | number | boolean | null;
  readonly allowed: string;
  readonly code: IssueCode;
  readonly params?: Readonly<Record<string, string | number>>;
}

/** A problem document after RFC 9457 (media type `application/problem+json`), with one entry per bad field. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly errors: readonly ProblemEntry[];
}

/** Makes a problem document; without a detail of its own it says the first issue and counts the rest. */
export function problemOf(kind: ProblemKind, issues: readonly Issue[] = [], detail?: string): Problem {
  const { status, title } = problemKinds[kind];
  return { type: `/api/docs#problem-${kind}`, title, status, detail: detail ?? sayIssues(issues) ?? title, errors: issues.map(entryOf) };
}

function sayIssues(issues: readonly Issue[]): string | undefined {
  const [first, ...rest] = issues;
  if (first === undefined) return undefined;
  return rest.length === 0 ? sayIssue(first) : `${sayIssue(first)} (and ${String(rest.length)} more)`;
}

function entryOf({ path, given, allowed, code, params }: Issue): ProblemEntry {
  return { path, given: jsonOf(given), allowed, code, ...(params === undefined ? {} : { params }) };
}

function jsonOf(given: unknown): ProblemEntry['given'] {
  if (given === undefined || given === null) return null;
  if (typeof given === 'number') return Number.isFinite(given) ? given : String(given);
  if (typeof given === 'boolean') return given;
  return typeof given === 'string' && given.length <= 200 ? given : showGiven(given);
}
