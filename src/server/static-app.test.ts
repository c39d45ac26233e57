import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { BenchStore } from '#store';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createApp } from './app.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-pages-'));
  await mkdir(path.join(folder, 'pages/assets'), { recursive: true });
  await writeFile(path.join(folder, 'secret.txt'), 'outside');
  await writeFile(path.join(folder, 'pages/index.html'), '<!doctype html><title>pages</title>');
  await writeFile(path.join(folder, 'pages/assets/main-B1x_c-9Z.js'), 'export {};');
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const get = (at: string) => createApp({ store: new Promise<BenchStore>(() => undefined), version: '0', operations: [], webRoot: path.join(folder, 'pages') }).request(at);

it('hashed files are kept for a year, the page is asked for afresh', async () => {
  const script = await get('/assets/main-B1x_c-9Z.js');
  expect([script.headers.get('content-type'), script.headers.get('cache-control')]).toEqual(['text/javascript; charset=utf-8', 'public, max-age=31536000, immutable']);
  expect((await get('/index.html')).headers.get('cache-control')).toBe('no-cache');
});

it('every address of the app is the page, a missing file is missing', async () => {
  for (const at of ['/', '/pianos/abc/readings']) expect(await (await get(at)).text()).toContain('<title>pages</title>');
  for (const at of ['/assets/gone-12345678.js', '/gone.png', '/api/gone']) expect((await get(at)).status, at).toBe(404);
});

it('nothing outside the folder is served', async () => {
  for (const at of ['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets/..%2f..%2f..%2fsecret.txt', '/%00secret.txt', '/%E0%A4%A']) expect(await (await get(at)).text(), at).not.toContain('outside');
});
