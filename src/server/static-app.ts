import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Hono } from 'hono';
import { getMimeType } from 'hono/utils/mime';

const HASHED = /-[\w-]{8}\.\w+$/u;

/** Serves the built web app: hashed files for a year, everything else fresh, and the page itself under every address of the app. */
export function mountWebApp(app: Hono, root: string): void {
  app.get('*', async (context) => {
    const asked = pathOf(context.req.url);
    if (asked === undefined) return context.notFound();
    const file = await fileAt(root, asked);
    if (file !== undefined) return send(file, HASHED.test(asked) ? 'public, max-age=31536000, immutable' : 'no-cache');
    const index = path.extname(asked) === '' ? await fileAt(root, '/index.html') : undefined;
    return index === undefined ? context.notFound() : send(index, 'no-cache');
  });
}

function pathOf(url: string): string | undefined {
  try {
    return decodeURIComponent(new URL(url).pathname);
  } catch {
    return undefined;
  }
}

/** The file an address names, or undefined where none stands inside the root. */
async function fileAt(root: string, asked: string): Promise<string | undefined> {
  const full = path.resolve(root, `.${path.posix.normalize(`/${asked}`)}`);
  if (asked.includes('\0') || !full.startsWith(path.resolve(root) + path.sep)) return undefined;
  const found = await stat(full).catch(() => undefined);
  return found?.isFile() === true ? full : undefined;
}

async function send(file: string, cacheControl: string): Promise<Response> {
  const headers = { 'content-type': getMimeType(file) ?? 'application/octet-stream', 'cache-control': cacheControl };
  return new Response(new Uint8Array(await readFile(file)), { headers });
}
