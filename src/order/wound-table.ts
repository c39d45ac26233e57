import { compassOf, noteNameOf } from '#instrument';
import { type Cell, type TableBlock, bare, cell } from '#report';
import { windingFiguresOf } from '#strings';
import { type OrderDocumentInput, sizeWords } from './document-input.ts';
import type { OrderedNote, WoundWire } from './ordered-notes.ts';

const columns = [
  ['note', 'start', 1.2], ['number', 'end', 0.9], ['count', 'end', 1.2], ['core', 'start', 2.4], ['innerWrap', 'end', 1.3], ['outerWrap', 'end', 1.3], ['overall', 'end', 1.4],
  ['speaking', 'end', 1.8], ['wrapped', 'end', 3], ['bare', 'end', 2.4], ['steps', 'end', 2.4], ['total', 'end', 1.6],
] as const;

/** The wound strings of an order, one row for each note. */
export function woundTableOf(wound: readonly (OrderedNote & { readonly wire: WoundWire })[], input: OrderDocumentInput): TableBlock {
  const { say } = input;
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('order.wound'),
    columns: columns.map(([name, align, width]) => ({ label: say(`order.column.${name}`), align, width })),
    rows: wound.map((note) => rowOf(note, input)),
  };
}

function rowOf(note: OrderedNote & { readonly wire: WoundWire }, input: OrderDocumentInput): readonly Cell[] {
  const { say, instrument } = input;
  const { wire } = note;
  const open = cell(say('order.open'), 'flag');
  const size = (value: number | undefined): Cell => (value === undefined ? open : cell(sizeWords(value, input)));
  const length = (value: number | undefined): Cell => (value === undefined ? open : cell(bare(value, input)));
  const pair = (front: number | undefined, rear: number | undefined): Cell => (front === undefined || rear === undefined ? open : cell(`${bare(front, input)} / ${bare(rear, input)}`));
  const isDouble = 'wraps' in wire && wire.wraps.length > 1;
  const [outer, inner] = 'wraps' in wire ? wire.wraps.toReversed() : [];
  const winding = windingFiguresOf(wire);
  const none = cell('–', 'quiet');
  return [
    cell(noteNameOf(compassOf(instrument), note.key), 'strong'),
    cell(String(note.woundNumber ?? '')),
    note.strings === undefined ? open : cell(String(note.strings)),
    cell(`${sizeWords(wire.coreDiameterMm, input)} ${say(`order.shape.${wire.coreShape ?? 'round'}`)}`),
    isDouble ? size(inner?.wireDiameterMm) : 'wraps' in wire ? none : open,
    size(outer?.wireDiameterMm),
    winding.ok ? cell(bare(winding.value.overallDiameterMm, input, { decimals: 2 })) : open,
    note.speakingLengthMm === undefined ? open : cell(`${note.isLengthEstimated ? '~ ' : ''}${bare(note.speakingLengthMm, input)}`, note.isLengthEstimated ? 'flag' : 'plain'),
    note.coveredMm === undefined ? open : cell(note.coveredMm.map((covered) => bare(covered, input)).join(' / ')),
    pair(wire.bareFrontMm, wire.bareRearMm),
    isDouble ? pair(wire.stepFrontMm, wire.stepRearMm) : none,
    length(note.totalLengthMm),
  ];
}
