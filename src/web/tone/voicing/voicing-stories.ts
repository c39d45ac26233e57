import { type Compass, type KeyNumber, noteNameOf } from '#instrument';
import type { GatheredVoicing } from '#workshop';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';
import type { StateVoicing } from './state-voicing.ts';

const HOW = { line: 'ownLine', moved: 'movedToLevel', 'as-struck': 'asStruck' } as const;

/** How far a hammer stands off its neighbours: the whole map, and the place of this key in it. */
export function hammerStory(what: string, output: 'offset' | 'beyond', key: KeyNumber, { gathered: { input, bases } }: StateVoicing, compass: Compass): FigureStory {
  const notes = input?.notes ?? [];
  const origins = Object.fromEntries(notes.flatMap((note, place): readonly (readonly [string, Origin])[] => {
    const basis = bases.get(note.key);
    return basis === undefined ? [] : [[`notes[${String(place)}].brightness`, { key: note.key, how: HOW[basis] }]];
  }));
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: 'voicing-map', input: { notes, repeatability: input?.repeatability }, output: `hammers[${String(notes.findIndex((note) => note.key === key))}].${output}`, origins: { ...origins, repeatability: { how: 'ofLadders' } } };
}

/** How a figure of the strikes from soft to loud was made. */
export function strikesStory(title: string, output: string, strikes: GatheredVoicing['strikes'], atLevelDb?: number): FigureStory {
  const origins = Object.fromEntries(strikes.map(({ key }, place): readonly [string, Origin] => [`strikes[${String(place)}].brightness`, { key, how: 'ofRecording' }]));
  return { title, operation: 'soft-to-loud', input: { strikes: strikes.map(({ key, levelDb, brightness }) => ({ key, levelDb, brightness })), ...(atLevelDb === undefined ? {} : { atLevelDb }) }, output, origins };
}
