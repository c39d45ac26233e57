import { readJson } from '#operation';
import { problemOf } from '#result';
import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { fileRoutes } from './file-routes.ts';
import { Refusal, accepted, answerProblem } from './failure.ts';

/** Most bytes a request may carry: a year of spreadsheets, and far from filling the memory. */
export const BODY_LIMIT_BYTES = 20 * 1024 * 1024;

/** Most bytes of a form with a recording: five minutes of two channels in 16 bits. A longer one is kept with its piano and worked on there. */
export const FORM_LIMIT_BYTES = 64 * 1024 * 1024;

/**
 * Refuses what is larger than its kind may be, before it is read where its header says so, else as soon as it is.
 * Sound files to be kept go to the disk as they come and have a limit of their own.
 */
export const limitBody: MiddlewareHandler = (context, next) => (context.req.path === fileRoutes.keepRecording.path ? next() : (isForm(context) ? limitForm : limitJson)(context, next));

const limitTo = (maxSize: number): MiddlewareHandler => bodyLimit({ maxSize, onError: () => answerProblem(problemOf('tooLarge', [], `A request may carry at most ${String(maxSize / 1024 / 1024)} MB`)) });
const limitForm = limitTo(FORM_LIMIT_BYTES);
const limitJson = limitTo(BODY_LIMIT_BYTES);

/** True for a form of several parts, which is how a browser sends a file. */
export function isForm(context: Context): boolean {
  return /^multipart\/form-data\s*(?:;|$)/iu.test(context.req.header('content-type') ?? '');
}

/** The JSON a request carries. Sent as anything else it is refused, so that no plain form of another site can write. */
export async function readBody(context: Context): Promise<unknown> {
  const type = context.req.header('content-type') ?? '';
  if (!/^application\/(?:[\w.+-]+\+)?json\s*(?:;|$)/iu.test(type)) {
    throw new Refusal('unsupported', [], `Sent as ${type === '' ? 'nothing in particular' : type}; send JSON with the header content-type: application/json`);
  }
  return accepted(readJson(await context.req.text()), 'malformed');
}
