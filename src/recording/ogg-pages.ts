import { type Result, ok } from '#result';
import { refuseCut, refuseDamaged, refuseFile, refuseHeader } from './issues.ts';

/** What the pages of an OGG file hold together. */
export interface OggStream {
  /** The first packet, which says what the stream is. */
  readonly firstPacket: Uint8Array;
  /** Position at the end of the last page: the samples of one channel. */
  readonly granules: number;
}

interface OggPage {
  readonly flags: number;
  readonly granule: bigint;
  readonly serial: number;
  readonly sequence: number;
  readonly body: Uint8Array;
  readonly bytes: number;
  readonly whole: boolean;
}

const HEAD_BYTES = 27;
const FIRST_PAGE = 0x02;
const LAST_PAGE = 0x04;
const NO_GRANULE = -1n;

/**
 * Walks over the pages of an OGG file that holds one stream: checksum and number of every page are held to, and the
 * last must be marked as such. So a file that lost or changed a byte is refused before a decoder sees it.
 * @source RFC-3533, section 6
 */
export function oggStreamOf(bytes: Uint8Array, rateOf: (firstPacket: Uint8Array) => number): Result<OggStream> {
  let first: OggPage | undefined;
  let last: OggPage | undefined;
  let granules = 0;
  const seconds = (): number => (first === undefined ? 0 : granules / Math.max(1, rateOf(first.body)));
  for (let at = 0; at < bytes.length; at += last.bytes) {
    const page = pageAt(bytes, at);
    if (page === undefined) return refuseDamaged(seconds(), 'no page where one must begin');
    if (!page.whole) return refuseCut(seconds());
    if (checksumOf(bytes.subarray(at, at + page.bytes)) !== new DataView(bytes.buffer, bytes.byteOffset + at).getUint32(22, true)) return refuseDamaged(seconds(), 'a wrong checksum');
    first ??= page;
    if (page.serial !== first.serial || (page !== first && (page.flags & FIRST_PAGE) !== 0)) return refuseFile('recordingChanges', 'a second stream begins', 'one stream');
    if (last !== undefined && page.sequence !== last.sequence + 1) return refuseDamaged(seconds(), `page ${String(page.sequence)} after page ${String(last.sequence)}`);
    if (page.granule !== NO_GRANULE) granules = Number(page.granule);
    last = page;
  }
  if (first === undefined || last === undefined) return refuseHeader('page', 'none', 'at least one page');
  if ((last.flags & LAST_PAGE) === 0) return refuseCut(seconds());
  return ok({ firstPacket: first.body, granules });
}

function pageAt(bytes: Uint8Array, at: number): OggPage | undefined {
  if (bytes[at] !== 0x4f || bytes[at + 1] !== 0x67 || bytes[at + 2] !== 0x67 || bytes[at + 3] !== 0x53 || bytes[at + 4] !== 0 || at + HEAD_BYTES > bytes.length) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset + at, HEAD_BYTES);
  const lacing = bytes.subarray(at + HEAD_BYTES, at + HEAD_BYTES + view.getUint8(26));
  const from = at + HEAD_BYTES + view.getUint8(26);
  const length = lacing.reduce((sum, part) => sum + part, 0);
  return {
    flags: view.getUint8(5),
    granule: view.getBigInt64(6, true),
    serial: view.getUint32(14, true),
    sequence: view.getUint32(18, true),
    body: bytes.subarray(from, from + length),
    bytes: from + length - at,
    whole: from + length <= bytes.length,
  };
}

/** Checksum of one page: polynomial 0x04c11db7, nothing inverted, the four bytes of the checksum itself taken as 0. */
function checksumOf(page: Uint8Array): number {
  let sum = 0;
  for (const [at, byte] of page.entries()) sum = ((sum << 8) ^ (CRC_TABLE[((sum >>> 24) ^ (at >= 22 && at < 26 ? 0 : byte)) & 0xff] ?? 0)) >>> 0;
  return sum;
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index << 24;
  for (let bit = 0; bit < 8; bit += 1) value = (value & 0x8000_0000) === 0 ? value << 1 : (value << 1) ^ 0x04c1_1db7;
  return value >>> 0;
});
