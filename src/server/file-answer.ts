import type { Context } from 'hono';

/** The piano a request names; empty where it names none. */
export function idOf(context: Context): string {
  return context.req.param('id') ?? '';
}

/** Bytes as a file with a name of its own; a name with other letters than ASCII is sent after RFC 6266 as well. */
export function fileAnswer(bytes: Uint8Array, type: string, name: string, disposition: 'attachment' | 'inline' = 'attachment'): Response {
  const safe = name.replaceAll(/[/\\:*?"<>|\p{Cc}]+/gu, '-').trim();
  const plain = safe.replaceAll(/[^\x20-\x7E]/gu, '_');
  return new Response(new Uint8Array(bytes), {
    headers: {
      'content-type': type,
      'content-length': String(bytes.byteLength),
      'content-disposition': `${disposition}; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(safe)}`,
      'cache-control': 'no-store',
    },
  });
}
