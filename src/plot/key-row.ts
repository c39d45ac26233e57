import { type Compass, type DrawnKey, type DrawnKeyboard, type KeyNumber, drawKeyboard } from '#instrument';
import type { KeyColumn, Mark } from './scene.ts';

/** A keyboard laid into a strip of a drawing: every plot of the same width and margins aligns key by key. */
export interface KeyRow {
  readonly board: DrawnKeyboard;
  readonly pxPerMm: number;
  readonly leftPx: number;
  readonly columns: readonly KeyColumn[];
}

const boards = new Map<string, DrawnKeyboard>();

function boardOf(compass: Compass): DrawnKeyboard {
  const id = `${String(compass.firstMidi)} ${String(compass.lastMidi)}`;
  const known = boards.get(id) ?? drawKeyboard(compass);
  boards.set(id, known);
  return known;
}

/** Lays the keyboard of a compass between two edges, in true proportion across. */
export function layKeyRow(compass: Compass, leftPx: number, rightPx: number): KeyRow {
  const board = boardOf(compass);
  const pxPerMm = (rightPx - leftPx) / board.widthMm;
  const centres = board.keys.map((key) => leftPx + key.centreMm * pxPerMm);
  const columns = board.keys.map(({ key }, index): KeyColumn => {
    const centrePx = centres[index] ?? leftPx;
    const before = centres[index - 1];
    const after = centres[index + 1];
    const xPx = before === undefined ? leftPx : (before + centrePx) / 2;
    const endPx = after === undefined ? rightPx : (centrePx + after) / 2;
    return { key, xPx, widthPx: endPx - xPx, centrePx };
  });
  return { board, pxPerMm, leftPx, columns };
}

/** Draws naturals, then sharps over them, from `topPx` down; lengths keep the proportion of natural to sharp. */
export function drawKeyRow({ board, pxPerMm, leftPx }: KeyRow, options: { readonly topPx: number; readonly heightPx: number; readonly highlightKey?: KeyNumber | undefined }): readonly Mark[] {
  const { topPx, heightPx, highlightKey } = options;
  const sharpPx = (heightPx * board.sharpLengthMm) / board.naturalLengthMm;
  const drawn = (key: DrawnKey): Mark => ({
    type: 'rect',
    role: key.key === highlightKey ? 'highlightKey' : key.colour === 'natural' ? 'naturalKey' : 'sharpKey',
    key: key.key,
    x: leftPx + key.xMm * pxPerMm,
    y: topPx,
    width: key.widthMm * pxPerMm,
    height: key.colour === 'natural' ? heightPx : sharpPx,
  });
  const ofColour = (colour: DrawnKey['colour']): readonly Mark[] => board.keys.filter((key) => key.colour === colour).map(drawn);
  return [...ofColour('natural'), ...ofColour('sharp')];
}

/** Names under the C of each octave, and under the outermost keys where a C leaves them room. */
export function nameOctaves({ board, columns }: KeyRow, yPx: number, sizePx: number): readonly Mark[] {
  const isC = ({ note }: DrawnKey): boolean => /^C-?\d$/u.test(note);
  const named = board.keys.filter((key, index) => isC(key)
    || (index === 0 && !board.keys.slice(0, 3).some(isC))
    || (index === board.keys.length - 1 && !board.keys.slice(-3).some(isC)));
  return named.map(({ key, note }): Mark => ({ type: 'text', role: 'note', key, x: columns[key - 1]?.centrePx ?? 0, y: yPx, text: note, anchor: 'middle', sizePx }));
}
