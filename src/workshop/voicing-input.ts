import type { KeyNumber } from '#instrument';
import { type AtOneLevel, type DoubtedStrike, type LevelledKey, type NoLevel, atOneLevel, laddersIn } from '#tone';
import { group } from 'd3-array';
import type { PlacedNote, StateTone } from './tone-states.ts';

/** What hammers are compared by: partials up to C6, or energy above 2 kHz over the whole compass. */
export const voicedFigures = ['brightness', 'balance'] as const;
export type VoicedFigure = (typeof voicedFigures)[number];

/** Where the microphone stood, and which it was; empty where it was not stated. */
export interface Microphone {
  readonly place: string;
  readonly device: string;
}

/** The voicing of one state, gathered. */
export interface GatheredVoicing {
  /** The one microphone whose strikes are taken: that of most of them. */
  readonly microphone: Microphone;
  /** Strikes of another microphone, which are left out. */
  readonly otherStrikes: number;
  /** All strikes of that microphone. */
  readonly strikes: readonly DoubtedStrike[];
  /** What the operation `soft-to-loud` is given: the strikes of keys struck from soft to loud. */
  readonly ladders: readonly DoubtedStrike[];
  /** Why no key is judged. */
  readonly lacks?: NoLevel | 'few-keys';
  readonly level?: AtOneLevel;
  /** What the operation `voicing-map` is given. */
  readonly input?: { readonly notes: readonly { readonly key: KeyNumber; readonly brightness: number; readonly uncertainty: number }[]; readonly repeatability: number };
  readonly bases: ReadonlyMap<KeyNumber, LevelledKey['basis']>;
}

/** A curve is laid through no fewer keys. */
const FEWEST_KEYS = 6;

/**
 * Gathers the strikes of a state into what the voicing map takes: brightness of every key at one level, and how well a strike repeats there, both
 * from the keys struck from soft to loud; of one microphone alone, for another place changes every figure. Nothing where no strike has the figure.
 * @source OWN
 */
export function voicingInputOf(tone: StateTone, figure: VoicedFigure): GatheredVoicing | undefined {
  const known = tone.strikes.flatMap((placed) => strikeOf(placed, figure) ?? []);
  const [most] = [...group(known, ({ microphone }) => JSON.stringify(microphone)).values()].toSorted((a, b) => b.length - a.length);
  const [first] = most ?? [];
  if (most === undefined || first === undefined) return undefined;
  const strikes = most.map(({ strike }) => strike);
  const base = { microphone: first.microphone, otherStrikes: known.length - most.length, strikes, ladders: laddersIn(strikes) };
  const level = atOneLevel(strikes);
  if (typeof level === 'string') return { ...base, lacks: level, bases: new Map() };
  const bases = new Map(level.keys.map(({ key, basis }) => [key, basis]));
  if (level.keys.length < FEWEST_KEYS) return { ...base, lacks: 'few-keys', level, bases };
  return { ...base, level, bases, input: { notes: level.keys.map(({ key, brightness, uncertainty }) => ({ key, brightness, uncertainty })), repeatability: level.repeatability } };
}

function strikeOf({ recording: { place, device }, heard: { key, note } }: PlacedNote, figure: VoicedFigure): { readonly microphone: Microphone; readonly strike: DoubtedStrike } | undefined {
  const { descriptors: told, loudnessDb: levelDb } = note;
  const [brightness, uncertainty] = figure === 'brightness' ? [told?.harmonicCentroid, told?.harmonicCentroidUncertainty] : [told?.balanceDb, told?.balanceUncertaintyDb];
  return key === undefined || brightness === undefined ? undefined : { microphone: { place, device }, strike: { key, levelDb, brightness, uncertainty } };
}
