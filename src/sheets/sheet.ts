import { type ActionTerms, type Instrument, type Observation, type Reading, type ScaleTerms, type State, type TouchIntent, type TuningPass, type TuningTerms, type WeighingSession } from '#instrument';
import { type Block, type Furniture, type KeyValuesBlock, type ReportDocument, type Tongue, buildReport, cell, dayOf, statedOr } from '#report';
import { languageOf } from '#text';
import type { AirHours, CareCard, PapersTold, PrintedTable, RoomRecord, SurveyPoint } from '#workshop';

/** What is known of the air, the care and the moves of a piano. */
export interface CareMaterial {
  readonly cards: readonly CareCard[];
  readonly air: AirHours;
  readonly passes: readonly TuningPass[];
}

/** What a bench sheet is made of. Clock and language come in from outside. */
export interface SheetMaterial extends Tongue {
  readonly instrument: Pick<Instrument, 'name' | 'maker' | 'serial' | 'kind' | 'lengthMm' | 'firstMidi' | 'lastMidi' | 'a4Hz' | 'sections' | 'demo'>;
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
  /** What was seen by eye in the stay. */
  readonly observations: readonly Observation[];
  /** Points of the shop's own survey of this kind of instrument; left out, those that are usual. */
  readonly survey?: readonly SurveyPoint[] | undefined;
  /** What papers of the instrument hang on, held against the rules; left out where nothing was noted. */
  readonly told?: PapersTold | undefined;
  /** The air, the care and the moves; left out where a sheet does not speak of them. */
  readonly care?: CareMaterial | undefined;
  /** Rooms it stands in or may stand in; left out where a sheet does not speak of them. */
  readonly rooms?: readonly RoomRecord[] | undefined;
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
export function sheetDocument(material: SheetMaterial, { title, subtitle, facts, blocks, page, isOfKeys = true }: { readonly title: string; readonly subtitle: string; readonly facts: KeyValuesBlock['rows']; readonly blocks: readonly Block[]; readonly page?: 'wide'; readonly isOfKeys?: boolean }): ReportDocument {
  const { say, locale, instrument, printedAt } = material;
  return buildReport({
    title, subtitle, language: languageOf(locale), madeAt: printedAt, demo: instrument.demo, furniture: furnitureOf(material, title), ...(page === undefined ? {} : { page }),
    blocks: [...(instrument.demo ? [{ type: 'caution', text: say('proof.demo.note') } as const] : []), { type: 'keyValues', rows: [...factsOf(material, isOfKeys), ...facts] }, ...blocks],
  });
}

function furnitureOf({ say, head }: SheetMaterial, title: string): Furniture {
  return { runningHead: title, runningFoot: say('proof.foot.record', { seq: head.seq, hash: head.hash.slice(0, 12) }), demo: say('proof.demo'), pageOf: say('proof.pageOf') };
}

function factsOf(material: SheetMaterial, isOfKeys: boolean): KeyValuesBlock['rows'] {
  const { say, instrument, state, cycle, head, printedAt } = material;
  return [
    { label: say('proof.fact.name'), value: cell(instrument.name, 'strong') },
    { label: say('proof.fact.maker'), value: statedOr(instrument.maker, material) },
    { label: say('proof.fact.serial'), value: statedOr(instrument.serial, material) },
    ...(isOfKeys ? [{ label: say('sheet.fact.state'), value: cell(say('sheet.fact.stateOf', { state: say(`proof.state.${state}`), cycle })) }] : []),
    { label: say('proof.fact.printed'), value: cell(dayOf(printedAt, material)) },
    { label: say('proof.fact.record'), value: cell(say('sheet.record', { seq: head.seq, hash: head.hash.slice(0, 12) })) },
  ];
}
