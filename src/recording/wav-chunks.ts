import { type Result, ok } from '#result';
import { refuseHeader } from './issues.ts';

/** The two chunks of a WAV file that matter here. `dataSays` is the length its header gives; null where a recorder left it open. */
export interface WavChunks {
  readonly format: DataView;
  readonly data: Uint8Array;
  readonly dataSays: number | null;
}

const HEADER_BYTES = 12;
const CHUNK_HEAD_BYTES = 8;
const OPEN_LENGTH = 0xffff_ffff;
/** Most chunks looked at before the samples. */
const MOST_CHUNKS = 10_000;

/**
 * Finds the chunks `fmt ` and `data` of a RIFF, RF64 or BW64 file; others are passed over, each padded to an even length.
 * A recorder that writes to a pipe, or was switched off, leaves the length open as 2³² − 1, or as 0 like that of the whole file: then the
 * data run to the end.
 * @source EBU-3306, RF64: the true length of `data` stands in `ds64`
 */
export function wavChunksOf(bytes: Uint8Array): Result<WavChunks> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: DataView | undefined;
  let longData: number | undefined;
  const fileSays = view.getUint32(4, true);
  for (let at = HEADER_BYTES, seen = 0; at + CHUNK_HEAD_BYTES <= bytes.length && seen < MOST_CHUNKS; seen += 1) {
    const id = idAt(bytes, at);
    const says = view.getUint32(at + 4, true);
    const from = at + CHUNK_HEAD_BYTES;
    const body = bytes.subarray(from, Math.min(bytes.length, from + says));
    const isOpen = says === OPEN_LENGTH || (says === 0 && fileSays + CHUNK_HEAD_BYTES <= from);
    if (id === 'data' && format === undefined) return refuseHeader('fmt', 'none before the data', 'a chunk “fmt ” before the chunk “data”');
    if (id === 'data' && format !== undefined) return ok(dataChunk(format, bytes.subarray(from), isOpen ? (longData ?? null) : says));
    if (id === 'fmt ' && body.length < says) break;
    if (id === 'fmt ') format ??= new DataView(body.buffer, body.byteOffset, body.byteLength);
    if (id === 'ds64' && body.length >= 16) longData = Number(view.getBigUint64(from + 8, true));
    at = from + says + (says % 2);
  }
  return refuseHeader('data', 'none', 'a chunk “data” with samples');
}

function dataChunk(format: DataView, rest: Uint8Array, dataSays: number | null): WavChunks {
  return { format, data: dataSays === null ? rest : rest.subarray(0, dataSays), dataSays };
}

function idAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
