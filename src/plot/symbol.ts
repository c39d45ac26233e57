import type { State } from '#instrument';
import type { Shape } from './scene.ts';

/** The mark of each state, the same on every screen, plot and print: open ring, open diamond, full square. */
export const stateShape: Readonly<Record<State, Shape>> = { found: 'ring', planned: 'diamond', finished: 'square' };

/** What a line of figures stands for: a state, or another plan beside the planned one, by a wedge. */
export type Standing = State | 'rival';

/** The mark of each. */
export const standingShape: Readonly<Record<Standing, Shape>> = { ...stateShape, rival: 'wedgeUp' };

const STROKED: ReadonlySet<Shape> = new Set(['cross', 'dash', 'wave', 'chevron', 'plus', 'arch', 'arrowUp', 'arrowDown', 'stroke1', 'stroke2', 'stroke3', 'stroke4', 'barred', 'doubleUp', 'doubleDown', 'droop']);

/** How a shape is inked: open ones are filled with paper, full ones with their ink, strokes not at all. */
export function inkingOf(shape: Shape): 'open' | 'full' | 'stroke' {
  if (shape === 'ring' || shape === 'diamond') return 'open';
  return STROKED.has(shape) ? 'stroke' : 'full';
}

/** Shortens a coordinate to a hundredth of a pixel, without a negative zero. */
export function shorten(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** Upright strokes that count: how far each stands from the middle. */
const strokes = { stroke1: [0], stroke2: [-0.5, 0.5], stroke3: [-0.9, 0, 0.9], stroke4: [-1.2, -0.4, 0.4, 1.2] } as const;

/** SVG path of a small mark around a point. Areas of the shapes are near each other, so that none shouts. */
export function symbolPathOf({ shape, x, y, radiusPx: r }: { readonly shape: Shape; readonly x: number; readonly y: number; readonly radiusPx: number }): string {
  const at = (dx: number, dy: number): string => `${String(shorten(x + dx * r))} ${String(shorten(y + dy * r))}`;
  const round = (scale: number): string => {
    const radius = String(shorten(scale * r));
    return `M${at(-scale, 0)}a${radius} ${radius} 0 1 0 ${String(shorten(2 * scale * r))} 0a${radius} ${radius} 0 1 0 ${String(shorten(-2 * scale * r))} 0Z`;
  };
  switch (shape) {
    case 'ring': return round(1);
    case 'dot': return round(0.6);
    case 'diamond': return `M${at(0, -1.25)}L${at(1.25, 0)}L${at(0, 1.25)}L${at(-1.25, 0)}Z`;
    case 'square': return `M${at(-0.88, -0.88)}L${at(0.88, -0.88)}L${at(0.88, 0.88)}L${at(-0.88, 0.88)}Z`;
    case 'cross': return `M${at(-1, -1)}L${at(1, 1)}M${at(1, -1)}L${at(-1, 1)}`;
    case 'wedgeUp': return `M${at(0, -1.1)}L${at(1.1, 0.8)}L${at(-1.1, 0.8)}Z`;
    case 'wedgeDown': return `M${at(0, 1.1)}L${at(1.1, -0.8)}L${at(-1.1, -0.8)}Z`;
    case 'dash': return `M${at(-1, 0)}L${at(1, 0)}`;
    case 'plus': return `M${at(-1, 0)}L${at(1, 0)}M${at(0, -1)}L${at(0, 1)}`;
    case 'arrowUp': return `M${at(0, 1)}L${at(0, -1)}M${at(-0.75, -0.25)}L${at(0, -1)}L${at(0.75, -0.25)}`;
    case 'arrowDown': return `M${at(0, -1)}L${at(0, 1)}M${at(-0.75, 0.25)}L${at(0, 1)}L${at(0.75, 0.25)}`;
    case 'chevron': return `M${at(-1, -0.6)}L${at(0, 0.6)}L${at(1, -0.6)}`;
    case 'arch': return `M${at(-1, 0.8)}C${at(-1, -1.3)} ${at(1, -1.3)} ${at(1, 0.8)}`;
    case 'stroke1': case 'stroke2': case 'stroke3': case 'stroke4': return strokes[shape].map((dx) => `M${at(dx, -1.1)}L${at(dx, 1.1)}`).join('');
    case 'barred': return `${round(1)}M${at(-0.7, 0.7)}L${at(0.7, -0.7)}`;
    case 'doubleUp': return `M${at(-1, 0)}L${at(0, -1)}L${at(1, 0)}M${at(-1, 1)}L${at(0, 0)}L${at(1, 1)}`;
    case 'doubleDown': return `M${at(-1, -1)}L${at(0, 0)}L${at(1, -1)}M${at(-1, 0)}L${at(0, 1)}L${at(1, 0)}`;
    case 'droop': return `M${at(-1, -0.8)}C${at(0.4, -0.8)} ${at(1, -0.2)} ${at(1, 1)}`;
    case 'wave': return `M${at(-1.1, 0.2)}C${at(-0.6, -1)} ${at(-0.4, -0.6)} ${at(0, 0)}S${at(0.6, 1)} ${at(1.1, -0.2)}`;
  }
}
