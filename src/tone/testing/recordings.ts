import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Samples } from '#numerics';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';

/** The notes of the open set, a minor third apart, from key 1 to key 88. */
export const recordedNotes: readonly { readonly note: string; readonly key: number }[] = Array.from({ length: 30 }, (_, index) => {
  const names = ['A', 'C', 'D#', 'F#'];
  return { note: `${names[index % 4] ?? ''}${String(Math.floor((index + 3) / 4))}`, key: 1 + 3 * index };
});

/** The layers of the open set, softest first. */
export const recordedLayers: readonly number[] = Array.from({ length: 16 }, (_, index) => index + 1);

/** One strike of the open set, decoded; attribution stands in NOTICE. */
export async function recordedStrike(note: string, layer: number): Promise<Samples> {
  const packageUrl = import.meta.resolve(`@audio-samples/piano-velocity${String(layer)}/package.json`);
  const bytes = await readFile(fileURLToPath(new URL(`audio/${encodeURIComponent(note)}v${String(layer)}.ogg`, packageUrl)));
  const decoder = new OggVorbisDecoder();
  await decoder.ready;
  const { channelData, sampleRate } = await decoder.decodeFile(bytes);
  decoder.free();
  return { sampleRateHz: sampleRate, channels: channelData.map((channel) => Float64Array.from(channel)) };
}
