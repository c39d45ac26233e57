import { type Hertz, type Seconds, hertz } from '#units';
import { type RoomMode, modeWidthOf } from './modes.ts';

/** Low notes are heard by their first partials. @source PRACTICE */
export const PARTIALS_HEARD = 6;

/** A partial that a standing wave between two walls holds. */
export interface Boom {
  readonly partial: number;
  readonly mode: RoomMode;
  /** Partial less mode. */
  readonly offHz: Hertz;
}

export interface RoomNote {
  readonly key: number;
  readonly frequencyHz: Hertz;
  readonly booms: readonly Boom[];
  /** No mode of any kind within half a width of the fundamental: the room does not help it. */
  readonly thin: boolean;
}

export interface SoundingKey {
  readonly key: number;
  readonly frequencyHz: Hertz;
}

/** Which of the given keys the room holds and which it leaves alone; partials as whole multiples. Modes lowest first, up to the highest partial asked. @source KUTTRUFF */
export function roomNotesOf(keys: readonly SoundingKey[], modes: readonly RoomMode[], reverberation: Seconds): readonly RoomNote[] {
  const reach = modeWidthOf(reverberation) / 2;
  const axial = modes.filter(({ kind }) => kind === 'axial');
  return keys.map(({ key, frequencyHz }) => ({
    key, frequencyHz,
    booms: Array.from({ length: PARTIALS_HEARD }, (_, index) => index + 1).flatMap((partial) => within(axial, partial * frequencyHz, reach).map((mode): Boom => ({ partial, mode, offHz: hertz(partial * frequencyHz - mode.frequencyHz) }))),
    thin: within(modes, frequencyHz, reach, 1).length === 0,
  }));
}

/** The modes no further than `reach` from a frequency, by halving; as many as are asked for. */
function within(modes: readonly RoomMode[], frequency: number, reach: number, most = Infinity): readonly RoomMode[] {
  let [low, high] = [0, modes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (frequency - (modes[middle]?.frequencyHz ?? Infinity) > reach) low = middle + 1;
    else high = middle;
  }
  const near: RoomMode[] = [];
  for (let mode = modes[low]; mode !== undefined && near.length < most && mode.frequencyHz - frequency <= reach; mode = modes[low + near.length]) near.push(mode);
  return near;
}

/** Axial modes of different walls closer together than half a width: the room rings twice as hard there. @source KUTTRUFF */
export function coincidentModesOf(modes: readonly RoomMode[], reverberation: Seconds): readonly (readonly [RoomMode, RoomMode])[] {
  const axial = modes.filter(({ kind }) => kind === 'axial');
  const reach = modeWidthOf(reverberation) / 2;
  return axial.slice(1).flatMap((mode, index): readonly (readonly [RoomMode, RoomMode])[] => {
    const before = axial[index];
    return before !== undefined && mode.frequencyHz - before.frequencyHz <= reach ? [[before, mode]] : [];
  });
}
