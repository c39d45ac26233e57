import type { Answer, Body, Query, RouteName } from '#workshop';
import { atTheBench } from '../people/at-the-bench.ts';
import { PERSON_HEADER, paths } from './paths.ts';
import { ApiProblem, problemOf } from './problem.ts';

/** What a call carries: the parts of the path, the query, the body. */
export type CallOptions<N extends RouteName> = {
  readonly params?: Readonly<Record<string, string>>;
  readonly signal?: AbortSignal;
  /** Reference of the person who wrote it, where that is not the one at the bench now; null for nobody. */
  readonly by?: string | null;
} & (Query<N> extends undefined ? unknown : { readonly query?: Query<N> }) &
  (Body<N> extends undefined ? unknown : { readonly body: Body<N> });

/** Calls one route of the API. @throws ApiProblem for every answer but a good one, and for none at all. */
export async function call<N extends RouteName>(name: N, options: CallOptions<N>): Promise<Answer<N>> {
  const { method, path } = paths[name];
  const { params = {}, signal, by = atTheBench(), query, body } = options as { params?: Record<string, string>; signal?: AbortSignal; by?: string | null; query?: Record<string, string | undefined>; body?: unknown };
  const filled = path.replaceAll(/:(\w+)/gu, (_, part: string) => encodeURIComponent(params[part] ?? ''));
  const search = new URLSearchParams(Object.entries(query ?? {}).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])));
  const url = search.size === 0 ? filled : `${filled}?${search.toString()}`;
  const response = await send(url, {
    method,
    headers: { accept: 'application/json', ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...(method === 'GET' || by === null ? {} : { [PERSON_HEADER]: by }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(signal === undefined ? {} : { signal }),
  });
  if (!response.ok) throw await problemOf(response);
  return (await response.json()) as Answer<N>;
}

async function send(url: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(url, init);
  } catch (cause) {
    if (init.signal?.aborted === true) throw cause;
    throw new ApiProblem({ status: 0, title: 'no answer', detail: cause instanceof Error ? cause.message : String(cause) });
  }
}
