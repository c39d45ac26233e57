import { type KeyTouch, upWeightLimitOf } from '#action';
import { type TouchIntent, compassOf, keyCountOf } from '#instrument';
import { type KeyPlotOptions, type KeyPoint, keyPlot } from '#plot';
import type { Block } from '#report';
import { DRAWING_WIDTH_PX } from './cover.ts';
import { type ProofInput, provedStates } from './input.ts';
import { bare, statedGrams } from './words.ts';

/** The four touch quantities plotted over the keys. */
const plotted = ['down', 'up', 'balance', 'friction'] as const;
type Plotted = (typeof plotted)[number];

/** Coverage factor of the whiskers and of every expanded uncertainty in print. @source JCGM-100 6.3.3 */
export const COVERAGE = 2;

const PLOT_HEIGHT_PX = 190;

/** Value and expanded uncertainty of one plotted quantity at a key. */
function pointOf(what: Plotted, { key, figures, balanceWeightG, frictionG, standardUncertaintyG, verdict }: KeyTouch): KeyPoint {
  const own = what === 'down' ? figures.downWeightG : what === 'up' ? figures.upWeightG : undefined;
  const value = own?.value ?? (what === 'balance' ? balanceWeightG : what === 'friction' ? frictionG : undefined);
  const standard = own === undefined ? standardUncertaintyG : own.standardUncertaintyG;
  return {
    key, value,
    uncertainty: value === undefined || standard === undefined || standard === 0 ? undefined : COVERAGE * standard,
    outcome: value === undefined && verdict === 'outcome',
  };
}

/** Which plot carries the tolerance band. */
function judgedPlot(intent: TouchIntent): Plotted {
  return intent.even === 'balanceWeight' ? 'balance' : 'down';
}

/** Plots of down, up, balance and friction weight, the states overlaid, on the drawn keys. */
export function plotsOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  const drawn = plotted.flatMap((what) => plotFor(what, input));
  if (drawn.length === 0) return [];
  const aims = plotted.flatMap((what) => aimsOf(what, input).words.map((words) => `${say(`proof.plot.${what}`)}: ${words}.`));
  const whiskers = provedStates(input).some(({ touch }) => touch.keys.some((key) => pointOf('down', key).uncertainty !== undefined));
  const how = [say('proof.plots.how'), ...(whiskers ? [say('proof.plots.whiskers')] : []), ...aims].join(' ');
  return [{ type: 'pageBreak' }, { type: 'heading', level: 1, text: say('proof.plots') }, { type: 'paragraph', size: 'small', text: how }, ...drawn];
}

function plotFor(what: Plotted, input: ProofInput): readonly Block[] {
  const { say, instrument, locale } = input;
  const compass = compassOf(instrument);
  const series = provedStates(input).map(({ state, touch }) => ({ state, label: say(`proof.state.${state}`), points: touch.keys.map((key) => pointOf(what, key)) }));
  if (series.every(({ points }) => points.every(({ value, outcome }) => value === undefined && outcome !== true))) return [];
  const name = say(`proof.plot.${what}`);
  const aims = aimsOf(what, input);
  const alt = [name, ...series.map((one) => seriesWords(one, input)), ...aims.words].join('. ') + '.';
  const scene = keyPlot({ compass, series, ...aims.drawn, title: name, description: alt, yLabel: name, unitSign: 'g', locale, widthPx: DRAWING_WIDTH_PX, heightPx: PLOT_HEIGHT_PX });
  return [{ type: 'figure', scene, alt, caption: '' }];
}

/** Band, target and limit of a plot, with the words for them. */
function aimsOf(what: Plotted, input: ProofInput): { readonly drawn: Pick<KeyPlotOptions, 'band' | 'target' | 'limit'>; readonly words: readonly string[] } {
  const { say, intent, instrument } = input;
  if (intent === null) return { drawn: {}, words: [] };
  const { limitG } = upWeightLimitOf(intent, undefined);
  if (what === 'up') return { drawn: { limit: limitG }, words: [say('proof.plot.limit', { limit: statedGrams(limitG, input) })] };
  if (what !== judgedPlot(intent)) return { drawn: {}, words: [] };
  const asked = new Map(provedStates(input).flatMap(({ touch }) => touch.keys.map(({ key, targetG }) => [key, targetG] as const)));
  const target = Array.from({ length: keyCountOf(compassOf(instrument)) }, (_, index) => asked.get(index + 1));
  const moved = (by: number): readonly (number | undefined)[] => target.map((value) => (value === undefined ? undefined : value + by));
  return { drawn: { target, band: { from: moved(-intent.toleranceG), to: moved(intent.toleranceG) } }, words: [say('proof.plot.band', { tolerance: statedGrams(intent.toleranceG, input) })] };
}

function seriesWords({ label, points }: { readonly label: string; readonly points: readonly KeyPoint[] }, input: ProofInput): string {
  const values = points.flatMap(({ value }) => (value === undefined ? [] : [value]));
  if (values.length === 0) return input.say('proof.plot.noSeries', { state: label });
  return input.say('proof.plot.series', { state: label, count: values.length, from: bare(Math.min(...values), input), to: bare(Math.max(...values), input) });
}
