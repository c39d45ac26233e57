import { type ActionTerms, type Instrument, type Reading, type ScaleTerms, type State, type TouchIntent, type TuningTerms, type WeighingSession } from '#instrument';
import { type Block, type Furniture, type KeyValuesBlock, type ReportDocument, type Tongue, buildReport, cell, dayOf, statedOr } from '#report';
import { languageOf } from '#text';
import type { PrintedTable } from '#workshop';

/** What a bench sheet is made of. Clock and language come in from outside. */
export interface SheetMaterial extends Tongue {
  readonly instrument: Pick<Instrument, 'name' | 'maker' | 'serial' | 'kind' | 'firstMidi' | 'lastMidi' | 'a4Hz' | 'sections' | 'demo'>;
  /** Standing readings of the stay. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  /** The state whose keys are looked at. */
  readonly state: State;
  readonly action: ActionTerms | null;
  readonly scale: ScaleTerms | null;
  readonly tuning: TuningTerms | null;
  /** What is asked of the touch. */
  readonly intent: TouchIntent | null;
  readonly sessions: readonly WeighingSession[];
  readonly head: { readonly seq: number; readonly hash: string };
  /** Day of printing, ISO 8601. */
  readonly printedAt: string;
}

/** One kind of sheet. Adding one is a file, its words, and an entry in `sheets`. */
export interface Sheet {
  readonly title: (material: SheetMaterial) => string;
  /** Why there is nothing to put on the sheet; absent where there is. */
  readonly nothing: (material: SheetMaterial) => string | undefined;
  readonly document: (material: SheetMaterial) => ReportDocument;
  /** The same as a table in full precision. */
  readonly table: (material: SheetMaterial) => PrintedTable;
}

/** A sheet as a report: what stands in the margins, which piano and which keys, then its own blocks. */
export function sheetDocument(material: SheetMaterial, { title, subtitle, facts, blocks, page }: { readonly title: string; readonly subtitle: string; readonly facts: KeyValuesBlock['rows']; readonly blocks: readonly Block[]; readonly page?: 'wide' }): ReportDocument {
  const { say, locale, instrument, printedAt } = material;
  return buildReport({
    title, subtitle, language: languageOf(locale), madeAt: printedAt, demo: instrument.demo, furniture: furnitureOf(material, title), ...(page === undefined ? {} : { page }),
    blocks: [...(instrument.demo ? [{ type: 'caution', text: say('proof.demo.note') } as const] : []), { type: 'keyValues', rows: [...factsOf(material), ...facts] }, ...blocks],
  });
}

function furnitureOf({ say, head }: SheetMaterial, title: string): Furniture {
  return { runningHead: title, runningFoot: say('proof.foot.record', { seq: head.seq, hash: head.hash.slice(0, 12) }), demo: say('proof.demo'), pageOf: say('proof.pageOf') };
}

function factsOf(material: SheetMaterial): KeyValuesBlock['rows'] {
  const { say, instrument, state, cycle, head, printedAt } = material;
  return [
    { label: say('proof.fact.name'), value: cell(instrument.name, 'strong') },
    { label: say('proof.fact.maker'), value: statedOr(instrument.maker, material) },
    { label: say('proof.fact.serial'), value: statedOr(instrument.serial, material) },
    { label: say('sheet.fact.state'), value: cell(say('sheet.fact.stateOf', { state: say(`proof.state.${state}`), cycle })) },
    { label: say('proof.fact.printed'), value: cell(dayOf(printedAt, material)) },
    { label: say('proof.fact.record'), value: cell(say('sheet.record', { seq: head.seq, hash: head.hash.slice(0, 12) })) },
  ];
}
