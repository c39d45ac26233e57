import { type AnalysedBearing, type BearingFindingCode, type CountedLoad, bearingAnglesOperation, bearingGaugeOperation, bearingLoadOperation, bearingOperation } from '#belly';
import { type QuantityName, compassOf, quantitiesOf, quantityOf } from '#instrument';
import { type BearingFigure, bearingPlot } from '#plot';
import { type Block, type Cell, type TableBlock, asStated, bare, cell, noteRuns } from '#report';
import { unitSign } from '#units';
import { anglesOf } from './belly-angles.ts';
import { bearingTablesOf } from './belly-notes.ts';
import { sectionWords, stateColumns } from './belly-words.ts';
import { DRAWING_WIDTH_PX } from './cover.ts';
import type { ProofInput, ProvedBelly } from './input.ts';
import { COVERAGE } from './plots.ts';
import { sourceList } from './sources.ts';

/** Sources of what is told of bearing. */
const BEARING_SOURCES = [bearingOperation, bearingAnglesOperation, bearingGaugeOperation, bearingLoadOperation].flatMap(({ sources }) => sources);

/**
 * The bearing as found and as finished, as far as any was noted: force and share of tension by section and whole, front and rear
 * apart, climate and crown at the time, strings that lift and bearing that is lost, what was assumed, every note. Nothing where none was noted.
 */
export function bellyOf(input: ProofInput): readonly Block[] {
  const { say, bellies = [] } = input;
  if (bellies.length === 0) return [];
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.belly') },
    { type: 'paragraph', size: 'body', text: say('proof.belly.how') },
    loadsOf(bellies, input),
    { type: 'paragraph', size: 'small', text: say('belly.loads.about') },
    ...anglesOf(bellies, input),
    plotOf('total', bellies, input),
    climateOf(bellies, input),
    { type: 'paragraph', size: 'small', text: say('belly.climate.why') },
    { type: 'heading', level: 2, text: say('proof.belly.findings') },
    { type: 'list', items: bellies.flatMap((belly) => findingsOf(belly, input)) },
    plotOf('front', bellies, input),
    plotOf('rear', bellies, input),
    ...bellies.flatMap((belly) => assumedOf(belly, input)),
    { type: 'heading', level: 2, text: say('proof.sources') },
    sourceList(BEARING_SOURCES, say),
    { type: 'caution', text: `${say('belly.caution.title')} ${say('belly.caution.defer')}` },
    ...bearingTablesOf(bellies, input),
  ];
}

function loadsOf(bellies: readonly ProvedBelly[], input: ProofInput): TableBlock {
  const { say } = input;
  const sections = bellies[0]?.analysis.sections ?? [];
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('belly.loads'), columns: stateColumns(say('belly.loads'), bellies, input),
    rows: [
      ...sections.map((section, index) => [cell(sectionWords(section, input)), ...bellies.map(({ analysis }) => loadCell(analysis.sections[index], input))]),
      [cell(say('belly.loads.whole'), 'strong'), ...bellies.map(({ analysis }) => ({ ...loadCell(analysis.whole, input), tone: 'strong' } as const))],
    ],
  };
}

function loadCell(counted: CountedLoad | undefined, input: ProofInput): Cell {
  if (counted?.load === undefined) return cell('–', 'quiet');
  const { load: { forceN, loadPct, forceUncertaintyN }, counted: notes, of } = counted;
  const doubt = forceUncertaintyN === undefined ? '' : `\u00A0±\u00A0${bare(COVERAGE * forceUncertaintyN, input, { decimals: 0 })}`;
  return cell(`${bare(forceN, input, { decimals: 0 })}${doubt}\u00A0N (${input.say('belly.loads.share', { share: bare(loadPct, input, { decimals: 2 }), counted: notes, of })})`);
}

function plotOf(figure: BearingFigure, bellies: readonly ProvedBelly[], input: ProofInput): Block {
  const { say, instrument, locale } = input;
  const name = say(`belly.figure.${figure}`);
  const alt = say('belly.plots.described', { what: name, states: bellies.map(({ state }) => say(`proof.state.${state}`)).join(', ') });
  const plotted = bellies.map(({ state, analysis }) => ({ state, label: say(`proof.state.${state}`), belly: analysis }));
  const scene = bearingPlot({ figure, bellies: plotted, asked: bellies[0]?.asked ?? {}, compass: compassOf(instrument), locale, widthPx: DRAWING_WIDTH_PX, heightPx: 190, title: name, description: alt, yLabel: name });
  return { type: 'figure', scene, alt, caption: '' };
}

function climateOf(bellies: readonly ProvedBelly[], input: ProofInput): TableBlock {
  const { say } = input;
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('belly.climate'), columns: stateColumns(say('belly.climate'), bellies, input),
    rows: quantitiesOf('belly', 'instrument').map((quantity) => [cell(say(`quantity.${quantity}.name`)), ...bellies.map(({ state }) => climateCell(quantity, state, input))]),
  };
}

function climateCell(quantity: QuantityName, state: ProvedBelly['state'], input: ProofInput): Cell {
  const standing = input.readings?.find((reading) => reading.cycle === input.cycle && reading.state === state && reading.quantity === quantity);
  return standing?.value == null ? cell(input.say('proof.notStated'), 'quiet') : cell(`${asStated(standing.value, input)}\u00A0${unitSign[quantityOf(quantity).unit]}`);
}

/** What was found of one state, a line for each kind, its notes named; those within their own uncertainty apart. */
function findingsOf({ state, analysis, asked }: ProvedBelly, input: ProofInput): readonly string[] {
  const { say } = input;
  const name = say(`proof.state.${state}`);
  const told = (['bearingNegative', 'bearingLost', 'bearingHigh'] as const).flatMap((code) => kindOf(code, name, analysis.notes, input));
  const isAsked = asked.leastTotalDeg !== undefined;
  const lines = told.length === 0 ? [say(isAsked ? 'proof.belly.findings.none' : 'proof.belly.findings.noneLifts', { state: name })] : told;
  return isAsked ? lines : [...lines, say('proof.belly.notAsked', { state: name })];
}

function kindOf(code: Exclude<BearingFindingCode, 'bearingUneven'>, state: string, notes: readonly AnalysedBearing[], { say, instrument }: ProofInput): readonly string[] {
  const keysWith = (doubt: boolean): readonly number[] => notes.filter(({ findings }) => findings.some((one) => one.code === code) && findings.filter((one) => one.code === code).every((one) => (one.inDoubt === true) === doubt)).map(({ key }) => key);
  const all = notes.filter(({ findings }) => findings.some((one) => one.code === code)).map(({ key }) => key);
  if (all.length === 0) return [];
  const compass = compassOf(instrument);
  const doubtful = keysWith(true);
  const line = say(`proof.belly.${code}`, { state, notes: noteRuns(all, compass), count: all.length });
  return [doubtful.length === 0 ? line : `${line} ${say('proof.belly.inDoubt', { notes: noteRuns(doubtful, compass) })}`];
}

function assumedOf({ state, assumed }: ProvedBelly, { say, instrument }: ProofInput): readonly Block[] {
  if (assumed.length === 0) return [];
  return [
    { type: 'heading', level: 2, text: say('proof.strings.assumed', { state: say(`proof.state.${state}`) }) },
    { type: 'list', items: assumed.map(({ what, notes }) => `${say(`belly.assumed.${what}`)} ${noteRuns(notes, compassOf(instrument))}`) },
  ];
}
