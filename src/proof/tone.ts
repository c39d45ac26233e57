import { compassOf, noteNameOf } from '#instrument';
import { medianOf } from '#numerics';
import { tonePlot, throughGaps } from '#plot';
import { type Block, type Cell, type FigureBlock, type TableBlock, bare, cell, noteRuns, statedOr } from '#report';
import { type KeyChange, toneCompareOperation, toneEvennessOperation, toneOutliersOperation } from '#tone';
import { isComparable } from '#workshop';
import { DRAWING_WIDTH_PX } from './cover.ts';
import type { ProofInput, ProvedSound, ProvedTone } from './input.ts';

/** Sources of what is told of the sound. */
export const TONE_SOURCES = [toneEvennessOperation, toneOutliersOperation, toneCompareOperation].flatMap(({ sources }) => sources);

/** How the instrument sounds as found and as finished, compared only as it may be, and otherwise why not; on a page of its own. Nothing where no note was heard. */
export function toneOf(input: ProofInput): readonly Block[] {
  const { say, tone } = input;
  if (tone === undefined) return [];
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.tone') },
    { type: 'paragraph', size: 'body', text: say('proof.tone.how') },
    statesTable(tone, input),
    ...plotsOf(tone, input),
    ...comparisonOf(tone, input),
  ];
}

type Line = readonly [label: string, of: (state: ProvedSound) => Cell];

/** Microphone, keys heard, how even they are and what stands out, a column a state. */
function statesTable({ states }: ProvedTone, input: ProofInput): TableBlock {
  const { say } = input;
  const column = (label: string, width: number) => ({ label, align: 'start', width } as const);
  const stated = (field: 'place' | 'device') => ({ strikes, byKey }: ProvedSound): Cell => {
    const all = new Set([...byKey.values(), ...strikes].map(({ recording }) => recording[field]));
    return statedOr([...all].map((one) => (one === '' ? say('proof.notStated') : one)).join('; '), input);
  };
  const rows: readonly Line[] = [
    [say('recording.field.place'), stated('place')],
    [say('recording.field.device'), stated('device')],
    [say('proof.tone.heard'), ({ notes }) => cell(String(notes.length))],
    [say('proof.tone.brightness'), (state) => evenCell(state, 'brightness', input)],
    [say('proof.tone.sustain'), (state) => evenCell(state, 'sustain', input)],
    [say('proof.tone.others'), ({ standOuts: { others } }) => (others.length === 0 ? cell('–', 'quiet') : cell(othersWords(others, input)))],
  ];
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('proof.tone'), columns: [column(say('proof.tone'), 3), ...states.map(({ state }) => column(say(`proof.state.${state}`), 4))],
    rows: rows.map(([label, of]) => [cell(label), ...states.map(of)]),
  };
}

/** Scatter about the smooth curve, that of decay as a share, and the keys that stand out. */
function evenCell({ standOuts: { even } }: ProvedSound, property: 'brightness' | 'sustain', input: ProofInput): Cell {
  const found = even[property];
  if (found === undefined) return cell(input.say('proof.tone.few'), 'quiet');
  const scatter = property === 'sustain' ? `${bare(100 * Math.expm1(found.scatter), input, { decimals: 0 })}\u00A0%` : bare(found.scatter, input, { decimals: 2 });
  const words = input.say('proof.tone.scatter', { scatter });
  return cell(found.outliers.length === 0 ? words : `${words}; ${input.say('proof.tone.standOut', { notes: noteRuns(found.outliers, compassOf(input.instrument)) })}`);
}

const OTHERS = ['betweenPartialsDb', 'attackNoiseDb', 'beatDepthDb', 'unisonSpreadCents'] as const;

function othersWords(others: ProvedSound['standOuts']['others'], { say, instrument }: ProofInput): string {
  return OTHERS.flatMap((figure) => {
    const keys = others.filter((one) => one.figure === figure).map(({ key }) => key);
    return keys.length === 0 ? [] : [say(`proof.tone.other.${figure}`, { notes: noteRuns(keys, compassOf(instrument)) })];
  }).join('; ');
}

/** Decay of both states, and brightness where it may be laid over each other. */
function plotsOf({ states }: ProvedTone, input: ProofInput): readonly FigureBlock[] {
  const { say, instrument, locale } = input;
  const figures = states.length < 2 || isComparable(states) ? (['brightness', 'sustain'] as const) : (['sustain'] as const);
  return figures.filter((figure) => states.some(({ notes }) => notes.some(({ figures: own }) => own[figure] !== undefined))).map((figure): FigureBlock => {
    const title = say(`tone.figure.${figure}`);
    const plotted = states.map(({ state, notes }) => ({ state, label: say(`proof.state.${state}`), notes }));
    const alt = say('tone.plots.described', { what: title, states: plotted.map(({ label }) => label).join(', ') });
    const curve = states.at(-1)?.standOuts.even[figure]?.keys;
    const target = curve === undefined ? undefined : throughGaps(new Map(curve.map(({ key, curve: at }) => [key, at])));
    return { type: 'figure', alt, caption: '', scene: tonePlot({ figure, states: plotted, target, compass: compassOf(instrument), locale, widthPx: DRAWING_WIDTH_PX, heightPx: 175, title, description: alt, yLabel: title }) };
  });
}

/** What changed, as far as it may be said: on the partials both have, at levels both hold, by one microphone; or why it may not. */
function comparisonOf({ changes }: ProvedTone, input: ProofInput): readonly Block[] {
  const { say } = input;
  if (changes === undefined) return [{ type: 'note', text: say('proof.tone.oneState') }];
  const heading = { type: 'heading', level: 2, text: say('tone.compare') } as const;
  if (changes === 'moved') return [heading, { type: 'note', text: say('tone.compare.refused', { why: say('tone.compare.moved') }) }];
  const bright = changes.flatMap(({ change }) => change ?? []);
  const decays = changes.flatMap(({ decayRatio }) => decayRatio ?? []);
  const without = (reason: 'levels-apart' | 'few-partials'): number => changes.filter(({ refusals }) => refusals.some((one) => one.reason === reason)).length;
  const [apart, few] = [without('levels-apart'), without('few-partials')];
  return [
    heading,
    {
      type: 'list', items: [
        ...(bright.length === 0 ? [] : [say('tone.compare.brightness', { change: bare(medianOf(bright), input, { decimals: 2, signed: true }), count: bright.length })]),
        ...(decays.length === 0 ? [] : [say('tone.compare.decay', { ratio: bare(medianOf(decays), input, { decimals: 2 }), count: decays.length })]),
        ...(apart === 0 ? [] : [say('tone.compare.levels', { count: apart })]),
        ...(few === 0 ? [] : [say('proof.tone.fewPartials', { count: few })]),
        ...(changes.length === 0 ? [say('proof.tone.noneShared')] : []),
      ],
    },
    ...(bright.length + decays.length === 0 ? [] : [changesTable(changes, input)]),
  ];
}

/** Every key that could be compared: the partials both have, the level both hold, brightness of each state there and decay after over before. */
function changesTable(changes: readonly KeyChange[], input: ProofInput): TableBlock {
  const { say, instrument } = input;
  const title = say('proof.tone.changes');
  const number = (value: number | undefined, decimals: number, signed = false): Cell => (value === undefined ? cell('–', 'quiet') : cell(bare(value, input, { decimals, signed })));
  const columns = [['note', 'start', 1.3], ['partials', 'end', 1.6], ['level', 'end', 1.8], ['before', 'end', 1.8], ['after', 'end', 1.8], ['change', 'end', 2.6], ['decay', 'end', 1.6]] as const;
  return {
    type: 'table', strips: 2, rowHeads: true, caption: title, columns: columns.map(([name, align, width]) => ({ label: say(`proof.tone.column.${name}`), align, width })),
    rows: changes.filter(({ change, decayRatio }) => change !== undefined || decayRatio !== undefined).map(({ key, partials, atLevelDb, before, after, change, changeUncertainty, decayRatio }) => [
      cell(noteNameOf(compassOf(instrument), key), 'strong'), cell(String(partials.length)), number(atLevelDb, 0), number(before, 2), number(after, 2),
      changeUncertainty === undefined || change === undefined ? number(change, 2, true) : cell(`${bare(change, input, { decimals: 2, signed: true })}\u00A0±\u00A0${bare(2 * changeUncertainty, input, { decimals: 2 })}`),
      number(decayRatio, 2),
    ]),
  };
}
