import { type KeyTouch, type TouchAnalysis, askedUpWeightOf, registerOf } from '#action';
import { type Compass, type State, type TouchIntent, keyCountOf, keysOf } from '#instrument';
import { type KeyPlotOptions, type KeyPoint, keyPlot } from './key-plot.ts';
import type { Scene } from './scene.ts';

/** The four figures of touch that are plotted over the keys. */
export const touchFigures = ['downWeight', 'upWeight', 'balance', 'friction'] as const;
export type TouchFigure = (typeof touchFigures)[number];

/** Coverage factor of the whiskers. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

/** The touch of one state, with the word its marks go by. */
export interface PlottedTouch {
  readonly state: State;
  readonly label: string;
  readonly touch: TouchAnalysis;
}

/** What the touch of an instrument is plotted against. */
export interface TouchAsked {
  readonly compass: Compass;
  readonly intent: TouchIntent | null;
  /** Draw what friction is usual in each register of a grand; left out where it does not hold or is not explained beside. */
  readonly usualFriction?: boolean | undefined;
}

export type TouchPlotOptions = TouchAsked & Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'unitSign'> & {
  readonly figure: TouchFigure;
  /** Earlier states first. */
  readonly touches: readonly PlottedTouch[];
};

/** Plots one figure of touch over the keyboard, states overlaid, with what was asked for. Grams. */
export function touchPlot({ figure, touches, ...options }: TouchPlotOptions): Scene {
  const series = touches.map(({ state, label, touch }) => ({ state, label, points: touchPointsOf(figure, touch.keys) }));
  return keyPlot({ ...options, series, ...touchAimsOf(figure, options, touches.at(-1)?.touch.keys ?? []), unitSign: 'g' });
}

/** Points of one figure; half-width of the whisker is the expanded uncertainty (k = 2), in grams. */
export function touchPointsOf(figure: TouchFigure, keys: readonly KeyTouch[]): readonly KeyPoint[] {
  return keys.map((key): KeyPoint => {
    const [value, standard] = valueOf(figure, key);
    const isKnown = value !== undefined && standard !== undefined && standard > 0;
    return { key: key.key, value, uncertainty: isKnown ? COVERAGE * standard : undefined, outcome: value === undefined && key.verdict === 'outcome' };
  });
}

function valueOf(figure: TouchFigure, { figures, balanceWeightG, frictionG, standardUncertaintyG }: KeyTouch): readonly [value: number | undefined, standardUncertaintyG: number | undefined] {
  switch (figure) {
    case 'downWeight': return [figures.downWeightG?.value, figures.downWeightG?.standardUncertaintyG];
    case 'upWeight': return [figures.upWeightG?.value, figures.upWeightG?.standardUncertaintyG];
    case 'balance': return [balanceWeightG, standardUncertaintyG];
    case 'friction': return [frictionG, standardUncertaintyG];
  }
}

/** The figure an intent judges by. */
export function judgedFigureOf({ even }: TouchIntent): TouchFigure {
  return even === 'balanceWeight' ? 'balance' : 'downWeight';
}

/** What is asked or usual of a figure, in grams: the tolerance band and target of the intent, the least up weight, the registers' friction. */
export function touchAimsOf(figure: TouchFigure, { compass, intent, usualFriction = false }: TouchAsked, keys: readonly KeyTouch[]): Pick<KeyPlotOptions, 'band' | 'target' | 'limit'> {
  if (figure === 'friction') return usualFriction ? { band: usualFrictionOf(compass) } : {};
  if (intent === null) return {};
  if (figure === 'upWeight') return { limit: askedUpWeightOf(intent) };
  if (figure !== judgedFigureOf(intent)) return {};
  const asked = new Map(keys.map(({ key, targetG }) => [key, targetG]));
  const target = Array.from({ length: keyCountOf(compass) }, (_, index) => asked.get(index + 1));
  const moved = (byG: number): readonly (number | undefined)[] => target.map((value) => (value === undefined ? undefined : value + byG));
  return { target, band: { from: moved(-intent.toleranceG), to: moved(intent.toleranceG) } };
}

function usualFrictionOf(compass: Compass): NonNullable<KeyPlotOptions['band']> {
  const registers = keysOf(compass).map((key) => registerOf(compass, key));
  return { from: registers.map(({ frictionG, slackG }) => frictionG[0] - slackG), to: registers.map(({ frictionG, slackG }) => frictionG[1] + slackG) };
}
