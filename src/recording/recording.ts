import type { Samples } from '#numerics';
import type { ChannelLevel } from './levels.ts';

/** Kinds of file that are read. */
export const recordingKinds = ['wav', 'flac', 'ogg', 'mp3'] as const;
export type RecordingKind = (typeof recordingKinds)[number];

/** What is known of a recording beside its samples. */
export interface RecordingFacts {
  readonly kind: RecordingKind;
  /** How samples stand in the file: whole numbers, floating point, or compressed with loss. */
  readonly coding: 'integer' | 'float' | 'lossy';
  /** Bits of one sample; null for compression with loss, which has none. */
  readonly bits: number | null;
  readonly sampleRateHz: number;
  readonly channels: number;
  /** Samples of one channel. */
  readonly frames: number;
  readonly durationS: number;
  readonly levels: readonly ChannelLevel[];
}

/** A recording as it came out of its file. */
export interface Recording {
  readonly samples: Samples;
  readonly facts: RecordingFacts;
}

/** What a reader of one kind of file hands on. */
export interface Decoded {
  readonly samples: Samples;
  readonly coding: RecordingFacts['coding'];
  readonly bits: number | null;
}
