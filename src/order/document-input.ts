import { type Compass, type Instrument, compassOf } from '#instrument';
import { type Block, type Furniture, type KeyValuesBlock, type Tongue, asStated, cell, dayOf, noteRuns, statedOr } from '#report';
import type { GapName, StringOrder } from './string-order.ts';

/** What the documents of an order are made of. Clock and language come in from outside. */
export interface OrderDocumentInput extends Tongue {
  readonly instrument: Pick<Instrument, 'name' | 'maker' | 'serial' | 'year' | 'firstMidi' | 'lastMidi' | 'a4Hz' | 'demo'>;
  readonly order: StringOrder;
  readonly cycle: number;
  readonly head: { readonly seq: number; readonly hash: string };
  /** Day of printing, ISO 8601. */
  readonly printedAt: string;
}

/** What stands in the margins. */
export function furnitureOf({ say, head }: OrderDocumentInput, title: string): Furniture {
  return { runningHead: title, runningFoot: say('proof.foot.record', { seq: head.seq, hash: head.hash.slice(0, 12) }), demo: say('proof.demo'), pageOf: say('proof.pageOf') };
}

/** That all of it is invented, where it is. */
export function demoNoteOf({ say, instrument }: OrderDocumentInput): readonly Block[] {
  return instrument.demo ? [{ type: 'caution', text: say('proof.demo.note') }] : [];
}

/** Which piano, which strings, when. */
export function factsOf(input: OrderDocumentInput): KeyValuesBlock {
  const { say, instrument, order, cycle, head, printedAt } = input;
  return {
    type: 'keyValues',
    rows: [
      { label: say('proof.fact.name'), value: cell(instrument.name, 'strong') },
      { label: say('proof.fact.maker'), value: statedOr(instrument.maker, input) },
      { label: say('proof.fact.serial'), value: statedOr(instrument.serial, input) },
      { label: say('order.fact.strings'), value: cell(say('order.fact.stringsOf', { state: say(`proof.state.${order.state}`), cycle })) },
      { label: say('order.fact.pitch'), value: cell(`A4 = ${asStated(instrument.a4Hz, input)}\u00A0Hz`) },
      { label: say('proof.fact.printed'), value: cell(dayOf(printedAt, input)) },
      { label: say('proof.fact.record'), value: cell(say('order.record', { seq: head.seq, hash: head.hash.slice(0, 12) })) },
    ],
  };
}

/** What is missing or was not measured, and at which notes, all of it or the kinds named; nothing where nothing is. */
export function gapsBlockOf(input: OrderDocumentInput, kinds?: readonly GapName[]): readonly Block[] {
  const { say, instrument, order } = input;
  const gaps = order.gaps.filter(({ what }) => kinds === undefined || kinds.includes(what));
  if (gaps.length === 0) return [];
  const compass: Compass = compassOf(instrument);
  return [
    { type: 'heading', level: 1, text: say('order.gaps') },
    { type: 'list', items: gaps.map(({ what, keys }) => say('order.gap', { text: say(`order.gap.${what}`), count: keys.length, notes: noteRuns(keys, compass) })) },
  ];
}

/** A diameter as it was stated, in millimetres without the unit. */
export function sizeWords(diameterMm: number, tongue: Tongue): string {
  return asStated(Number(diameterMm.toFixed(4)), tongue);
}
