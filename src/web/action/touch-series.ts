import { type KeyTouch, type TouchAnalysis, registerOf } from '#action';
import { type Compass, type State, type TouchIntent, keysOf } from '#instrument';
import type { KeyPlotOptions, KeyPoint } from '#plot';

/** The four figures of touch that are plotted over the keys. */
export const touchFigures = ['downWeight', 'upWeight', 'balance', 'friction'] as const;
export type TouchFigure = (typeof touchFigures)[number];

export interface StateAnalysis {
  readonly state: State;
  readonly analysis: TouchAnalysis;
}

/** Points of one figure; half-width of the whisker is the expanded uncertainty, k = 2. */
export function pointsOf(figure: TouchFigure, { keys }: TouchAnalysis): readonly KeyPoint[] {
  return keys.map((key): KeyPoint => {
    const [value, standard] = valueOf(figure, key);
    return { key: key.key, value, uncertainty: standard === undefined ? undefined : 2 * standard, outcome: value === undefined && key.verdict === 'outcome' };
  });
}

function valueOf(figure: TouchFigure, key: KeyTouch): readonly [value: number | undefined, standardUncertaintyG: number | undefined] {
  switch (figure) {
    case 'downWeight': return [key.figures.downWeightG?.value, key.figures.downWeightG?.standardUncertaintyG];
    case 'upWeight': return [key.figures.upWeightG?.value, key.figures.upWeightG?.standardUncertaintyG];
    case 'balance': return [key.balanceWeightG, key.standardUncertaintyG];
    case 'friction': return [key.frictionG, key.standardUncertaintyG];
  }
}

/** What is asked or usual of a figure: the band of the intent, the least up weight, the register's friction. */
export function boundsOf(figure: TouchFigure, { compass, intent, targets, isUpright }: { readonly compass: Compass; readonly intent: TouchIntent | null; readonly targets: readonly (number | undefined)[]; readonly isUpright: boolean }): Pick<KeyPlotOptions, 'band' | 'target' | 'limit'> {
  if (figure === 'friction') {
    if (isUpright) return {};
    const registers = keysOf(compass).map((key) => registerOf(compass, key));
    return { band: { from: registers.map(({ frictionG, slackG }) => frictionG[0] - slackG), to: registers.map(({ frictionG, slackG }) => frictionG[1] + slackG) } };
  }
  if (intent === null) return {};
  if (figure === 'upWeight') return { limit: intent.upWeightMinG };
  if ((figure === 'balance') !== (intent.even === 'balanceWeight')) return {};
  return {
    target: targets,
    band: {
      from: targets.map((target) => (target === undefined ? undefined : target - intent.toleranceG)),
      to: targets.map((target) => (target === undefined ? undefined : target + intent.toleranceG)),
    },
  };
}
