import type { Problem, ProblemEntry } from '#result';

/** What the server answered instead of what was asked for (problem+json, RFC 9457); status 0 when it did not answer at all. */
export class ApiProblem extends Error {
  readonly status: number;
  readonly type: string;
  readonly title: string;
  readonly errors: readonly ProblemEntry[];

  constructor({ status, type = 'about:blank', title = '', detail, errors = [] }: Partial<Problem> & Pick<Problem, 'status'>) {
    super(detail ?? (title === '' ? `status ${String(status)}` : title));
    this.name = 'ApiProblem';
    this.status = status;
    this.type = type;
    this.title = title;
    this.errors = errors;
  }

  /** True when a later try may well succeed: no answer, or the server itself in trouble. */
  get passing(): boolean {
    return this.status === 0 || this.status === 408 || this.status === 429 || this.status >= 500;
  }
}

/** Reads the problem out of an answer that was not what was hoped for. */
export async function problemOf(response: Response): Promise<ApiProblem> {
  const text = await response.text();
  try {
    return new ApiProblem({ ...(JSON.parse(text) as Partial<Problem>), status: response.status });
  } catch {
    return new ApiProblem({ status: response.status, title: response.statusText, detail: text.slice(0, 300) });
  }
}
