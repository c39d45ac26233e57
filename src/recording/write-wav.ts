/** Sound to be written: samples as they are calculated with, or as a browser hands them out. */
export interface WavSource {
  readonly sampleRateHz: number;
  readonly channels: readonly (Float32Array | Float64Array)[];
}

const HEAD_BYTES = 58;
const FLOAT = 3;
const BYTES_PER_SAMPLE = 4;

/**
 * Writes a WAV file of 32-bit floating point: exact for what a browser decoded or a microphone took, which are of that kind.
 * Other figures are rounded to the nearest such number, about 1 part in 17 million.
 * @throws RangeError for channels of different lengths, or a file of more than 4 GB
 */
export function writeWav({ sampleRateHz, channels }: WavSource): Uint8Array<ArrayBuffer> {
  const frames = channels[0]?.length ?? 0;
  if (channels.some(({ length }) => length !== frames)) throw new RangeError('the channels of a recording are of one length');
  const dataBytes = frames * channels.length * BYTES_PER_SAMPLE;
  if (HEAD_BYTES + dataBytes > 0xffff_ffff) throw new RangeError('a WAV file holds at most 4 GB');
  const bytes = new Uint8Array(HEAD_BYTES + dataBytes);
  const view = new DataView(bytes.buffer);
  writeHead(view, { sampleRateHz, channels: channels.length, frames });
  channels.forEach((list, channel) => {
    for (let frame = 0, at = HEAD_BYTES + channel * BYTES_PER_SAMPLE; frame < frames; frame += 1, at += channels.length * BYTES_PER_SAMPLE) view.setFloat32(at, list[frame] ?? 0, true);
  });
  return bytes;
}

/** The chunks before the samples: `fmt ` with its empty extension, and `fact` with the number of frames, as floating point asks for both. */
function writeHead(view: DataView, { sampleRateHz, channels, frames }: { readonly sampleRateHz: number; readonly channels: number; readonly frames: number }): void {
  const blockBytes = channels * BYTES_PER_SAMPLE;
  let at = 0;
  const text = (word: string): void => { for (const sign of word) view.setUint8(at++, sign.charCodeAt(0)); };
  const whole = (value: number, size: 2 | 4): void => {
    if (size === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += size;
  };
  text('RIFF'); whole(HEAD_BYTES - 8 + frames * blockBytes, 4); text('WAVE');
  text('fmt '); whole(18, 4); whole(FLOAT, 2); whole(channels, 2); whole(sampleRateHz, 4); whole(sampleRateHz * blockBytes, 4); whole(blockBytes, 2); whole(8 * BYTES_PER_SAMPLE, 2); whole(0, 2);
  text('fact'); whole(4, 4); whole(frames, 4);
  text('data'); whole(frames * blockBytes, 4);
}
