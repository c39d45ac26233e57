import { buffer } from 'node:stream/consumers';
import { refused } from './failure.ts';
import { note } from './output.ts';

/** Everything on standard input as text; `hint` is said when a person sits at it. */
export async function readInput(hint: string): Promise<string> {
  if (process.stdin.isTTY) note(hint);
  return textOf(await buffer(process.stdin));
}

/** UTF-8, or UTF-16 where a byte order mark says so, as some shells write it. */
function textOf(bytes: Uint8Array): string {
  const encoding = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    throw refused([{ code: 'format', path: '', given: 'bytes that are no text', allowed: 'JSON in UTF-8' }]);
  }
}
