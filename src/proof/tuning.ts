import { type KeyNumber, compassOf, keysOf, noteNameOf } from '#instrument';
import { meanOf, medianOf } from '#numerics';
import { pitchPlot } from '#plot';
import { type Block, type Cell, type FigureBlock, asStated, bare, cell, noteRuns } from '#report';
import type { TunedState } from '#workshop';
import { DRAWING_WIDTH_PX } from './cover.ts';
import type { ProofInput, ProvedTuning } from './input.ts';

/** Pitch and unisons as found and as finished against the curve of the instrument's own strings, on a page of its own. Nothing where none was read. */
export function tuningOf(input: ProofInput): readonly Block[] {
  const { say, tuning, instrument } = input;
  if (tuning === undefined) return [];
  const { states, terms, assumed } = tuning;
  const compass = compassOf(instrument);
  const column = (label: string, width: number) => ({ label, align: 'start', width } as const);
  const rows = rowsOf(tuning, input).filter(([, of]) => states.some((state) => of(state) !== undefined));
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.tuning') },
    { type: 'paragraph', size: 'body', text: say('proof.tuning.how', { a4: `${asStated(instrument.a4Hz ?? 440, input)}\u00A0Hz`, temperament: say(`tuning.temperament.${terms?.temperament ?? 'equal'}`) }) },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.tuning'), columns: [column(say('proof.tuning'), 3), ...states.map(({ state }) => column(say(`proof.state.${state}`), 3))],
      rows: rows.map(([label, of]) => [cell(label), ...states.map((state): Cell => { const text = of(state); return text === undefined ? cell('–', 'quiet') : cell(text); })]),
    },
    ...(terms?.curveToleranceCt == null ? [{ type: 'note', text: say('tuning.notAsked') } as const] : []),
    ...(tuning.curve.size === 0 ? [] : [plotOf(tuning, input)]),
    { type: 'list', items: assumed.map(({ what, notes }) => `${say(`tuning.assumed.${what}`, { weight: asStated(tuning.smoothness, input) })}${notes.length === 0 ? '' : ` ${noteRuns(notes, compass)}`}`) },
  ];
}

type Line = readonly [label: string, of: (state: TunedState) => string | undefined];

function rowsOf({ terms }: ProvedTuning, input: ProofInput): readonly Line[] {
  const { say, instrument } = input;
  const cents = (value: number, signed = false): string => `${bare(value, input, { signed })}\u00A0ct`;
  const within = (values: readonly number[], most: number): string => say('proof.tuning.within', { inside: values.filter((value) => Math.abs(value) <= most).length, count: values.length, tolerance: `${asStated(most, input)}\u00A0ct` });
  const some = (values: readonly number[], tell: (values: readonly number[]) => string): string | undefined => (values.length === 0 ? undefined : tell(values));
  const [curve, unison] = [terms?.curveToleranceCt ?? null, terms?.unisonToleranceCt ?? null];
  const offOf = ({ off }: TunedState): readonly number[] => [...off.values()];
  const spreadOf = ({ unisons }: TunedState): readonly number[] => [...unisons.values()];
  return [
    [say('proof.tuning.read'), (state) => some(offOf(state), (values) => String(values.length))],
    [say('proof.tuning.mean'), (state) => some(offOf(state), (values) => cents(meanOf(values), true))],
    [say('proof.tuning.spread'), (state) => some(offOf(state), (values) => `± ${cents(medianOf(values.map((value) => Math.abs(value - meanOf(values)))))}`)],
    ...(curve === null ? [] : [[say('proof.tuning.inside'), (state) => some(offOf(state), (values) => within(values, curve))] satisfies Line]),
    [say('proof.tuning.unison'), (state) => some(spreadOf(state), (values) => cents(medianOf(values)))],
    [say('proof.tuning.widest'), (state) => { const widest = widestOf(state); return widest === undefined ? undefined : `${cents(widest[1])} (${noteNameOf(instrument, widest[0])})`; }],
    ...(unison === null ? [] : [[say('proof.tuning.unisonInside'), (state) => some(spreadOf(state), (values) => within(values, unison))] satisfies Line]),
  ];
}

function widestOf({ unisons }: TunedState): readonly [KeyNumber, number] | undefined {
  return [...unisons].reduce<readonly [KeyNumber, number] | undefined>((most, one) => (most === undefined || one[1] > most[1] ? one : most), undefined);
}

function plotOf({ curve, states, terms }: ProvedTuning, { say, instrument, locale }: ProofInput): FigureBlock {
  const compass = compassOf(instrument);
  const title = say('tuning.plot.pitch');
  const read = states.map(({ state, pitches }) => ({ state, label: say(`proof.state.${state}`), cents: new Map([...pitches].map(([key, { offsetCt }]) => [key, { value: offsetCt }] as const)) }));
  const alt = say('tuning.plot.pitch.described', { states: read.map(({ label }) => label).join(', ') });
  const scene = pitchPlot({ curve: keysOf(compass).map((key) => curve.get(key)), read, toleranceCt: terms?.curveToleranceCt ?? undefined, compass, locale, widthPx: DRAWING_WIDTH_PX, heightPx: 260, title, description: alt, yLabel: title });
  return { type: 'figure', scene, alt, caption: '' };
}
