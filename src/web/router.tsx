import { createRootRoute, createRoute, createRouter, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { walkSearchOf } from './readings/asked-walk.ts';
import { PianoShell } from './shell/piano-shell.tsx';
import { NotFound } from './shell/not-found.tsx';
import { Shell } from './shell/shell.tsx';

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
  component: lazyRouteComponent(() => import('./settings/settings-page.tsx'), 'SettingsPage'),
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
  component: lazyRouteComponent(() => import('./story/story-page.tsx'), 'StoryPage'),
});

const readingsRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/readings',
  validateSearch: walkSearchOf,
  component: lazyRouteComponent(() => import('./readings/readings-page.tsx'), 'ReadingsPage'),
});

const stringsRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/strings',
  component: lazyRouteComponent(() => import('./strings/strings-page.tsx'), 'StringsPage'),
});

const bellyRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/belly',
  component: lazyRouteComponent(() => import('./belly/belly-page.tsx'), 'BellyPage'),
});

const actionRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/action',
  component: lazyRouteComponent(() => import('./action/action-page.tsx'), 'ActionPage'),
});

const toneRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/tone',
  component: lazyRouteComponent(() => import('./tone/tone-page.tsx'), 'TonePage'),
});

const workRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/work',
  component: lazyRouteComponent(() => import('./work/work-page.tsx'), 'WorkPage'),
});

const proofRoute = createRoute({
  getParentRoute: () => pianoRoute,
  path: '/proof',
  component: lazyRouteComponent(() => import('./proof/proof-page.tsx'), 'ProofPage'),
});

export const router = createRouter({
  routeTree: rootRoute.addChildren([
    homeRoute,
    pianosRoute,
    settingsRoute,
    pianoRoute.addChildren([pianoHomeRoute, storyRoute, readingsRoute, stringsRoute, bellyRoute, actionRoute, toneRoute, workRoute, proofRoute]),
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
