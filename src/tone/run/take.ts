import type { Samples } from '#numerics';
import { type ListenOptions, type NothingReason, type ToneNote, listenToNote } from '../listen.ts';
import { LOUDNESS_S, levelDbOf } from '../level.ts';
import { TONE_METHOD } from '../method.ts';
import { partOf } from '../part-of.ts';
import { strikesIn } from './strikes.ts';

/** A note of a take: times are those of the take. */
export interface TakeNote {
  readonly startS: number;
  readonly endS: number;
  /** Mean power of the first half second, decibels under full scale. */
  readonly loudnessDb: number;
  readonly note: ToneNote;
}

/** What to doubt in a take. */
export const takeDoubts = ['nothing-heard', 'out-of-order', 'two-notes', 'odd-stiffness', 'few-partials'] as const;
export type TakeDoubt = (typeof takeDoubts)[number];

/** A place of the take to listen to again. */
export interface DoubtfulPlace {
  readonly startS: number;
  readonly endS: number;
  readonly doubt: TakeDoubt;
  readonly key?: number;
  /** Where nothing was heard, why. */
  readonly reason?: NothingReason;
}

/** A long take, note by note. */
export interface Take {
  /** `walk`: one strike a key after the other; `ladder`: several of each. */
  readonly kind: 'walk' | 'ladder';
  readonly notes: readonly TakeNote[];
  /** Keys the step of the walk would have met and that were not heard, between the lowest and the highest. */
  readonly missingKeys: readonly number[];
  /** Keys heard more often than the others. */
  readonly duplicateKeys: readonly number[];
  readonly doubtful: readonly DoubtfulPlace[];
  readonly methodVersion: number;
}

/** A note is cut out from so long before its strike on. */
const LEAD_S = 0.03;
/** And to so long before the next. */
const TAIL_S = 0.02;
/** Shorter sounds are passed over. */
const LEAST_S = 0.25;
/** A note is named where it rings at least so long: syllables, three to eight a second, are shorter, and so little of a bass note says too little. @source PRACTICE */
const LEAST_NOTE_S = 0.4;
/** The same key again counts as a new strike when it is louder by this than what rang before it. */
const STRUCK_AGAIN_DB = 3;
/** From so many strikes a key on it is a ladder. */
const LADDER_STRIKES = 3;

/** How a take is listened to; told after each note how far it has come, 0 to 1. */
export interface TakeOptions extends Omit<ListenOptions, 'key'> {
  readonly onProgress?: (part: number) => void;
}

/** Share of the work that the strikes take. */
const STRIKES_SHARE = 0.1;

/** Finds the notes of a long take, names each by listening, and says which keys are missing, doubled or doubtful. @source OWN */
export function takeOf(samples: Samples, { onProgress = () => undefined, ...options }: TakeOptions = {}): Take {
  const places = placesOf(samples);
  const heard = places.map((place, index) => {
    onProgress(STRIKES_SHARE + ((1 - STRIKES_SHARE) * index) / places.length);
    return { place, answer: listenToNote(partOf(samples, place.startS - LEAD_S, place.endS), options) };
  });
  const rung: TakeNote[] = [];
  const doubtful: DoubtfulPlace[] = [];
  for (const { place, answer } of heard) {
    const last = rung.at(-1);
    if (!answer.heard) doubtful.push({ ...place, doubt: 'nothing-heard', reason: answer.reason });
    else if (last?.note.key === answer.key && !struckAgain(samples, place.startS)) rung[rung.length - 1] = { ...last, endS: place.endS };
    else rung.push({ ...place, loudnessDb: levelDbOf(samples, place.startS, Math.min(place.endS, place.startS + LOUDNESS_S)), note: answer });
  }
  const notes = rung.filter(({ startS, endS }) => endS - startS >= LEAST_NOTE_S);
  for (const { startS, endS } of rung) if (endS - startS < LEAST_NOTE_S) doubtful.push({ startS, endS, doubt: 'nothing-heard', reason: 'short' });
  return { ...keysOf(notes), notes, doubtful: [...doubtful, ...doubtsOf(notes)].sort((a, b) => a.startS - b.startS), methodVersion: TONE_METHOD };
}

/** The stretch of a take that a note of it was listened to in; moments of the note count from its beginning, `fromS` of the take. */
export function stretchOfNote(samples: Samples, { startS, endS }: Pick<TakeNote, 'startS' | 'endS'>): { readonly samples: Samples; readonly fromS: number } {
  const fromS = Math.max(0, Math.round((startS - LEAD_S) * samples.sampleRateHz) / samples.sampleRateHz);
  return { samples: partOf(samples, startS - LEAD_S, endS), fromS };
}

interface Place {
  readonly startS: number;
  readonly endS: number;
}

function placesOf(samples: Samples): readonly Place[] {
  const length = (samples.channels[0]?.length ?? 0) / samples.sampleRateHz;
  const moments = strikesIn(samples);
  return moments.map((startS, index) => ({ startS, endS: (moments[index + 1] ?? length + TAIL_S) - TAIL_S })).filter(({ startS, endS }) => endS - startS >= LEAST_S);
}

/** Whether it is louder behind a moment than before it. */
function struckAgain(samples: Samples, atS: number): boolean {
  return levelDbOf(samples, atS + 0.02, atS + 0.12) > levelDbOf(samples, atS - 0.12, atS - 0.02) + STRUCK_AGAIN_DB;
}

/** Missing and doubled keys, from the usual step and the usual number of strikes. */
function keysOf(notes: readonly TakeNote[]): Pick<Take, 'kind' | 'missingKeys' | 'duplicateKeys'> {
  const counts = new Map<number, number>();
  for (const { note } of notes) counts.set(note.key, (counts.get(note.key) ?? 0) + 1);
  const keys = [...counts.keys()].sort((a, b) => a - b);
  const usual = usualOf([...counts.values()], 1);
  const step = usualOf(keys.slice(1).map((key, index) => key - (keys[index] ?? key)), 1);
  const missingKeys: number[] = [];
  for (const [index, key] of keys.slice(1).entries()) for (let between = (keys[index] ?? key) + step; between < key; between += step) missingKeys.push(between);
  return { kind: usual >= LADDER_STRIKES ? 'ladder' : 'walk', missingKeys, duplicateKeys: keys.filter((key) => (counts.get(key) ?? 0) > usual) };
}

/** What most of a list are; the lower of two as frequent. */
function usualOf(values: readonly number[], none: number): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort(([a, m], [b, n]) => n - m || a - b)[0]?.[0] ?? none;
}

const doubtWarnings = ['two-notes', 'odd-stiffness', 'few-partials'] as const;

/** Notes with something to doubt, and those that lie outside the way from the note before to the note after. */
function doubtsOf(notes: readonly TakeNote[]): readonly DoubtfulPlace[] {
  const direction = Math.sign((notes.at(-1)?.note.key ?? 0) - (notes[0]?.note.key ?? 0));
  return notes.flatMap(({ startS, endS, note }, index): readonly DoubtfulPlace[] => {
    const place = { startS, endS, key: note.key };
    const [before, after] = [notes[index - 1]?.note.key ?? note.key, notes[index + 1]?.note.key ?? note.key];
    const strays = direction !== 0 && Math.sign(after - before) * direction >= 0 && (note.key - before) * direction < 0 && (after - note.key) * direction > 0;
    const leaps = direction !== 0 && (note.key - before) * direction > 0 && (after - note.key) * direction < 0 && (after - before) * direction >= 0;
    return [...(strays || leaps ? [{ ...place, doubt: 'out-of-order' as const }] : []), ...doubtWarnings.filter((doubt) => note.quality.warnings.includes(doubt)).map((doubt) => ({ ...place, doubt }))];
  });
}
