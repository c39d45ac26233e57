import { ReadableStream as NodeStream } from 'node:stream/web';
import { MAX_RECORDING_BYTES } from '#recording';
import type { ByteRange } from '#store';
import type { Context, Hono } from 'hono';
import { Refusal } from './failure.ts';
import { fileRoutes } from './file-routes.ts';
import type { Bench } from './mount.ts';
import { soundTypes } from './sound-types.ts';

const MEGABYTE = 1_000_000;
const HASH = /^[0-9a-f]{64}$/u;

/** Mounts the routes sound files are kept and heard by. Neither way is a whole file ever in memory. */
export function mountRecordings(app: Hono, { store }: Bench): void {
  app.post(fileRoutes.keepRecording.path, async (context) => {
    const said = lengthOf(context);
    const { body } = context.req.raw;
    if (body === null) throw new Refusal('refused', [{ code: 'required', path: 'recording', given: null, allowed: 'the bytes of a sound file' }]);
    return context.json(await (await store()).keepRecording(whole(body, said)));
  });
  app.get(fileRoutes.readRecording.path, async (context) => {
    const hash = context.req.param('hash');
    const opened = await store();
    const { format, byteCount } = await opened.readRecording(HASH.test(hash) ? hash : '');
    const range = rangeOf(context.req.header('range'), byteCount);
    const { pieces } = await opened.readRecording(hash, range);
    const headers = { 'content-type': soundTypes[format], 'accept-ranges': 'bytes', 'cache-control': 'private, max-age=31536000, immutable' };
    const part: Record<string, string> = range === undefined ? { 'content-length': String(byteCount) } : { 'content-length': String(range.end - range.start + 1), 'content-range': `bytes ${String(range.start)}-${String(range.end)}/${String(byteCount)}` };
    return new Response(NodeStream.from(pieces) as ReadableStream<Uint8Array>, { status: range === undefined ? 200 : 206, headers: { ...headers, ...part } });
  });
}

/** How many bytes are said to come. @throws Refusal when that is not said as bytes, or more than is kept. */
function lengthOf(context: Context): number | undefined {
  const type = context.req.header('content-type') ?? '';
  if (!type.startsWith('application/octet-stream')) throw new Refusal('unsupported', [], `Sent as ${type === '' ? 'nothing in particular' : type}; send a sound file as application/octet-stream`);
  const length = context.req.header('content-length');
  if (length === undefined) return undefined;
  if (Number(length) > MAX_RECORDING_BYTES) throw new Refusal('tooLarge', [], `A recording may have at most ${String(MAX_RECORDING_BYTES / MEGABYTE)} MB; this one has ${(Number(length) / MEGABYTE).toFixed(0)} MB. Cut a long take in parts, or send it as FLAC`);
  return Number(length);
}

/** The bytes of a request as they come; fewer than were said is no file, but the beginning of one. */
async function* whole(body: ReadableStream<Uint8Array>, said: number | undefined): AsyncIterable<Uint8Array> {
  let count = 0;
  for await (const piece of body) {
    count += piece.byteLength;
    yield piece;
  }
  if (said !== undefined && count !== said) throw new Refusal('refused', [{ code: 'length', path: 'recording', given: count, allowed: `${String(said)} bytes, as was said` }]);
}

/** The part that is asked for, where it is one part and lies within the bytes. */
function rangeOf(header: string | undefined, byteCount: number): ByteRange | undefined {
  const [, first = '', last = ''] = /^bytes=(\d*)-(\d*)$/u.exec(header ?? '') ?? [];
  if (first === '' && last === '') return undefined;
  const start = first === '' ? Math.max(0, byteCount - Number(last)) : Number(first);
  const end = first === '' || last === '' ? byteCount - 1 : Math.min(Number(last), byteCount - 1);
  return start <= end ? { start, end } : undefined;
}
