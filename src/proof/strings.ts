import { type State, compassOf, noteNameOf } from '#instrument';
import { medianOf } from '#numerics';
import { type Block, type Cell, type TableBlock, asStated, bare, cell, noteRuns, opening } from '#report';
import { type AnalysedNote, type Load, type NoteFigures, type ScaleWire, plainStringOperation, wireStrengthOperation, woundStringOperation } from '#strings';
import type { ProofInput, ProvedScale } from './input.ts';
import { COVERAGE } from './plots.ts';
import { sourceList } from './sources.ts';

/** Sources of what is told of strings. */
const STRING_SOURCES = [plainStringOperation, woundStringOperation, wireStrengthOperation].flatMap(({ sources }) => sources);

/**
 * The strings as found, planned and as finished, as far as any were noted: load by section and whole, every note, how sure the figures are
 * and what was assumed. Nothing where no string was noted.
 */
export function stringsOf(input: ProofInput): readonly Block[] {
  const { say, scales = [] } = input;
  if (scales.length === 0) return [];
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.strings') },
    { type: 'paragraph', size: 'body', text: say('proof.strings.how') },
    loadsOf(scales, input),
    ...(input.instrument.sections?.length === 0 ? [{ type: 'paragraph', size: 'small', text: say('strings.loads.noSections') } as const] : []),
    { type: 'heading', level: 2, text: say('proof.uncertainty') },
    { type: 'list', items: scales.map((scale) => doubtOf(scale, input)) },
    { type: 'paragraph', size: 'small', text: say('proof.strings.doubt', { coverage: COVERAGE }) },
    ...scales.flatMap((scale) => assumedOf(scale, input)),
    { type: 'heading', level: 2, text: say('proof.sources') },
    sourceList(STRING_SOURCES, say),
    { type: 'caution', text: `${say('strings.caution.title')} ${say('strings.caution.text')} ${say('strings.caution.plate')}` },
    ...scales.flatMap((scale) => notesOf(scale, input)),
  ];
}

function loadsOf(scales: readonly ProvedScale[], input: ProofInput): TableBlock {
  const { say, instrument } = input;
  const compass = compassOf(instrument);
  const load = ({ tensionN, counted, of }: Load): Cell => (counted === 0 ? cell('–', 'quiet') : cell(`${bare(tensionN / 1000, input)}\u00A0kN (${say('strings.loads.of', { counted, of })})`));
  const sections = scales[0]?.analysis.sections ?? [];
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('strings.loads'),
    columns: [{ label: say('strings.loads'), align: 'start', width: 3 }, ...scales.map(({ state }) => ({ label: say(`proof.state.${state}`), align: 'start', width: 3 } as const))],
    rows: [
      ...sections.map(({ name, firstKey, lastKey }, index) => [cell(`${name} ${noteNameOf(compass, firstKey)}–${noteNameOf(compass, lastKey)}`), ...scales.map(({ analysis }) => {
        const section = analysis.sections[index];
        return section === undefined ? cell('–', 'quiet') : load(section.load);
      })]),
      [cell(say('strings.loads.plate'), 'strong'), ...scales.map(({ analysis }) => ({ ...load(analysis.plate), tone: 'strong' } as const))],
    ],
  };
}

function doubtOf({ state, analysis }: ProvedScale, input: ProofInput): string {
  const { say } = input;
  const known = analysis.notes.flatMap(({ figures }) => (figures?.uncertainty === undefined ? [] : [{ ...figures, ...figures.uncertainty }]));
  const name = say(`proof.state.${state}`);
  if (known.length === 0) return say('proof.strings.doubtUnknown', { state: name });
  const share = (of: (figures: (typeof known)[number]) => number): string => bare(COVERAGE * 100 * medianOf(known.map(of)), input);
  return say('proof.strings.doubtKnown', {
    state: name, notes: known.length,
    tension: share((figures) => figures.tensionUncertaintyN / figures.tensionN), inharmonicity: share((figures) => figures.inharmonicityUncertainty / figures.inharmonicityB),
    breaking: bare(COVERAGE * medianOf(known.map(({ breakingUncertaintyPct }) => breakingUncertaintyPct)), input),
  });
}

function assumedOf({ state, assumed }: ProvedScale, input: ProofInput): readonly Block[] {
  const { say, instrument } = input;
  if (assumed.length === 0) return [];
  const a4 = asStated(instrument.a4Hz ?? 440, input);
  return [
    { type: 'heading', level: 2, text: say('proof.strings.assumed', { state: say(`proof.state.${state}`) }) },
    { type: 'list', items: assumed.map(({ what, notes }) => `${say(`strings.assumed.${what}`, { a4 })} ${noteRuns(notes, compassOf(instrument))}`) },
  ];
}

const columns = [['key', 'end', 1.6], ['note', 'start', 1.9], ['length', 'end', 2.9], ['count', 'end', 1.2], ['wire', 'end', 5.6], ['tension', 'end', 2.5], ['breaking', 'end', 2.2], ['inharmonicity', 'end', 2.7]] as const;

function notesOf({ state, analysis }: ProvedScale, input: ProofInput): readonly Block[] {
  const { say } = input;
  const title = say('proof.strings.table', { state: say(`proof.state.${state}`) });
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: title },
    { type: 'paragraph', size: 'small', text: say('proof.strings.tableHow') },
    {
      type: 'table', strips: 2, rowHeads: true, caption: title,
      columns: columns.map(([name, align, width]) => ({ label: name === 'key' || name === 'note' ? say(`proof.column.${name}`) : say(`proof.strings.column.${name}`), align, width })),
      rows: analysis.notes.map((note) => rowOf(note, state, input)),
    },
  ];
}

function rowOf({ key, speakingLengthMm, isLengthEstimated, strings, wire, figures }: AnalysedNote, state: State, input: ProofInput): readonly Cell[] {
  const none = cell('–', 'quiet');
  const figure = (name: 'tension' | 'breaking' | 'inharmonicity', output: string, of: (known: NoteFigures) => string): Cell =>
    (figures === undefined ? none : opening(cell(of(figures)), { of: 'string', state, output, what: input.say(`strings.figure.${name}`), key }));
  return [
    cell(String(key)), cell(noteNameOf(compassOf(input.instrument), key), 'strong'),
    speakingLengthMm === undefined ? none : cell(`${isLengthEstimated ? '~ ' : ''}${bare(speakingLengthMm, input)}`, isLengthEstimated ? 'quiet' : 'plain'),
    strings === undefined ? none : cell(String(strings)),
    wire === undefined ? none : cell(wireWords(wire, input)),
    figure('tension', 'tensionN', ({ tensionN }) => bare(tensionN, input, { decimals: 0 })), figure('breaking', 'breakingPct', ({ breakingPct }) => bare(breakingPct, input)),
    figure('inharmonicity', 'inharmonicityB', ({ inharmonicityB }) => bare(inharmonicityB * 1e6, input, { decimals: 0 })),
  ];
}

/** A wire by its sizes: core and wraps joined by plus signs, a wrap known over all alone by Ø. */
function wireWords(wire: ScaleWire, input: ProofInput): string {
  const size = (mm: number): string => asStated(Number(mm.toFixed(4)), input);
  if (wire.kind === 'plain') return size(wire.diameterMm);
  const core = `${size(wire.coreDiameterMm)}${wire.coreShape === 'hex' ? `\u00A0${input.say('order.shape.hex')}` : ''}`;
  return 'wraps' in wire ? [core, ...wire.wraps.map(({ wireDiameterMm }) => size(wireDiameterMm))].join('+') : `${core}, Ø\u00A0${size(wire.overallDiameterMm)}`;
}
