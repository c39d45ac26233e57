import { type Issue, type Problem, type ProblemKind, type Result, problemOf } from '#result';
import { StoreFailure } from '#store';
import { HTTPException } from 'hono/http-exception';

/** A request that is not carried out, with the kind of problem it is answered by. */
export class Refusal extends Error {
  readonly kind: ProblemKind;
  readonly issues: readonly Issue[];
  readonly detail: string | undefined;

  constructor(kind: ProblemKind, issues: readonly Issue[] = [], detail?: string) {
    super(detail ?? kind);
    this.name = 'Refusal';
    this.kind = kind;
    this.issues = issues;
    this.detail = detail;
  }
}

/** The value of a result, or a refusal of the request by its issues. */
export function accepted<T>(result: Result<T>, kind: ProblemKind = 'refused'): T {
  if (result.ok) return result.value;
  throw new Refusal(kind, result.issues);
}

/** The one place where what went wrong becomes a problem document; what is not known stays inside the house. */
export function problemOfError(error: unknown): Problem {
  if (error instanceof Refusal) return problemOf(error.kind, error.issues, error.detail);
  if (error instanceof StoreFailure) return problemOf(error.reason, error.issues, error.message);
  if (error instanceof HTTPException && error.status < 500) return problemOf('malformed', [], error.message);
  return problemOf('internal');
}

/** Answers with a problem document. */
export function answerProblem(problem: Problem): Response {
  return new Response(JSON.stringify(problem), {
    status: problem.status,
    headers: { 'content-type': 'application/problem+json; charset=utf-8', 'cache-control': 'no-store' },
  });
}
