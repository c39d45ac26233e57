const HEAD_BYTES = 27;

/** An OGG file with the checksum of every page made right again, bit by bit: another way than the program's table. */
export function withOggChecksums(bytes: Uint8Array): Uint8Array {
  const fixed = bytes.slice();
  for (let at = 0; at + HEAD_BYTES <= fixed.length && fixed[at] === 0x4f;) {
    const segments = fixed[at + 26] ?? 0;
    const length = HEAD_BYTES + segments + fixed.subarray(at + HEAD_BYTES, at + HEAD_BYTES + segments).reduce((sum, part) => sum + part, 0);
    fixed.fill(0, at + 22, at + 26);
    const sum = remainder(fixed.subarray(at, at + length), 0x04c1_1db7, 32);
    for (let index = 0; index < 4; index += 1) fixed[at + 22 + index] = Math.floor(sum / 256 ** index) % 256;
    at += length;
  }
  return fixed;
}

/** A FLAC frame with the checksum in its last two bytes made right again. */
export function withFlacChecksum(frame: Uint8Array): Uint8Array {
  const fixed = frame.slice();
  const sum = remainder(fixed.subarray(0, -2), 0x8005, 16);
  fixed.set([sum >> 8, sum & 0xff], fixed.length - 2);
  return fixed;
}

function remainder(bytes: Uint8Array, polynomial: number, bits: 16 | 32): number {
  const top = 2 ** (bits - 1);
  let sum = 0;
  for (const byte of bytes) {
    sum = (sum ^ (byte * 2 ** (bits - 8))) >>> 0;
    for (let bit = 0; bit < 8; bit += 1) sum = (sum >= top ? ((sum - top) * 2) ^ polynomial : sum * 2) >>> 0;
  }
  return sum;
}
