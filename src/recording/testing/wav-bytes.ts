/** What a WAV file is to hold, its header free to lie. */
export interface WavDraft {
  readonly tag?: number;
  readonly channels?: number;
  readonly rate?: number;
  readonly bits?: number;
  readonly blockAlign?: number;
  /** Subformat: then the format is written as extensible, with as many valid bits as `bits` says. */
  readonly extensible?: { readonly tag: number; readonly validBits: number };
  readonly data?: Uint8Array;
  /** Length the header gives for the data, where it is not the true one. */
  readonly dataSays?: number;
  readonly riffSays?: number;
  readonly riffId?: string;
  /** Chunks before the data, each by its name and content. */
  readonly before?: readonly (readonly [id: string, content: Uint8Array])[];
  readonly after?: Uint8Array;
}

const text = (word: string): Uint8Array => Uint8Array.from(word, (sign) => sign.charCodeAt(0));

export function little(value: number, size: number): Uint8Array {
  return Uint8Array.from({ length: size }, (_, index) => Math.floor(value / 256 ** index) % 256);
}

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

const chunk = (id: string, content: Uint8Array, says = content.length): Uint8Array => joined(text(id), little(says, 4), content, new Uint8Array(content.length % 2));

/** Writes a WAV file part by part, another writer than the program's own, so that each oddity is here on purpose. */
export function wavBytes({ tag = 1, channels = 1, rate = 48_000, bits = 16, blockAlign = (channels * bits) / 8, extensible, data = new Uint8Array(8), dataSays, riffSays, riffId = 'RIFF', before = [], after = new Uint8Array() }: WavDraft = {}): Uint8Array {
  const plain = joined(little(extensible === undefined ? tag : 0xfffe, 2), little(channels, 2), little(rate, 4), little(rate * blockAlign, 4), little(blockAlign, 2), little(bits, 2));
  const format = extensible === undefined ? plain : joined(plain, little(22, 2), little(extensible.validBits, 2), little(0, 4), little(extensible.tag, 2), Uint8Array.of(0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71));
  const chunks = joined(chunk('fmt ', format), ...before.map(([id, content]) => chunk(id, content)), chunk('data', data, dataSays), after);
  return joined(text(riffId), little(riffSays ?? chunks.length + 4, 4), text('WAVE'), chunks);
}
