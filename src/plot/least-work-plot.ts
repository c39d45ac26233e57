import type { ChangeKind, KeyPlan, TouchState } from '#action';
import type { KeyNumber } from '#instrument';
import { type KeyPlotOptions, type KeyPoint, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';
import { type PlottedTouch, type TouchAsked, type TouchFigure, touchAimsOf, touchPointsOf } from './touch-plot.ts';

export type LeastWorkPlotOptions = TouchAsked & Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'unitSign'> & {
  readonly figure: TouchFigure;
  readonly found: PlottedTouch;
  readonly plans: readonly KeyPlan[];
  /** Word of the legend for what is expected. */
  readonly expected: string;
};

/** Plots one figure of touch as found and as expected after the planned work, with what was asked for. Grams. */
export function leastWorkPlot({ figure, found, plans, expected, ...options }: LeastWorkPlotOptions): Scene {
  const after = plans.map(({ key, after: state }): KeyPoint => ({ key, value: valueOf(figure, state) }));
  const series = [
    { state: found.state, label: found.label, points: touchPointsOf(figure, found.touch.keys) },
    { state: 'planned' as const, label: expected, points: after },
  ];
  return keyPlot({ ...options, series, ...touchAimsOf(figure, options, found.touch.keys), unitSign: 'g' });
}

function valueOf(figure: TouchFigure, { downWeightG, upWeightG, balanceWeightG, frictionG }: TouchState): number {
  return { downWeight: downWeightG, upWeight: upWeightG, balance: balanceWeightG, friction: frictionG }[figure];
}

const SIGNS: Readonly<Record<ChangeKind, KeySign>> = { friction: 'toFriction', ratio: 'toRatio', hammer: 'toHammer', front: 'toFront' };

/** Signs of the keys by their plan: inside already, to be worked on by the first stage of the work, out of reach; keys left out by why. */
export function leastWorkSignsOf(plans: readonly KeyPlan[], left: readonly { readonly why: string; readonly keys: readonly KeyNumber[] }[]): ReadonlyMap<KeyNumber, KeySign> {
  const out = left.flatMap(({ why, keys }) => keys.map((key) => [key, why === 'unweighed' ? 'unmeasured' : 'outcome'] as const));
  return new Map<KeyNumber, KeySign>([...out, ...plans.map(({ key, verdict, work: [first] }) => [key, first === undefined ? (verdict === 'already' ? 'inside' : 'outOfReach') : SIGNS[first.changes]] as const)]);
}
