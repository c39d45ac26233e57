import type { KeyNumber } from '#instrument';

/** What a mark means. The theme turns a role into ink; no mark carries a colour of its own. */
export type Role =
  | 'axis' | 'grid' | 'octave'
  | 'band' | 'target' | 'limit'
  | 'found' | 'planned' | 'finished' | 'rival'
  | 'uncertainty' | 'outcome' | 'flag'
  | 'naturalKey' | 'sharpKey' | 'highlight' | 'highlightKey'
  | 'onNatural' | 'flagOnNatural' | 'onSharp'
  | 'part' | 'partLit'
  | 'label' | 'note';

/** Shapes of the small marks. Ring, diamond and square belong to the three states and to nothing else, so that no one has to tell states by colour. */
export type Shape = 'ring' | 'diamond' | 'square' | 'cross' | 'wedgeUp' | 'wedgeDown' | 'dot' | 'dash' | 'wave' | 'chevron' | 'plus' | 'arch' | 'arrowUp' | 'arrowDown' | 'stroke1' | 'stroke2' | 'stroke3' | 'stroke4' | 'barred' | 'doubleUp' | 'doubleDown' | 'droop';

interface Marked {
  readonly role: Role;
  /** The key a mark belongs to, for pointing. */
  readonly key?: KeyNumber;
}

export interface RectMark extends Marked {
  readonly type: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface LineMark extends Marked {
  readonly type: 'line';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A path in SVG path syntax: a connecting line, or an area when `filled`. */
export interface PathMark extends Marked {
  readonly type: 'path';
  readonly d: string;
  readonly filled: boolean;
}

export interface TextMark extends Marked {
  readonly type: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly sizePx: number;
}

export interface SymbolMark extends Marked {
  readonly type: 'symbol';
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
  readonly radiusPx: number;
}

export type Mark = RectMark | LineMark | PathMark | TextMark | SymbolMark;

/** Where a key stands in a drawing: the strip to point at, and the middle its plot points sit over. */
export interface KeyColumn {
  readonly key: KeyNumber;
  readonly xPx: number;
  readonly widthPx: number;
  readonly centrePx: number;
}

/** A finished drawing as pure data: React draws it on screen, `svgOf` for print. Marks are in painting order. */
export interface Scene {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly title: string;
  /** What the drawing says, for those who do not see it. */
  readonly description: string;
  readonly marks: readonly Mark[];
  /** Strips of the keys, bass to treble, without gaps. */
  readonly columns: readonly KeyColumn[];
}

/** What every plot of two axes is told beside what it shows; `locale` is how its numbers are written. */
export interface AxesOptions {
  readonly xLabel: string;
  readonly yLabel: string;
  readonly title: string;
  readonly description: string;
  readonly locale: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The key whose strip lies under a point of the drawing; undefined outside the compass. */
export function keyUnder(scene: Pick<Scene, 'columns'>, xPx: number): KeyNumber | undefined {
  return scene.columns.find((column) => xPx >= column.xPx && xPx < column.xPx + column.widthPx)?.key;
}
