import { type RegulationName, type RegulationOfRegister, type RegulationRow, regulationNames } from '#action';
import { compassOf } from '#instrument';
import { regulationPlot } from '#plot';
import { type Block, type Cell, type FigureBlock, asStated, bare, cell } from '#report';
import { sayOfSpread } from '#workshop';
import { DRAWING_WIDTH_PX } from './cover.ts';
import type { ProofInput, ProvedRegulation } from './input.ts';
import { uprightPartsOf } from './uprights.ts';

/** Of what was read, the figures a player feels are drawn. */
const DRAWN = new Set<RegulationName>(['blowMm', 'letOffMm', 'dipMm', 'aftertouchMm']);
const MOST_DRAWN = 3;

/** The regulation as found and as finished, on a page of its own: keys inside of those read, by figure, beside what was asked, and plots. Nothing where none was read. */
export function regulationOf(input: ProofInput): readonly Block[] {
  const { say, regulations = [] } = input;
  const [first] = regulations;
  if (first === undefined) return [];
  const shown = regulationNames.filter((name) => regulations.some(({ analysis }) => analysis.rows.some((row) => row.name === name)));
  const column = (label: string, width: number) => ({ label, align: 'start', width } as const);
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.regulation') },
    { type: 'paragraph', size: 'body', text: say('proof.regulation.how') },
    ...(shown.length === 0 ? [] : [{
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.regulation'),
      columns: [column(say('proof.regulation'), 2.4), column(say('proof.regulation.asked'), 3.4), ...regulations.map(({ state }) => column(say(`proof.state.${state}`), 3.4))],
      rows: shown.map((name) => [cell(say(`quantity.${name}.name`)), askedCell(name, first, input), ...regulations.map(({ analysis }) => countedCell(analysis.rows.find((row) => row.name === name), input))]),
    } as const, { type: 'paragraph', size: 'small', text: say('proof.regulation.registers') } as const]),
    ...uprightPartsOf(input),
    { type: 'list', items: [...spreadsOf(input), ...[...new Set(regulations.flatMap(({ assumed }) => assumed))].map((what) => say(`regulation.assumed.${what}`))] },
    ...shown.filter((name) => DRAWN.has(name)).slice(0, MOST_DRAWN).map((name) => plotOf(name, regulations, input)),
  ];
}

/** The spread of each state, a line each. */
function spreadsOf(input: ProofInput): readonly string[] {
  const { say, regulations = [] } = input;
  return regulations.flatMap(({ state, spread }) => (spread === undefined ? [] : [`${say('regulation.spread')}. ${say(`proof.state.${state}`)}: ${sayOfSpread(say, spread, (value) => `${bare(value, input, { decimals: 1 })}\u00A0mm`)}`]));
}

function plotOf(name: RegulationName, regulations: readonly ProvedRegulation[], { say, instrument, locale }: ProofInput): FigureBlock {
  const title = say(`quantity.${name}.name`);
  const states = regulations.map(({ state, analysis }) => ({ state, label: say(`proof.state.${state}`), worked: analysis }));
  const alt = say('regulation.plots.described', { what: title, states: states.map(({ label }) => label).join(', ') });
  const scene = regulationPlot({ name, states, toleranceMm: regulations[0]?.tolerances[name] ?? 0, compass: compassOf(instrument), locale, widthPx: DRAWING_WIDTH_PX, heightPx: 176, title, description: alt, yLabel: title });
  return { type: 'figure', scene, alt, caption: '' };
}

/** What was asked in bass, middle and treble; of the figure that follows, the sharps in brackets. */
function askedCell(name: RegulationName, { analysis: { asked } }: ProvedRegulation, input: ProofInput): Cell {
  const { say } = input;
  const colour = name === 'sharpHeightMm' ? 'sharp' : 'natural';
  const of = (register: RegulationOfRegister['register'], keys: RegulationOfRegister['colour']) => asked.find((one) => one.register === register && one.colour === keys);
  const figure = (one: RegulationOfRegister | undefined): string => (one?.figures[name] === undefined ? '–' : one.worked === name ? bare(one.figures[name], input, { decimals: 2 }) : asStated(one.figures[name], input));
  const words = (register: RegulationOfRegister['register']): string => {
    const own = of(register, colour);
    return own?.worked === name ? `${figure(own)} (${figure(of(register, 'sharp'))})` : figure(own);
  };
  const isAsked = asked.some(({ figures }) => figures[name] !== undefined);
  return isAsked ? cell(say('proof.regulation.askedBy', { bass: words('bass'), middle: words('middle'), treble: words('treble') })) : cell(say('proof.notStated'), 'quiet');
}

function countedCell(row: RegulationRow | undefined, input: ProofInput): Cell {
  const { say } = input;
  if (row === undefined) return cell('–', 'quiet');
  const { read, judged, inside, medianMm = Number.NaN } = row;
  const median = bare(medianMm, input, { decimals: 2 });
  return judged === 0 ? cell(say('proof.regulation.read', { read, median })) : cell(say('proof.regulation.cell', { inside, judged, median }), inside < judged ? 'plain' : 'strong');
}
