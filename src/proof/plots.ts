import { askedUpWeightOf } from '#action';
import { compassOf } from '#instrument';
import { type KeyPoint, type PlottedTouch, type TouchFigure, judgedFigureOf, touchFigures, touchPlot, touchPointsOf } from '#plot';
import { type Block, bare } from '#report';
import { DRAWING_WIDTH_PX } from './cover.ts';
import { type ProofInput, provedStates } from './input.ts';
import { statedGrams } from './words.ts';

/** Coverage factor of every expanded uncertainty in print. @source JCGM-100 6.3.3 */
export const COVERAGE = 2;

const PLOT_HEIGHT_PX = 190;

/** Plots of down, up, balance and friction weight, the states overlaid, on the drawn keys. */
export function plotsOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  const drawn = touchFigures.flatMap((figure) => plotFor(figure, input));
  if (drawn.length === 0) return [];
  const aims = touchFigures.flatMap((figure) => aimWordsOf(figure, input).map((words) => `${nameOf(figure, input)}: ${words}.`));
  const whiskers = provedStates(input).some(({ touch }) => touchPointsOf('downWeight', touch.keys).some(({ uncertainty }) => uncertainty !== undefined));
  const how = [say('proof.plots.how'), ...(whiskers ? [say('proof.plots.whiskers')] : []), ...aims].join(' ');
  return [{ type: 'pageBreak' }, { type: 'heading', level: 1, text: say('proof.plots') }, { type: 'paragraph', size: 'small', text: how }, ...drawn];
}

const names = { downWeight: 'proof.plot.down', upWeight: 'proof.plot.up', balance: 'proof.plot.balance', friction: 'proof.plot.friction' } as const satisfies Readonly<Record<TouchFigure, string>>;

function nameOf(figure: TouchFigure, { say }: ProofInput): string {
  return say(names[figure]);
}

function plotFor(figure: TouchFigure, input: ProofInput): readonly Block[] {
  const { say, instrument, intent, locale } = input;
  const touches = provedStates(input).map(({ state, touch }): PlottedTouch => ({ state, label: say(`proof.state.${state}`), touch }));
  const drawn = touches.map(({ label, touch }) => ({ label, points: touchPointsOf(figure, touch.keys) }));
  if (drawn.every(({ points }) => points.every(({ value, outcome }) => value === undefined && outcome !== true))) return [];
  const name = nameOf(figure, input);
  const alt = [name, ...drawn.map((one) => seriesWords(one, input)), ...aimWordsOf(figure, input)].join('. ') + '.';
  const scene = touchPlot({ figure, touches, compass: compassOf(instrument), intent, title: name, description: alt, yLabel: name, locale, widthPx: DRAWING_WIDTH_PX, heightPx: PLOT_HEIGHT_PX });
  return [{ type: 'figure', scene, alt, caption: '' }];
}

/** What is asked of a plot's figure, in words. */
function aimWordsOf(figure: TouchFigure, input: ProofInput): readonly string[] {
  const { say, intent } = input;
  if (intent === null) return [];
  if (figure === 'upWeight') {
    const askedG = askedUpWeightOf(intent);
    return askedG === undefined ? [] : [say('proof.plot.limit', { limit: statedGrams(askedG, input) })];
  }
  return figure === judgedFigureOf(intent) ? [say('proof.plot.band', { tolerance: statedGrams(intent.toleranceG, input) })] : [];
}

function seriesWords({ label, points }: { readonly label: string; readonly points: readonly KeyPoint[] }, input: ProofInput): string {
  const values = points.flatMap(({ value }) => (value === undefined ? [] : [value]));
  if (values.length === 0) return input.say('proof.plot.noSeries', { state: label });
  return input.say('proof.plot.series', { state: label, count: values.length, from: bare(Math.min(...values), input), to: bare(Math.max(...values), input) });
}
