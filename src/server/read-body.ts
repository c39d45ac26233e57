import { readJson } from '#operation';
import type { Context } from 'hono';
import { Refusal, accepted } from './failure.ts';

/** Most bytes a request may carry: a year of spreadsheets, and far from filling the memory. */
export const BODY_LIMIT_BYTES = 20 * 1024 * 1024;

/** The JSON a request carries. Sent as anything else it is refused, so that no plain form of another site can write. */
export async function readBody(context: Context): Promise<unknown> {
  const type = context.req.header('content-type') ?? '';
  if (!/^application\/(?:[\w.+-]+\+)?json\s*(?:;|$)/iu.test(type)) {
    throw new Refusal('unsupported', [], `Sent as ${type === '' ? 'nothing in particular' : type}; send JSON with the header content-type: application/json`);
  }
  return accepted(readJson(await context.req.text()), 'malformed');
}
