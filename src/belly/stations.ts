import { type Issue, type Result, all, map, ok, refuse } from '#result';
import type { NewtonsPerMillimetre } from '#units';
import { type BoardStiffness, boardOf } from './board.ts';

/** The stations a note’s load goes to and its height is taken from, counted from 0; the shares add up to 1. */
export type Riding = readonly { readonly station: number; readonly share: number }[];

/** Height at a note from the heights at its stations. */
export function carriedTo(riding: Riding, heights: ArrayLike<number>): number {
  return riding.reduce((sum, { station, share }) => sum + share * (heights[station] ?? 0), 0);
}

/** Shares a load of a note out over its stations, in place: the transpose of {@link carriedTo}, so that work is kept. */
export function spreadTo(loads: Float64Array, riding: Riding, load: number): void {
  for (const { station, share } of riding) loads[station] = (loads[station] ?? 0) + share * load;
}

/** Where a note stands along the stations 1, 2, 3 …; 2.5 is midway between the second and the third. */
interface Placed {
  readonly station?: number | undefined;
}

/** A board and how its notes stand on it. */
export interface Laden {
  readonly board: BoardStiffness;
  readonly riding: readonly Riding[];
}

/**
 * Sets notes on a board. A number is a board that goes down as one. A matrix has one row for each note, or, where the
 * notes say at which station they stand, one for each station; between two stations straight.
 * Refuses a matrix that is no board, one of another size than the notes, and stations it has not.
 */
export function ladenOf(notes: readonly Placed[], stiffness: NewtonsPerMillimetre | BoardStiffness, path: string): Result<Laden> {
  if (typeof stiffness === 'number') {
    const strangers = notes.flatMap(({ station }, index): readonly Issue[] => (station === undefined ? [] : [{ code: 'unknown', path: stationPath(index), given: station, allowed: 'no station, since the board is one spring' }]));
    return strangers.length > 0 ? refuse(...strangers) : ok({ board: [[stiffness]], riding: notes.map(() => [{ station: 0, share: 1 }]) });
  }
  const riding = notes.some(({ station }) => station !== undefined) ? ridingBetween(notes, stiffness.length) : ridingEach(notes, stiffness.length, path);
  const board = boardOf(stiffness, path);
  if (!board.ok || !riding.ok) return refuse(...(board.ok ? [] : board.issues), ...(riding.ok ? [] : riding.issues));
  return ok({ board: board.value, riding: riding.value });
}

const stationPath = (index: number): string => `notes[${String(index)}].station`;

function ridingEach(notes: readonly Placed[], size: number, path: string): Result<readonly Riding[]> {
  if (size === notes.length) return ok(notes.map((_, station) => [{ station, share: 1 }]));
  return refuse({ code: 'length', path, given: size, allowed: `${String(notes.length)} rows, one for each note; or say of each note at which station it stands`, params: { reason: 'boardNotes', rows: notes.length } });
}

function ridingBetween(notes: readonly Placed[], size: number): Result<readonly Riding[]> {
  return map(all(notes.map(({ station }, index): Result<Riding> => {
    if (station === undefined) return refuse({ code: 'required', path: stationPath(index), given: undefined, allowed: 'a station, since other notes have one', params: { kind: 'number' } });
    if (station < 1 || station > size) return refuse({ code: 'range', path: stationPath(index), given: station, allowed: `1 to ${String(size)}, the stations of the board`, params: { min: 1, max: size } });
    const below = Math.floor(station);
    const above = station - below;
    return ok(above === 0 ? [{ station: below - 1, share: 1 }] : [{ station: below - 1, share: 1 - above }, { station: below, share: above }]);
  })), (each) => each);
}
