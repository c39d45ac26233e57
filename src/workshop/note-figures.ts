import { type Compass, keyCountOf } from '#instrument';
import type { Samples } from '#numerics';
import { type NoteDecay, type NothingHeard, type Take, type ToneDescriptors, type ToneNote, listenToNote, noteDecayOf, stretchOfNote, takeOf, toneDescriptorsOf } from '#tone';
import type { AnalysisInput } from './analysis.ts';

type SumDecay = NoteDecay['sum'];

/** All that is worked out of one struck note: what it is, how it dies away, how warm or bright it is, how loud it was. */
export interface NoteFigures {
  readonly note: ToneNote | NothingHeard;
  readonly decay?: SumDecay;
  readonly descriptors?: ToneDescriptors;
  /** Mean power of the first half second, decibels below full scale: of one microphone at one gain it compares key with key. */
  readonly levelDb?: number;
}

/** The figures of a long take: of each note found in it, which keys are missing or came too often, and where to listen again. */
export interface RunFigures extends Pick<Take, 'kind' | 'missingKeys' | 'duplicateKeys' | 'doubtful'> {
  readonly notes: readonly NoteFigures[];
}

const LEVEL_S = 0.5;

/** The figures of a sound that holds one note; the same on the server and in the browser. */
export function noteFiguresOf(samples: Samples, { key, firstMidi, lastMidi, a4Hz }: AnalysisInput): NoteFigures {
  const compass: Compass = { firstMidi, lastMidi };
  const told = key !== null && key <= keyCountOf(compass) ? { key } : {};
  const note = listenToNote(samples, { ...told, compass, a4Hz });
  return note.heard ? { note, ...soundFiguresOf(samples, note) } : { note };
}

/** The figures of a sound that holds many notes one after the other. Moments count from the beginning of the take. */
export function runFiguresOf(samples: Samples, { firstMidi, lastMidi, a4Hz }: AnalysisInput, onProgress: (part: number) => void = () => undefined): RunFigures {
  const { notes, kind, missingKeys, duplicateKeys, doubtful } = takeOf(samples, { compass: { firstMidi, lastMidi }, a4Hz });
  return {
    kind, missingKeys, duplicateKeys, doubtful,
    notes: notes.map((taken, index): NoteFigures => {
      onProgress(0.7 + (0.3 * index) / notes.length);
      const stretch = stretchOfNote(samples, taken);
      return { ...soundFiguresOf(stretch.samples, taken.note), note: movedBy(taken.note, stretch.fromS) };
    }),
  };
}

function soundFiguresOf(samples: Samples, note: ToneNote): Omit<NoteFigures, 'note'> {
  const heard = { samples, onsetS: note.onsetS, endS: note.endS, f0Hz: note.f0Hz, partials: note.partials };
  const decay = noteDecayOf(heard)?.sum;
  const descriptors = toneDescriptorsOf(heard);
  return { ...(decay === undefined ? {} : { decay }), ...(descriptors === undefined ? {} : { descriptors }), levelDb: levelOf(samples, note.onsetS) };
}

function movedBy(note: ToneNote, byS: number): ToneNote {
  const moved = <T extends number>(at: T): T => (at + byS) as T;
  return { ...note, onsetS: moved(note.onsetS), endS: moved(note.endS), windowFromS: moved(note.windowFromS), windowToS: moved(note.windowToS) };
}

/** L = 10·lg of the mean square of all channels over half a second from the onset. */
function levelOf({ sampleRateHz, channels }: Samples, onsetS: number): number {
  const [from, to] = [onsetS, onsetS + LEVEL_S].map((at) => Math.round(at * sampleRateHz));
  const parts = channels.map((channel) => channel.subarray(from, to));
  const count = parts.reduce((sum, { length }) => sum + length, 0);
  const power = parts.reduce((sum, part) => sum + part.reduce((own, x) => own + x * x, 0), 0) / Math.max(1, count);
  return 10 * Math.log10(Math.max(power, 1e-15));
}
