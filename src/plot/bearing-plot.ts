import type { AnalysedBearing, AskedBearing, BearingFigures, BellyAnalysis, RecapRow } from '#belly';
import type { KeyNumber, State } from '#instrument';
import { type KeyPlotOptions, type KeyPoint, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';

/** The figures of the bearing that are plotted over the keys. */
export const bearingFigures = ['total', 'force', 'front', 'rear'] as const;
export type BearingFigure = (typeof bearingFigures)[number];

/** Coverage factor of the whiskers. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

/** The bearing of one state, with the word its marks go by. */
export interface PlottedBelly {
  readonly state: State;
  readonly label: string;
  readonly belly: BellyAnalysis;
}

type Options = Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'unitSign' | 'axis'>;

export type BearingPlotOptions = Options & {
  readonly figure: BearingFigure;
  /** Earlier states first. */
  readonly bellies: readonly PlottedBelly[];
  readonly asked: AskedBearing;
};

/** Plots one figure of the bearing over the keyboard, states overlaid. What is asked is drawn with the total angle; nought, where strings begin to lift, with every one. */
export function bearingPlot({ figure, bellies, asked: { leastTotalDeg, mostTotalDeg }, ...options }: BearingPlotOptions): Scene {
  const series = bellies.map(({ state, label, belly }) => ({ state, label, points: belly.notes.map((note) => pointOf(figure, note)) }));
  const band = figure === 'total' && leastTotalDeg !== undefined && mostTotalDeg !== undefined ? { band: { from: leastTotalDeg, to: mostTotalDeg } } : {};
  return keyPlot({ ...options, series, ...band, limit: 0, unitSign: figure === 'force' ? 'N' : '°' });
}

function pointOf(figure: BearingFigure, { key, figures = {} }: AnalysedBearing): KeyPoint {
  const [value, standard] = valueOf(figure, figures);
  return { key, value, uncertainty: standard === undefined ? undefined : COVERAGE * standard };
}

function valueOf(figure: BearingFigure, of: BearingFigures): readonly [value: number | undefined, standard: number | undefined] {
  switch (figure) {
    case 'total': return [of.totalDeg, of.totalUncertaintyDeg];
    case 'force': return [of.forceN, of.forceUncertaintyN];
    case 'front': return [of.frontDeg, of.frontUncertaintyDeg];
    case 'rear': return [of.rearDeg, of.rearUncertaintyDeg];
  }
}

/** Plots how far the bridge is to be built up, or planed off below nought, over the keyboard: with the strings slack where that is known. */
export function recapPlot({ rows, label, ...options }: Options & { readonly rows: readonly { readonly key: KeyNumber; readonly row: RecapRow }[]; readonly label: string }): Scene {
  const points = rows.map(({ key, row: { loadedChangeMm, loadedChangeUncertaintyMm, slack } }): KeyPoint => {
    const standard = slack === undefined ? loadedChangeUncertaintyMm : slack.changeUncertaintyMm;
    return { key, value: slack?.changeMm ?? loadedChangeMm, uncertainty: standard === undefined ? undefined : COVERAGE * standard };
  });
  return keyPlot({ ...options, series: [{ state: 'planned', label, points }], limit: 0, unitSign: 'mm' });
}

/** Signs of the keys by their bearing: strings that lift first, then what is asked; bare where nothing is asked. */
export function bearingSignsOf({ notes }: BellyAnalysis, { leastTotalDeg, mostTotalDeg }: AskedBearing): ReadonlyMap<KeyNumber, KeySign> {
  const isAsked = leastTotalDeg !== undefined || mostTotalDeg !== undefined;
  return new Map(notes.flatMap((note) => {
    const sign = signOf(note, isAsked);
    return sign === undefined ? [] : [[note.key, sign] as const];
  }));
}

function signOf({ figures, findings }: AnalysedBearing, isAsked: boolean): KeySign | undefined {
  if (figures === undefined) return 'unmeasured';
  const clear = findings.filter(({ inDoubt }) => inDoubt !== true);
  if (clear.some(({ code }) => code === 'bearingNegative')) return 'lifts';
  const [first] = clear;
  if (first !== undefined) return first.code === 'bearingHigh' ? 'over' : 'under';
  if (findings.length > 0) return 'doubtful';
  return isAsked && figures.totalDeg !== undefined ? 'inside' : undefined;
}
