import { type Result, ok, refuse } from '#result';
import { refuseCut, refuseDamaged, refuseFile } from './issues.ts';
import { type Shape, mostFrames, noSamples, tooLong } from './limits.ts';
import type { Samples } from '#numerics';

/** What a decoder answers to one block of a file. */
export interface DecodedBlock {
  readonly channelData: readonly Float32Array[];
  readonly samplesDecoded: number;
  readonly sampleRate: number;
  readonly errors: readonly { readonly message: string }[];
}

/** A decoder that is fed block by block; `flush` gives what it still holds. */
export interface BlockDecoder {
  readonly decode: (block: Uint8Array) => DecodedBlock | Promise<DecodedBlock>;
  readonly flush?: () => Promise<DecodedBlock>;
  readonly free: () => void;
}

/** Bytes handed to a decoder at once: what it makes of them is held to the limits before it gets more. */
const BLOCK_BYTES = 65_536;

/**
 * Decodes a file block by block. It ends with the first block that is damaged, changes rate or channels, or passes the
 * limit of length, so that a small file that unpacks to hours never fills the memory.
 */
export async function decodeBlocks(bytes: Uint8Array, open: () => Promise<BlockDecoder>, shape: Shape): Promise<Result<Samples>> {
  const gathered = new Gathered(shape);
  try {
    const decoder = await open();
    try {
      for (let at = 0; at < bytes.length; at += BLOCK_BYTES) {
        const refused = gathered.take(await decoder.decode(bytes.subarray(at, at + BLOCK_BYTES)));
        if (refused !== undefined) return refused;
      }
      const refused = decoder.flush === undefined ? undefined : gathered.take(await decoder.flush());
      return refused ?? gathered.samples();
    } finally {
      decoder.free();
    }
  } catch (error) {
    return refuseDamaged(gathered.seconds, error instanceof Error ? error.message : String(error));
  }
}

/** The blocks decoded so far, held to what the header announced. */
class Gathered {
  readonly #shape: Shape;
  readonly #blocks: (readonly Float32Array[])[] = [];
  #frames = 0;

  constructor(shape: Shape) {
    this.#shape = shape;
  }

  get seconds(): number {
    return this.#frames / this.#shape.sampleRateHz;
  }

  /** Takes a block, or answers why it is refused. */
  take({ channelData, samplesDecoded, sampleRate, errors }: DecodedBlock): Result<never> | undefined {
    const [error] = errors;
    if (error !== undefined) return refuseDamaged(this.seconds, error.message);
    if (samplesDecoded === 0) return undefined;
    const { sampleRateHz, channels } = this.#shape;
    if (sampleRate !== sampleRateHz) return refuseFile('recordingChanges', `the rate goes from ${String(sampleRateHz)} to ${String(sampleRate)} Hz`, 'one rate', 'sampleRateHz');
    if (channelData.length < channels) return refuseFile('recordingChanges', `the channels go from ${String(channels)} to ${String(channelData.length)}`, 'one number of channels', 'channels');
    this.#frames += samplesDecoded;
    if (this.#frames > mostFrames(sampleRateHz, channels)) return refuse(tooLong({ sampleRateHz, channels, frames: this.#frames }));
    this.#blocks.push(channelData);
    return undefined;
  }

  samples(): Result<Samples> {
    const { sampleRateHz, channels, frames } = this.#shape;
    if (this.#frames === 0) return frames === null ? refuse(noSamples) : refuseCut(0, frames / sampleRateHz);
    return ok({ sampleRateHz, channels: Array.from({ length: channels }, (_, channel) => this.#listOf(channel)) });
  }

  #listOf(channel: number): Float64Array {
    const list = new Float64Array(this.#frames);
    let at = 0;
    for (const block of this.#blocks) {
      const part = block[channel] ?? new Float32Array();
      list.set(part, at);
      at += part.length;
    }
    return list;
  }
}
