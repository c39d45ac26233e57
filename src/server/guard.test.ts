import { operations } from '#catalogue';
import type { BenchStore } from '#store';
import { describe, expect, it } from 'vitest';
import { createApp } from './app.ts';

/** The guard stands before the store: a store that never opens shows that nothing came through. */
const app = createApp({ store: new Promise<BenchStore>(() => undefined), version: '0', operations });
const calc = (headers: Record<string, string>) =>
  app.request('http://127.0.0.1:4949/api/calc/touch-weight', { method: 'POST', headers: { host: '127.0.0.1:4949', 'content-type': 'application/json', ...headers }, body: '{"downWeightG":49,"upWeightG":26}' });

describe('who may ask', () => {
  it.each(['127.0.0.1:4949', 'localhost:4949', '[::1]:4949', 'LOCALHOST'])('a page asked for as %s is answered', async (host) => {
    expect((await app.request('/api/docs', { headers: { host } })).status).toBe(200);
  });

  it.each(['bench.example:4949', '127.0.0.1.bench.example', 'localhost.bench.example:4949', '192.0.2.7:4949', 'localhost:4949.bench.example', ''])('a foreign name that resolves here (%s) is refused, reading too', async (host) => {
    const response = await app.request('/api/docs', { headers: { host } });
    expect(response.status).toBe(403);
    expect(response.headers.get('content-type')).toMatch(/problem\+json/u);
  });

  it('a page of another site may not write', async () => {
    for (const origin of ['https://bench.example', 'http://127.0.0.1:9999', 'http://localhost:4949', 'null']) {
      expect((await calc({ origin })).status, origin).toBe(403);
    }
    expect((await calc({ 'sec-fetch-site': 'cross-site' })).status).toBe(403);
  });

  it('our own page and a script may', async () => {
    expect((await calc({ origin: 'http://127.0.0.1:4949', 'sec-fetch-site': 'same-origin' })).status).toBe(200);
    expect((await calc({})).status).toBe(200);
  });

  it('answers may be neither framed nor sniffed nor read by another site', async () => {
    const { headers } = await app.request('/api/docs');
    expect(headers.get('x-frame-options')).toBe('DENY');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(headers.get('access-control-allow-origin')).toBeNull();
  });
});
