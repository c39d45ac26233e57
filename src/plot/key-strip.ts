import type { Mark, Scene } from './scene.ts';

/** What a hole of a key is to become. */
export type HoleUse = 'refill' | 'trim' | 'exchange' | 'plug' | 'new';

/** A hole through the side of a key, from the balance point toward the front. */
export interface StripHole {
  readonly positionMm: number;
  readonly diameterMm: number;
  readonly use: HoleUse;
  /** Hole through the middle of its lead. */
  readonly boreMm?: number | undefined;
  /** What is said under it, line by line. */
  readonly lines: readonly string[];
}

export interface KeyStripOptions {
  /** The stretch of key drawn, from the balance point. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Front edge and back end, where they are known. */
  readonly frontMm?: number | undefined;
  readonly backMm?: number | undefined;
  /** Height of the key. */
  readonly heightMm: number;
  readonly holes: readonly StripHole[];
  /** Stretches no new hole may reach into. */
  readonly keepOutsMm: readonly (readonly [number, number])[];
  /** Where another piece of the same strip is put to it. */
  readonly joinsMm?: readonly number[] | undefined;
  /** Words along the strip, and where they begin. */
  readonly signs: readonly { readonly atMm: number; readonly text: string }[];
  readonly pxPerMm: number;
  readonly title: string;
  readonly description: string;
  readonly lineCount: number;
}

const TEXT_PX = 9;
const LINE_PX = 11;
const TOP_PX = 14;

/**
 * One key from its bass side, to scale: old holes as they are, refilled, drilled out, with another metal or plugged, new ones with a cross to centre the drill,
 * the balance point as datum, and where no hole may come. The front is to the right.
 */
export function keyStripScene(options: KeyStripOptions): Scene {
  const { fromMm, toMm, heightMm, pxPerMm, holes, lineCount, title, description } = options;
  const x = (mm: number): number => (mm - fromMm) * pxPerMm;
  const [top, height] = [TOP_PX, heightMm * pxPerMm];
  const middle = top + height / 2;
  const marks: readonly Mark[] = [
    ...drawKeepOuts(options, x, top, height),
    ...drawWood(options, x, top, height),
    ...drawDatum(options, x, top, height),
    ...holes.flatMap((hole) => drawHole(hole, x(hole.positionMm), { middle, below: top + height + LINE_PX, pxPerMm })),
  ];
  return { widthPx: (toMm - fromMm) * pxPerMm, heightPx: top + height + LINE_PX * lineCount + 5, title, description, marks, columns: [] };
}

type Across = (mm: number) => number;

const inView = ({ fromMm, toMm }: KeyStripOptions, mm: number): boolean => mm >= fromMm && mm <= toMm;

function drawKeepOuts(options: KeyStripOptions, x: Across, top: number, height: number): readonly Mark[] {
  const { keepOutsMm, fromMm, toMm, frontMm = toMm, backMm = -fromMm } = options;
  return keepOutsMm.flatMap(([from, to]): readonly Mark[] => {
    const [start, end] = [Math.max(from, fromMm, -backMm), Math.min(to, toMm, frontMm)];
    return end <= start ? [] : [{ type: 'rect', role: 'highlight', x: x(start), y: top, width: x(end) - x(start), height }];
  });
}

/** Upper and lower edge, and the ends where the key ends within the drawing. */
function drawWood(options: KeyStripOptions, x: Across, top: number, height: number): readonly Mark[] {
  const { fromMm, toMm, frontMm = Infinity, backMm = Infinity } = options;
  const [start, end] = [x(Math.max(fromMm, -backMm)), x(Math.min(toMm, frontMm))];
  const edge = (y: number): Mark => ({ type: 'line', role: 'axis', x1: start, x2: end, y1: y, y2: y });
  const close = (at: number): readonly Mark[] => (inView(options, at) ? [{ type: 'line', role: 'axis', x1: x(at), x2: x(at), y1: top, y2: top + height }] : []);
  return [edge(top), edge(top + height), ...close(frontMm), ...close(-backMm)];
}

function drawDatum(options: KeyStripOptions, x: Across, top: number, height: number): readonly Mark[] {
  const datum: readonly Mark[] = inView(options, 0) ? [{ type: 'line', role: 'target', x1: x(0), x2: x(0), y1: top - 4, y2: top + height + 4 }] : [];
  const joins = (options.joinsMm ?? []).map((atMm): Mark => ({ type: 'line', role: 'limit', x1: x(atMm), x2: x(atMm), y1: top - 4, y2: top + height + 4 }));
  return [...datum, ...joins, ...options.signs.filter(({ atMm }) => inView(options, atMm)).map(({ atMm, text }): Mark => ({ type: 'text', role: 'note', x: x(atMm) + 3, y: top - 4, text, anchor: 'start', sizePx: TEXT_PX }))];
}

function drawHole({ diameterMm, boreMm = 0, use, lines }: StripHole, x: number, { middle, below, pxPerMm }: { readonly middle: number; readonly below: number; readonly pxPerMm: number }): readonly Mark[] {
  const radius = (diameterMm / 2) * pxPerMm;
  const role = use === 'new' ? 'planned' : 'found';
  const round: Mark = { type: 'symbol', shape: 'ring', role, x, y: middle, radiusPx: radius };
  const inside: readonly Mark[] = use === 'plug' ? [{ type: 'symbol', shape: 'cross', role, x, y: middle, radiusPx: radius * 0.6 }]
    : use === 'refill' ? [{ type: 'symbol', shape: 'dot', role, x, y: middle, radiusPx: radius }]
    : use === 'exchange' ? [{ type: 'symbol', shape: 'diamond', role: 'planned', x, y: middle, radiusPx: radius * 0.6 }]
    : use === 'trim' ? []
    : [{ type: 'line', role: 'axis', x1: x - radius - 2, x2: x + radius + 2, y1: middle, y2: middle }, { type: 'line', role: 'axis', x1: x, x2: x, y1: middle - radius - 2, y2: middle + radius + 2 }];
  const bore: readonly Mark[] = boreMm === 0 ? [] : [{ type: 'symbol', shape: 'ring', role: 'planned', x, y: middle, radiusPx: (boreMm / 2) * pxPerMm }];
  return [round, ...inside, ...bore, ...lines.map((text, index): Mark => ({ type: 'text', role: index === 0 ? 'label' : 'note', x, y: below + index * LINE_PX, text, anchor: 'middle', sizePx: TEXT_PX }))];
}
