import { type Compass, type KeyNumber, noteNameOf } from '#instrument';
import type { EvenProperty, OutlierFigure, ToneState } from '#tone';
import { type StandOuts, type StateTone, evenFiguresOf } from '#workshop';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';

const fromRecordings = (keys: readonly KeyNumber[], field: string): Readonly<Record<string, Origin>> =>
  Object.fromEntries(keys.map((key, place) => [`notes[${String(place)}].${field}`, { key, how: 'ofRecording' }]));

/** How a key was found to stand out from its neighbours in brightness, level or decay. */
export function evenStory(what: string, property: EvenProperty, key: KeyNumber, tone: StateTone, compass: Compass): FigureStory {
  const notes = evenFiguresOf(tone, property);
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: 'tone-evenness', input: { property, notes }, output: `keys[${String(notes.findIndex((note) => note.key === key))}].value`, origins: fromRecordings(notes.map((note) => note.key), 'value') };
}

/** How a key was found to stand out in buzz, noise of the stroke, beats or unison. */
export function outlierStory(what: string, figure: OutlierFigure, key: KeyNumber, { notes }: StandOuts, compass: Compass): FigureStory {
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: 'tone-outliers', input: { notes }, output: 'standingOut', origins: fromRecordings(notes.map((note) => note.key), figure) };
}

/** How two states were compared, key by key; a device that was not stated is named so in both. */
export function compareStory(title: string, output: 'brightnessChange' | 'decayRatio', states: readonly [ToneState, ToneState], notStated: string): FigureStory {
  const [before, after] = states.map(({ recordedWith, ...state }) => ({ ...state, recordedWith: recordedWith === '' ? notStated : recordedWith }));
  return { title, operation: 'tone-compare', input: { before, after }, output };
}
