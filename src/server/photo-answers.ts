import { PHOTO_LIMIT_BYTES, photoTypes } from '#instrument';
import type { Hono } from 'hono';
import { Refusal } from './failure.ts';
import { fileRoutes } from './file-routes.ts';
import type { Bench } from './mount.ts';

/** Mounts the routes photos are kept and shown by. A photo never changes: its address is the hash of its bytes. */
export function mountPhotos(app: Hono, { store }: Bench): void {
  app.post(fileRoutes.keepPhoto.path, async (context) => {
    const type = context.req.header('content-type') ?? '';
    if (!photoTypes.some((known) => known === type)) throw new Refusal('unsupported', [], `Sent as ${type === '' ? 'nothing in particular' : type}; send a photo as ${photoTypes.join(', ')}, at most ${String(PHOTO_LIMIT_BYTES / 1024 / 1024)} MB`);
    const bytes = new Uint8Array(await context.req.arrayBuffer());
    return context.json(await (await store()).keepPhoto(bytes));
  });
  app.get(fileRoutes.readPhoto.path, async (context) => {
    const { bytes, type } = await (await store()).readPhoto(context.req.param('hash'));
    return new Response(new Uint8Array(bytes), { headers: { 'content-type': type, 'cache-control': 'private, max-age=31536000, immutable' } });
  });
}
