import { createRootRoute, createRoute, createRouter, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { learn } from './language/catalogue.ts';
import { walkSearchOf } from './readings/asked-walk.ts';
import { stockSearchOf } from './stock-book/stock-search.ts';
import { PianoShell } from './shell/piano-shell.tsx';
import { NotFound } from './shell/not-found.tsx';
import { Shell } from './shell/shell.tsx';
import { preferences } from './theme/preferences.ts';

/** A page that says more than the first one stands once its words are here too. */
async function withWords<Page>(page: Promise<Page>): Promise<Page> {
  const [loaded] = await Promise.all([page, learn(preferences().language)]);
  return loaded;
}

const rootRoute = createRootRoute({ component: Shell, notFoundComponent: NotFound });

const homeRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/',
  beforeLoad: () => {
    redirect({ to: '/pianos', replace: true, throw: true });
  },
});

const pianosRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/pianos',
  component: lazyRouteComponent(() => import('./pianos/pianos-page.tsx'), 'PianosPage'),
});

const settingsRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/settings',
  component: lazyRouteComponent(() => withWords(import('./settings/settings-page.tsx')), 'SettingsPage'),
});

/** Which person is looked at; none when not said. */
export interface PeopleSearch {
  readonly person?: string;
}

const peopleRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/people',
  validateSearch: (search: Record<string, unknown>): PeopleSearch => (typeof search['person'] === 'string' ? { person: search['person'] } : {}),
  component: lazyRouteComponent(() => withWords(import('./shop/people-page.tsx')), 'PeoplePage'),
});

const benchRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/bench',
  component: lazyRouteComponent(() => withWords(import('./bench/bench-page.tsx')), 'BenchPage'),
});

const partsRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/parts',
  component: lazyRouteComponent(() => withWords(import('./parts/parts-page.tsx')), 'PartsPage'),
});

const stockBookRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/stock-book',
  validateSearch: stockSearchOf,
  component: lazyRouteComponent(() => withWords(import('./stock-book/stock-book-page.tsx')), 'StockBookPage'),
});

/** Which stay in the shop is looked at; the current one when not said. */
export interface PianoSearch {
  readonly cycle?: number;
}

export const pianoRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/pianos/$pianoId',
  component: PianoShell,
  validateSearch: (search: Record<string, unknown>): PianoSearch => {
    const cycle = Number(search['cycle']);
    return Number.isInteger(cycle) && cycle >= 1 ? { cycle } : {};
  },
});

const pianoHomeRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/',
  beforeLoad: ({ params }) => {
    redirect({ to: '/pianos/$pianoId/story', params, replace: true, throw: true });
  },
});

const storyRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/story',
  component: lazyRouteComponent(() => withWords(import('./story/story-page.tsx')), 'StoryPage'),
});

const readingsRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/readings',
  validateSearch: walkSearchOf,
  component: lazyRouteComponent(() => withWords(import('./readings/readings-page.tsx')), 'ReadingsPage'),
});

const stringsRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/strings',
  component: lazyRouteComponent(() => withWords(import('./strings/strings-page.tsx')), 'StringsPage'),
});

const bellyRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/belly',
  component: lazyRouteComponent(() => withWords(import('./belly/belly-page.tsx')), 'BellyPage'),
});

const actionRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/action',
  component: lazyRouteComponent(() => withWords(import('./action/action-page.tsx')), 'ActionPage'),
});

const toneRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/tone',
  component: lazyRouteComponent(() => withWords(import('./tone/tone-page.tsx')), 'TonePage'),
});

const workRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/work',
  component: lazyRouteComponent(() => withWords(import('./work/work-page.tsx')), 'WorkPage'),
});

const worthRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/worth',
  component: lazyRouteComponent(() => withWords(import('./worth/worth-page.tsx')), 'WorthPage'),
});

const roomRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/room',
  component: lazyRouteComponent(() => withWords(import('./room/room-page.tsx')), 'RoomPage'),
});

const papersRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/papers',
  component: lazyRouteComponent(() => withWords(import('./papers/papers-page.tsx')), 'PapersPage'),
});

const careRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/care',
  component: lazyRouteComponent(() => withWords(import('./care/care-page.tsx')), 'CarePage'),
});

const proofRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/proof',
  component: lazyRouteComponent(() => withWords(import('./proof/proof-page.tsx')), 'ProofPage'),
});

export const router = createRouter({
  routeTree: rootRoute.addChildren([
    homeRoute,
    pianosRoute,
    benchRoute,
    peopleRoute,
    partsRoute,
    stockBookRoute,
    settingsRoute,
    pianoRoute.addChildren([pianoHomeRoute, storyRoute, readingsRoute, stringsRoute, bellyRoute, actionRoute, toneRoute, workRoute, worthRoute, roomRoute, papersRoute, careRoute, proofRoute]),
  ]),
  defaultPreload: 'intent',
  defaultNotFoundComponent: NotFound,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
