export { isAac, kindOf } from './kind.ts';
export { recordingLevelOperation } from './level-operation.ts';
export type { ChannelLevel } from './levels.ts';
export { MAX_RECORDING_BYTES, recordingTooLarge } from './limits.ts';
export { readRecording } from './read-recording.ts';
export type { Recording, RecordingFacts, RecordingKind } from './recording.ts';
export { writeWav } from './write-wav.ts';
export type { WavSource } from './write-wav.ts';
