import type { KeyNumber } from '#instrument';
import type { ToneFigure, ToneFigures } from '#tone';
import { type KeyPlotOptions, type KeyPoint, type PerKey, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';
import type { Standing } from './symbol.ts';

/** A note of one state by its key. */
export interface PlottedNote {
  readonly key: KeyNumber;
  readonly figures: ToneFigures;
}

/** The notes of one state, with the word their marks go by. */
export interface PlottedTone {
  readonly state: Standing;
  readonly label: string;
  readonly notes: readonly PlottedNote[];
}

/** Unit signs of the figures; brightness is a number of partials and inharmonicity a pure number. */
export const toneUnits: Readonly<Record<ToneFigure, string>> = { brightness: '', balance: 'dB', level: 'dB', sustain: 's', inharmonicity: '', pitch: 'ct' };

/** Whiskers are drawn at twice the standard uncertainty. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

export type TonePlotOptions = Omit<KeyPlotOptions, 'series' | 'unitSign' | 'axis'> & {
  readonly figure: ToneFigure;
  /** Earlier states first. */
  readonly states: readonly PlottedTone[];
  /** What the figure should be by the strings, or along the compass, by key. */
  readonly target?: PerKey | undefined;
};

/** Plots one figure of the sound over the keyboard, states overlaid; decay and inharmonicity, which span decades, on a logarithmic axis. */
export function tonePlot({ figure, states, ...options }: TonePlotOptions): Scene {
  const series = states.map(({ state, label, notes }) => ({ state, label, points: notes.map((note) => pointOf(figure, note)) }));
  return keyPlot({ ...options, series, unitSign: toneUnits[figure], ...(figure === 'inharmonicity' || figure === 'sustain' ? { axis: 'log' } : {}) });
}

function pointOf(figure: ToneFigure, { key, figures }: PlottedNote): KeyPoint {
  const own = figures[figure];
  return { key, value: own?.value, ...(own?.uncertainty === undefined ? {} : { uncertainty: COVERAGE * own.uncertainty }) };
}

/** Signs of the keys by their sound: to be looked at, heard; bare where nothing was recorded. */
export function toneSignsOf(heard: Iterable<KeyNumber>, toLookAt: ReadonlySet<KeyNumber>): ReadonlyMap<KeyNumber, KeySign> {
  return new Map([...heard].map((key) => [key, toLookAt.has(key) ? 'work' : 'inside'] as const));
}
