import { type Block, type Cell, type KeyValuesBlock, type ReportDocument, type TableBlock, asStated, bare, buildReport, cell } from '#report';
import { languageOf } from '#text';
import { unitSign } from '#units';
import { type OrderDocumentInput, demoNoteOf, factsOf, furnitureOf, gapsBlockOf, sizeWords } from './document-input.ts';
import type { OrderedNote, WoundWire } from './ordered-notes.ts';
import { type OrderField, type OrderFieldName, orderFields, termOf } from './terms.ts';
import type { WireToBuy } from './wire-to-buy.ts';
import { woundTableOf } from './wound-table.ts';

/**
 * The order of the strings of a piano: what is open, the sheet for whoever winds the wound strings, the wire to buy by size with
 * its allowances, tolerances as stated, caution and record. What was not stated is said, never filled in.
 */
export function orderDocument(input: OrderDocumentInput): ReportDocument {
  const { say, instrument } = input;
  const title = say('order.title', { name: instrument.name });
  return buildReport({
    title, subtitle: subtitleOf(input), language: languageOf(input.locale), madeAt: input.printedAt, demo: instrument.demo, furniture: furnitureOf(input, title),
    blocks: [
      ...demoNoteOf(input), factsOf(input), ...gapsBlockOf(input),
      { type: 'heading', level: 1, text: say('order.care') },
      { type: 'note', text: say('order.care.check') },
      { type: 'caution', text: `${say('strings.caution.title')} ${say('strings.caution.text')}` },
      { type: 'caution', text: say('strings.caution.plate') },
      { type: 'heading', level: 1, text: say('order.allowances') },
      { type: 'keyValues', rows: ALLOWANCES.map((name) => termRow(name, input)) },
      { type: 'paragraph', size: 'small', text: say('order.allowances.how') },
      ...sheetOf(input), ...buyingOf(input),
    ],
  });
}

const ALLOWANCES = ['frontLengthMm', 'backLengthMm', 'pinTurns', 'pinDiameterMm', 'hitchMm', 'spareMm', 'wastePct'] as const satisfies readonly OrderFieldName[];

function subtitleOf({ say, order: { notes } }: OrderDocumentInput): string {
  const count = (kind: 'wound' | 'plain'): number => notes.filter(({ wire }) => wire?.kind === kind).reduce((sum, { strings }) => sum + (strings ?? 0), 0);
  return say('order.subtitle', { wound: count('wound'), plain: count('plain') });
}

function isWound(note: OrderedNote): note is OrderedNote & { readonly wire: WoundWire } {
  return note.wire?.kind === 'wound';
}

function sheetOf(input: OrderDocumentInput): readonly Block[] {
  const { say, order } = input;
  const wound = order.notes.filter(isWound);
  if (wound.length === 0) return [{ type: 'heading', level: 1, text: say('order.wound') }, { type: 'paragraph', size: 'body', text: say('order.wound.none') }];
  const strings = wound.reduce((sum, note) => sum + (note.strings ?? 0), 0);
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('order.wound') },
    { type: 'paragraph', size: 'small', text: say('order.wound.how') },
    woundTableOf(wound, input),
    {
      type: 'keyValues',
      rows: [
        { label: say('order.wound.count'), value: cell(say('order.wound.countOf', { strings, notes: wound.length }), 'strong') },
        { label: say('order.wound.coreMetal'), value: cell(say('strings.wire.metal.steel')) },
        { label: say('order.wound.wrapMetal'), value: order.gaps.some(({ what }) => what === 'wrapMetal') ? cell(say('proof.notStated'), 'quiet') : cell(say(`strings.wire.metal.${order.wrapMetal}`)) },
        ...(['coreToleranceMm', 'wrapToleranceMm', 'lengthToleranceMm'] as const).map((name) => termRow(name, input, '±\u00A0')),
      ],
    },
  ];
}

/** Plain wire first; cores and wraps apart, for those who wind their own. */
function buyingOf(input: OrderDocumentInput): readonly Block[] {
  const { say, order: { wire } } = input;
  const [plain, own] = [wire.filter(({ use }) => use === 'plain'), wire.filter(({ use }) => use !== 'plain')];
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('order.wire') },
    { type: 'paragraph', size: 'small', text: say('order.wire.how') },
    ...(wire.some(({ isAtLeast }) => isAtLeast) ? [{ type: 'note', text: say('order.wire.atLeast') } as const] : []),
    ...(plain.length === 0 ? [{ type: 'note', text: say('order.wire.none') } as const] : [wireTableOf(plain, say('order.wire'), input)]),
    ...(own.length === 0 ? [] : [{ type: 'heading', level: 2, text: say('order.wire.own') } as const, { type: 'paragraph', size: 'small', text: say('order.wire.ownHow') } as const, wireTableOf(own, say('order.wire.own'), input)]),
    { type: 'paragraph', size: 'small', text: say('order.wire.sources') },
  ];
}

function wireTableOf(lines: readonly WireToBuy[], caption: string, input: OrderDocumentInput): TableBlock {
  const { say, order } = input;
  const hasGauges = lines.some(({ gauge }) => gauge !== undefined);
  const column = (name: 'use' | 'size' | 'gauge' | 'strings' | 'speakingM' | 'beyondM' | 'endsM' | 'wasteM' | 'totalM' | 'mass', width: number) =>
    ({ label: name === 'gauge' ? say('order.column.gauge', { series: order.wireSeries ?? '' }) : say(`order.column.${name}`), align: name === 'use' ? 'start' : 'end', width } as const);
  return {
    type: 'table', strips: 1, rowHeads: false, caption,
    columns: [column('use', 3), column('size', 1.7), ...(hasGauges ? [column('gauge', 1.4)] : []), column('strings', 1.5), column('speakingM', 2), column('beyondM', 2), column('endsM', 2), column('wasteM', 1.8), column('totalM', 2.2), column('mass', 2)],
    rows: lines.map((line) => wireRow(line, hasGauges, input)),
  };
}

function wireRow(line: WireToBuy, hasGauges: boolean, input: OrderDocumentInput): readonly Cell[] {
  const { say, order } = input;
  const metres = (mm: number): string => bare(mm / 1000, input, { decimals: 2 });
  const none = cell('–', 'quiet');
  const least = line.isAtLeast ? '≥\u00A0' : '';
  const isWrap = line.use === 'wrap';
  return [
    cell(useWords(line, input)), cell(sizeWords(line.diameterMm, input), 'strong'),
    ...(hasGauges ? [line.gauge === undefined ? none : cell(asStated(line.gauge, input))] : []),
    cell(String(line.strings)), cell(metres(line.speakingMm)),
    isWrap ? none : line.isAtLeast && line.beyondMm === 0 ? cell(say('order.open'), 'flag') : cell(`${least}${metres(line.beyondMm)}`),
    isWrap ? none : cell(metres(line.endsMm)),
    termOf(order.terms, 'wastePct') === undefined ? none : cell(metres(line.wasteMm)),
    cell(`${least}${metres(line.totalMm)}`, 'strong'), cell(`${least}${bare(line.massG, input)}`),
  ];
}

function useWords({ use, shape }: WireToBuy, { say, order }: OrderDocumentInput): string {
  return use === 'wrap' ? say('order.use.wrap', { metal: say(`strings.wire.metal.${order.wrapMetal}`) }) : use === 'plain' ? say('order.use.plain') : say('order.use.core', { shape: say(`strings.wire.shape.${shape}`) });
}

/** A figure as stated, as usual where it was not, or that it was not stated. */
function termRow(name: OrderFieldName, input: OrderDocumentInput, before = ''): KeyValuesBlock['rows'][number] {
  const { say, order } = input;
  const label = say(`order.field.${name}`);
  const field: OrderField = orderFields[name];
  const value = termOf(order.terms, name);
  if (value === undefined) return { label, value: cell(say('proof.notStated'), 'quiet') };
  const sign = unitSign[field.unit];
  const words = `${before}${asStated(value, input)}${sign === '' ? '' : `\u00A0${sign}`}`;
  return { label, value: cell(order.terms[name] === undefined ? say('order.usual', { value: words }) : words) };
}
