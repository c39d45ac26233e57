import type { KeyNumber } from '#instrument';
import type { AnalysedNote, AskedBreaking, NoteFigures, ScaleAnalysis } from '#strings';
import { type KeyPlotOptions, type KeyPoint, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';
import type { Standing } from './symbol.ts';

/** The four figures of a string that are plotted over the keys. */
export const scaleFigures = ['tension', 'breaking', 'inharmonicity', 'impedance'] as const;
export type ScaleFigure = (typeof scaleFigures)[number];

/** Coverage factor of the whiskers. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

const UNIT: Readonly<Record<ScaleFigure, string>> = { tension: 'N', breaking: '%', inharmonicity: '', impedance: 'kg/s' };

/** The strings of one state, with the word their marks go by. */
export interface PlottedScale {
  readonly state: Standing;
  readonly label: string;
  readonly scale: ScaleAnalysis;
}

export type ScalePlotOptions = Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'unitSign' | 'axis'> & {
  readonly figure: ScaleFigure;
  /** Earlier states first. */
  readonly scales: readonly PlottedScale[];
  readonly asked: AskedBreaking;
};

/**
 * Plots one figure of the strings over the keyboard, one string of each note, states overlaid. Inharmonicity stands on a
 * logarithmic axis; what is asked of the share of breaking is drawn with that share and nowhere else.
 */
export function scalePlot({ figure, scales, asked, ...options }: ScalePlotOptions): Scene {
  const series = scales.map(({ state, label, scale }) => ({ state, label, points: scale.notes.map((note) => pointOf(figure, note)) }));
  return keyPlot({ ...options, series, ...(figure === 'breaking' ? askedOf(asked) : {}), unitSign: UNIT[figure], ...(figure === 'inharmonicity' ? { axis: 'log' } : {}) });
}

function pointOf(figure: ScaleFigure, { key, figures, fault, issues }: AnalysedNote): KeyPoint {
  if (figures === undefined) return { key, outcome: fault !== undefined || issues.length > 0 };
  const [value, standard] = valueOf(figure, figures);
  return { key, value, uncertainty: standard === undefined ? undefined : COVERAGE * standard };
}

function valueOf(figure: ScaleFigure, { tensionN, breakingPct, inharmonicityB, impedanceKgPerS, uncertainty }: NoteFigures): readonly [value: number, standard: number | undefined] {
  switch (figure) {
    case 'tension': return [tensionN, uncertainty?.tensionUncertaintyN];
    case 'breaking': return [breakingPct, uncertainty?.breakingUncertaintyPct];
    case 'inharmonicity': return [inharmonicityB, uncertainty?.inharmonicityUncertainty];
    case 'impedance': return [impedanceKgPerS, uncertainty?.impedanceUncertaintyKgPerS];
  }
}

function askedOf({ leastPct, mostPct }: AskedBreaking): Pick<KeyPlotOptions, 'band' | 'limit'> {
  if (leastPct !== undefined && mostPct !== undefined) return { band: { from: leastPct, to: mostPct } };
  const limit = leastPct ?? mostPct;
  return limit === undefined ? {} : { limit };
}

/** Signs of the keys of a scale: what makes no string first, then the share of breaking; bare where nothing is asked. */
export function scaleSignsOf({ notes }: ScaleAnalysis): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(notes.flatMap((note) => {
    const sign = signOf(note);
    return sign === undefined ? [] : [[note.key, sign] as const];
  }));
}

function signOf({ figures, fault, issues, verdict }: AnalysedNote): KeySign | undefined {
  if (fault !== undefined || issues.length > 0) return 'work';
  if (figures === undefined) return 'unmeasured';
  if (verdict === undefined) return undefined;
  if (verdict.isDoubtful) return 'doubtful';
  return verdict.side === 'within' ? 'inside' : verdict.side;
}
