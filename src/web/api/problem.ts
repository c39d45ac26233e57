/** One bad field of a problem document: where, what was given, what is allowed. */
export interface ProblemField {
  readonly path: string;
  readonly given?: unknown;
  readonly allowed?: string;
  readonly code?: string;
}

/** What the server answered instead of what was asked for (problem+json, RFC 9457); status 0 when it did not answer at all. */
export class ApiProblem extends Error {
  readonly status: number;
  readonly type: string;
  readonly title: string;
  readonly errors: readonly ProblemField[];

  constructor(given: { status: number; type?: string; title?: string; detail?: string; errors?: readonly ProblemField[] }) {
    super(given.detail ?? given.title ?? `status ${String(given.status)}`);
    this.name = 'ApiProblem';
    this.status = given.status;
    this.type = given.type ?? 'about:blank';
    this.title = given.title ?? '';
    this.errors = given.errors ?? [];
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
    const body = JSON.parse(text) as Partial<ConstructorParameters<typeof ApiProblem>[0]>;
    return new ApiProblem({ ...body, status: response.status });
  } catch {
    return new ApiProblem({ status: response.status, title: response.statusText, detail: text.slice(0, 300) });
  }
}
