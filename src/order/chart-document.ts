import { compassOf, noteNameOf } from '#instrument';
import { type Block, type Cell, type ReportDocument, type TableBlock, asStated, buildReport, cell } from '#report';
import { languageOf } from '#text';
import { type OrderDocumentInput, demoNoteOf, furnitureOf, gapsBlockOf, sizeWords } from './document-input.ts';
import type { OrderedNote } from './ordered-notes.ts';
import type { GapName } from './string-order.ts';
import { gaugeOf } from './wire-to-buy.ts';

/** Keys to a page: two strips, read across the shop. */
const KEYS_ON_PAGE = 44;

/** Gaps that leave something open on the chart. */
const ON_CHART: readonly GapName[] = ['nothing', 'noWire', 'noCount', 'fault', 'noSuchString', 'fromFound'];

/** The stringing chart for the wall: of every unison its key, note, strings and wire or wound number, in large type. */
export function stringingChart(input: OrderDocumentInput): ReportDocument {
  const { say, instrument, order } = input;
  const title = say('chart.title', { name: instrument.name });
  const pages = Array.from({ length: Math.ceil(order.notes.length / KEYS_ON_PAGE) }, (_, page) => order.notes.slice(page * KEYS_ON_PAGE, (page + 1) * KEYS_ON_PAGE));
  return buildReport({
    title, subtitle: say('chart.subtitle', { state: say(`proof.state.${order.state}`) }), language: languageOf(input.locale), madeAt: input.printedAt, demo: instrument.demo, furniture: furnitureOf(input, title),
    blocks: [
      ...demoNoteOf(input),
      ...pages.flatMap((notes, page): readonly Block[] => [...(page === 0 ? [] : [{ type: 'pageBreak' } as const]), chartTableOf(notes, input)]),
      { type: 'caution', text: `${say('strings.caution.title')} ${say('strings.caution.text')}` },
      { type: 'paragraph', size: 'small', text: say('chart.how') },
      ...gapsBlockOf(input, ON_CHART),
    ],
  });
}

function chartTableOf(notes: readonly OrderedNote[], input: OrderDocumentInput): TableBlock {
  const { say, order } = input;
  const series = order.wireSeries === 'inch' || order.wireSeries === 'metric' ? order.wireSeries : undefined;
  const column = (name: 'key' | 'note' | 'strings' | 'wire', align: 'start' | 'end', width: number) => ({ label: say(`chart.column.${name}`), align, width });
  return {
    type: 'table', strips: 2, size: 'large', rowHeads: true, caption: say('chart.caption', { from: notes[0]?.key ?? 0, to: notes.at(-1)?.key ?? 0 }),
    columns: [column('key', 'end', 1.2), column('note', 'start', 1.7), column('strings', 'end', 1.3), column('wire', 'end', 3), ...(series === undefined ? [] : [{ label: say('order.column.gauge', { series }), align: 'end', width: 1.6 } as const])],
    rows: notes.map((note) => [
      cell(String(note.key)), cell(noteNameOf(compassOf(input.instrument), note.key), 'strong'),
      note.strings === undefined ? cell('–', 'quiet') : cell(String(note.strings)),
      wireCell(note, input),
      ...(series === undefined ? [] : [gaugeCell(note, input)]),
    ]),
  };
}

function wireCell({ wire, woundNumber }: OrderedNote, input: OrderDocumentInput): Cell {
  if (wire === undefined) return cell(input.say('order.open'), 'flag');
  return wire.kind === 'plain' ? cell(sizeWords(wire.diameterMm, input), 'strong') : cell(input.say('chart.wound', { number: woundNumber ?? 0 }), 'strong');
}

function gaugeCell({ wire }: OrderedNote, input: OrderDocumentInput): Cell {
  const gauge = wire?.kind === 'plain' ? gaugeOf(wire.diameterMm, input.order.wireSeries) : undefined;
  return gauge === undefined ? cell('–', 'quiet') : cell(asStated(gauge, input));
}
