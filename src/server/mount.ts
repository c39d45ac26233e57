import { checkInput } from '#operation';
import type { BenchStore } from '#store';
import { type Route, type RouteName, routes } from '#workshop';
import type { Context, Hono } from 'hono';
import { accepted } from './failure.ts';
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
  return { store: await store(), version, by, params: context.req.param(), query, body };
}
