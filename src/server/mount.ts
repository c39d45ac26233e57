import { checkInput } from '#operation';
import type { BenchStore } from '#store';
import { PERSON_HEADER, type Route, type RouteName, isPersonReference, routes } from '#workshop';
import type { Context, Hono } from 'hono';
import { Refusal, accepted } from './failure.ts';
import type { Call, Handlers } from './handlers.ts';
import { readBody } from './read-body.ts';

/** What every handler may use. */
export interface Bench {
  readonly store: () => Promise<BenchStore>;
  readonly version: string;
  readonly by: string;
  readonly clock: () => Date;
}

/** Mounts every route of the workshop: query and body are checked by the route's schemas before its handler runs. */
export function mountRoutes(app: Hono, bench: Bench, handlers: Handlers): void {
  for (const name of Object.keys(handlers) as RouteName[]) {
    const handle = handlers[name] as (call: Call<RouteName>) => Promise<unknown>;
    const route: Route = routes[name];
    app.on(route.method, route.path, async (context) => {
      const call = await callOf(context, route, bench);
      context.header('cache-control', 'no-store');
      return context.json((await handle(call as Call<RouteName>)) as object);
    });
  }
}

async function callOf(context: Context, route: Route, { store, version, by }: Bench): Promise<object> {
  const query = route.query === undefined ? undefined : accepted(checkInput(route.query, context.req.query()));
  const body = route.body === undefined ? undefined : accepted(checkInput(route.body, await readBody(context)));
  return { store: await store(), version, by: personOf(context) ?? by, params: context.req.param(), query, body };
}

/** The person a request names. Only a reference passes: a name in its place would stand in the log for ever. */
function personOf(context: Context): string | undefined {
  const given = context.req.header(PERSON_HEADER);
  if (given === undefined || isPersonReference(given)) return given;
  throw new Refusal('refused', [{ code: 'format', path: PERSON_HEADER, given, allowed: 'a reference as GET /api/people lists them' }]);
}
