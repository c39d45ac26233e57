import type { AnyOperation } from '#operation';
import { problemOf } from '#result';
import type { BenchStore } from '#store';
import { createSay, languageOf } from '#text';
import { Hono } from 'hono';
import { mountCalculations } from './calc-routes.ts';
import { docsPage } from './docs-page.ts';
import { docsStyle } from './docs-style.ts';
import { answerProblem, problemOfError } from './failure.ts';
import { guardLoopback, houseHeaders } from './guard.ts';
import { storeHandlers } from './handlers.ts';
import { careHandlers } from './care-handlers.ts';
import { importHandlers } from './import-handlers.ts';
import { logHandlers } from './log-handlers.ts';
import { mountCalendar } from './calendar-answer.ts';
import { mountFiles } from './file-answers.ts';
import { mountOrders } from './order-answers.ts';
import { mountQuotes } from './quote-answers.ts';
import { mountStockBook } from './stock-book-answers.ts';
import { mountSheets } from './sheet-answers.ts';
import { localeOf, sayKeyOf } from './locale.ts';
import { mountRoutes } from './mount.ts';
import { mountRecordings } from './recording-answers.ts';
import { mountPhotos } from './photo-answers.ts';
import { openApiOf } from './openapi.ts';
import { limitBody } from './read-body.ts';
import { referenceOf } from './reference.ts';
import { mountWebApp } from './static-app.ts';

export interface AppOptions {
  /** The store, or the promise of one: pages are served while it opens, requests that need it wait. */
  readonly store: BenchStore | Promise<BenchStore>;
  readonly version: string;
  readonly operations: readonly AnyOperation[];
  /** Folder of the built web app; without one only the API answers. */
  readonly webRoot?: string;
  /** What is written into an event where the request names nobody. */
  readonly by?: string;
  /** Day and time of printing. */
  readonly clock?: () => Date;
  /** Told of failures that are the program's own, so that they reach a log and never an answer. */
  readonly onFailure?: (error: unknown) => void;
}

/** The whole HTTP face: the API, its description and reference, the calculations, the web app. */
export function createApp({ store, version, operations, webRoot, by = 'bench', clock = () => new Date(), onFailure }: AppOptions): Hono {
  const app = new Hono();
  app.use(houseHeaders);
  app.use(guardLoopback);
  app.use('/api/*', limitBody);
  const bench = { store: () => Promise.resolve(store), version, by, clock };
  mountRoutes(app, bench, { ...storeHandlers, ...importHandlers, ...careHandlers, ...logHandlers });
  mountFiles(app, bench);
  mountOrders(app, bench);
  mountSheets(app, bench);
  mountQuotes(app, bench);
  mountStockBook(app, bench);
  mountPhotos(app, bench);
  mountCalendar(app, bench);
  mountRecordings(app, bench);
  mountCalculations(app, operations);
  mountDescriptions(app, operations, version);
  app.all('/api/*', (context) => answerProblem(problemOf('notFound', [], `There is no ${context.req.method} ${context.req.path}; see /api/docs`)));
  if (webRoot !== undefined) mountWebApp(app, webRoot);
  app.notFound((context) => answerProblem(problemOf('notFound', [], `There is nothing at ${context.req.path}`)));
  app.onError((error) => {
    const problem = problemOfError(error);
    if (problem.status === 500) onFailure?.(error);
    return answerProblem(problem);
  });
  return app;
}

function mountDescriptions(app: Hono, operations: readonly AnyOperation[], version: string): void {
  app.get('/api/openapi.json', (context) => context.json(openApiOf({ operations, version, say: sayKeyOf(createSay(localeOf(context))) })));
  app.get('/api/docs', (context) => {
    const locale = localeOf(context);
    const say = createSay(locale);
    return context.html(docsPage(referenceOf(operations, sayKeyOf(say)), say, languageOf(locale), docsStyle));
  });
}
