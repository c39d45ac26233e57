import type { MiddlewareHandler } from 'hono';
import { Refusal } from './failure.ts';

const LOOPBACK: ReadonlySet<string> = new Set(['127.0.0.1', 'localhost', '[::1]']);
const READING: ReadonlySet<string> = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Lets in only what was asked on this machine by name of this machine: a foreign name that resolves here
 * (DNS rebinding) is refused by its Host header, a page of another site that writes by its Origin.
 */
export const guardLoopback: MiddlewareHandler = async (context, next) => {
  const { url, method } = context.req;
  const host = context.req.header('host') ?? new URL(url).host;
  if (!LOOPBACK.has(hostnameOf(host))) throw new Refusal('forbidden', [], `Only asked for on this machine, as 127.0.0.1 or localhost; the Host header says ${JSON.stringify(host.slice(0, 80))}`);
  if (!READING.has(method) && isForeign(host, context.req.header('origin'), context.req.header('sec-fetch-site'))) {
    throw new Refusal('forbidden', [], 'A page of another site may not write here');
  }
  await next();
};

function isForeign(host: string, origin: string | undefined, fetchSite: string | undefined): boolean {
  if (origin !== undefined) return origin !== `http://${host}`;
  return fetchSite !== undefined && fetchSite !== 'same-origin' && fetchSite !== 'none';
}

function hostnameOf(host: string): string {
  return host.toLowerCase().replace(/:\d+$/u, '');
}

/** Headers on every answer: no sniffing, no framing, nothing fetched from elsewhere. */
export const houseHeaders: MiddlewareHandler = async (context, next) => {
  await next();
  const { headers } = context.res;
  headers.set('x-content-type-options', 'nosniff');
  headers.set('referrer-policy', 'no-referrer');
  headers.set('cross-origin-resource-policy', 'same-origin');
  headers.set('cross-origin-opener-policy', 'same-origin');
  headers.set('x-frame-options', 'DENY');
  if (!headers.has('content-security-policy')) headers.set('content-security-policy', CONTENT_POLICY);
};

const CONTENT_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');
