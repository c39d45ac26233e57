/** Bytes that tell what kind of file it is, and for M4A at which rate it was recorded. */
const HEAD_BYTES = 262_144;
const USUAL_RATE_HZ = 48_000;

/**
 * A copy without loss, as WAV, of a sound the other machines of the house cannot read: M4A, which every browser can.
 * Nothing for a file that needs none. @throws what the browser says when it cannot decode the file.
 */
export async function losslessCopyOf(file: Blob): Promise<Blob | undefined> {
  const { isAac, writeWav } = await import('#recording');
  const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  if (!isAac(head)) return undefined;
  const context = new OfflineAudioContext(1, 1, rateIn(head) ?? rateIn(new Uint8Array(await file.slice(-HEAD_BYTES).arrayBuffer())) ?? USUAL_RATE_HZ);
  const sound = await context.decodeAudioData(await file.arrayBuffer());
  const channels = Array.from({ length: sound.numberOfChannels }, (_, channel) => sound.getChannelData(channel));
  return new Blob([writeWav({ sampleRateHz: sound.sampleRate, channels })], { type: 'audio/wav' });
}

/** The rate stated by the sample entry of an MPEG-4 file (ISO/IEC 14496-12, AudioSampleEntry): 24 bytes after its name, in whole hertz. */
export function rateIn(bytes: Uint8Array): number | undefined {
  const name = new TextEncoder().encode('mp4a');
  for (let at = 0; at + 30 <= bytes.length; at += 1) {
    if (!name.every((code, index) => bytes[at + index] === code)) continue;
    const rate = ((bytes[at + 28] ?? 0) << 8) | (bytes[at + 29] ?? 0);
    if (rate >= 8000) return rate;
  }
  return undefined;
}
