import type { Compass, KeyNumber } from '#instrument';
import { drawKeyRow, layKeyRow, nameOctaves } from './key-row.ts';
import type { Mark, Scene, Shape } from './scene.ts';

/** What a key is marked with on the drawn keyboard. `slow`: too little up weight to return. `over`, `under`: outside what is asked of strings or bearing. `lifts`: negative bearing. `toFriction` to `toFront`: work planned, by its first stage. `outOfReach`: no work offered brings it inside. */
export type KeySign = 'inside' | 'heavy' | 'light' | 'doubtful' | 'slow' | 'outcome' | 'work' | 'unmeasured' | 'over' | 'under' | 'lifts' | 'toFriction' | 'toRatio' | 'toHammer' | 'toFront' | 'outOfReach' | 'bright' | 'dull' | 'short';

/** Shape of each sign: a heavy key points down, a light one up, a slow one sags, a doubtful one wavers, an outcome is crossed; arrows point out of what is asked, an arch lifts off; strokes count the stage of the work, a barred ring is out of reach; a bright hammer rises, a dull one sinks, a short tone droops. */
export const signShape: Readonly<Record<KeySign, Shape>> = {
  inside: 'dot', heavy: 'wedgeDown', light: 'wedgeUp', doubtful: 'wave', slow: 'chevron', outcome: 'cross', work: 'plus', unmeasured: 'dash', over: 'arrowUp', under: 'arrowDown',
  lifts: 'arch', toFriction: 'stroke1', toRatio: 'stroke2', toHammer: 'stroke3', toFront: 'stroke4', outOfReach: 'barred',
  bright: 'doubleUp', dull: 'doubleDown', short: 'droop',
};

export interface KeyboardSceneOptions {
  readonly compass: Compass;
  /** Sign of each key; keys not listed stay bare. */
  readonly signs: ReadonlyMap<KeyNumber, KeySign>;
  readonly highlightKey?: KeyNumber | undefined;
  readonly title: string;
  readonly description: string;
  readonly widthPx: number;
  /** Leave out for keys in their true proportion of length to width. */
  readonly keyHeightPx?: number | undefined;
  /** Left and right edge of the keys; the plots' own margins make keys align with plots of the same width. */
  readonly leftPx?: number | undefined;
  readonly rightPx?: number | undefined;
}

const NAMES_PX = 14;

/** Signs that call for nothing. */
const CALM: ReadonlySet<KeySign> = new Set(['inside', 'doubtful', 'unmeasured']);

/** Draws the row of keys alone, each key marked by its sign near its front edge. */
export function keyboardScene(options: KeyboardSceneOptions): Scene {
  const { compass, signs, highlightKey, title, description, widthPx, leftPx = 1, rightPx = 1 } = options;
  const row = layKeyRow(compass, leftPx, widthPx - rightPx);
  const heightPx = options.keyHeightPx ?? row.board.naturalLengthMm * row.pxPerMm;
  const sharpPx = (heightPx * row.board.sharpLengthMm) / row.board.naturalLengthMm;
  const radiusPx = Math.min(6, Math.max(2.2, row.pxPerMm * 4.2));
  const marks = row.board.keys.flatMap(({ key, colour, xMm, widthMm }): readonly Mark[] => {
    const sign = signs.get(key);
    if (sign === undefined) return [];
    const isNatural = colour === 'natural';
    return [{
      type: 'symbol', shape: signShape[sign], key, radiusPx,
      role: isNatural || key === highlightKey ? (CALM.has(sign) ? 'onNatural' : 'flagOnNatural') : 'onSharp',
      x: row.leftPx + (xMm + widthMm / 2) * row.pxPerMm,
      y: 1 + (isNatural ? heightPx : sharpPx) - radiusPx * 2.2,
    }];
  });
  return {
    widthPx, heightPx: heightPx + NAMES_PX + 2, title, description, columns: row.columns,
    marks: [...drawKeyRow(row, { topPx: 1, heightPx, highlightKey }), ...marks, ...nameOctaves(row, heightPx + NAMES_PX - 1, 10)],
  };
}
