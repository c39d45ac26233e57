import { type Compass, keyCountOf } from '#instrument';
import type { Samples } from '#numerics';
import { type NoteDecay, type NothingHeard, type ToneDescriptors, type ToneNote, listenToNote, noteDecayOf, toneDescriptorsOf } from '#tone';
import type { AnalysisInput } from './analysis.ts';

/** All that is worked out of one struck note: what it is, how it dies away, how warm or bright it is, how loud it was. */
export interface NoteFigures {
  readonly note: ToneNote | NothingHeard;
  readonly decay?: NoteDecay;
  readonly descriptors?: ToneDescriptors;
  /** Mean power of the first half second, decibels below full scale: of one microphone at one gain it compares key with key. */
  readonly levelDb?: number;
}

const LEVEL_S = 0.5;

/** The figures of a sound that holds one note; the same on the server and in the browser. */
export function noteFiguresOf(samples: Samples, { key, firstMidi, lastMidi, a4Hz }: AnalysisInput): NoteFigures {
  const compass: Compass = { firstMidi, lastMidi };
  const told = key !== null && key <= keyCountOf(compass) ? { key } : {};
  const note = listenToNote(samples, { ...told, compass, a4Hz });
  if (!note.heard) return { note };
  const heard = { samples, onsetS: note.onsetS, endS: note.endS, f0Hz: note.f0Hz, partials: note.partials };
  const decay = noteDecayOf(heard);
  const descriptors = toneDescriptorsOf(heard);
  return { note, ...(decay === undefined ? {} : { decay }), ...(descriptors === undefined ? {} : { descriptors }), levelDb: levelOf(samples, note.onsetS) };
}

/** L = 10·lg of the mean square of all channels over half a second from the onset. */
function levelOf({ sampleRateHz, channels }: Samples, onsetS: number): number {
  const [from, to] = [onsetS, onsetS + LEVEL_S].map((at) => Math.round(at * sampleRateHz));
  const parts = channels.map((channel) => channel.subarray(from, to));
  const count = parts.reduce((sum, { length }) => sum + length, 0);
  const power = parts.reduce((sum, part) => sum + part.reduce((own, x) => own + x * x, 0), 0) / Math.max(1, count);
  return 10 * Math.log10(Math.max(power, 1e-15));
}
