import { type KeyNumber, type OctaveType, compassOf, noteNameOf } from '#instrument';
import { runOperation } from '#operation';
import { type Cell, type KeyValuesBlock, type ReportDocument, type TableBlock, asStated, bare, cell, noteRuns } from '#report';
import { explainIssue } from '#text';
import { beatOf, tuningCurveOperation, upperPartialOf } from '#tuning';
import { hertz } from '#units';
import { type GatheredTuning, type PrintedTable, stiffNoteOf, tuningInputOf } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** Keys in one of the tables: in two strips a whole keyboard fits a page of either paper. */
const KEYS_IN_TABLE = 88;

/** Where every note is to be: the targets of the tuning curve by key, with the octave to listen to and room to note what was found and left. */
export const tuningSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.tuning.title', { name: instrument.name }),
  nothing: (material) => {
    const worked = workedOf(material);
    return typeof worked === 'string' ? worked : undefined;
  },
  document: (material) => documentOf(mustWork(material)),
  table: (material) => tableOf(mustWork(material)),
};

/** One key of the sheet. */
interface Row {
  readonly key: KeyNumber;
  readonly offsetCt: number;
  readonly frequencyHz: number;
  readonly basis: string;
  /** The octave up from it and how it beats there, both notes on target; above nought where it is wide. */
  readonly octave?: { readonly type: OctaveType; readonly excessHz: number };
}

interface Worked {
  readonly material: SheetMaterial;
  readonly gathered: GatheredTuning;
  readonly rows: readonly Row[];
}

function workedOf(material: SheetMaterial): Worked | string {
  const { say, locale } = material;
  const gathered = tuningInputOf(material);
  const { input } = gathered;
  if (input === undefined) return say('sheet.tuning.nothing');
  const result = runOperation(tuningCurveOperation, input);
  if (!result.ok) return `${say('tuning.refused')} ${result.issues.map((issue) => explainIssue(say, issue, locale)).join(' ')}`;
  const { offsetsCents, frequenciesHz, octaves } = result.value;
  const placeOf = new Map(input.keys.map(({ key }, place) => [key, place]));
  const octaveFrom = (key: KeyNumber, place: number): Pick<Row, 'octave'> => {
    const heard = octaves.find(({ lowerKey }) => lowerKey === key);
    const above = heard === undefined ? undefined : placeOf.get(heard.upperKey);
    const [lower, upper] = [input.keys[place], above === undefined ? undefined : input.keys[above]];
    if (heard === undefined || lower === undefined || upper === undefined || above === undefined) return {};
    const excessHz = beatOf({ frequencyHz: hertz(frequenciesHz[place] ?? 0), string: stiffNoteOf(lower) }, { frequencyHz: hertz(frequenciesHz[above] ?? 0), string: stiffNoteOf(upper) }, upperPartialOf(heard.type));
    return excessHz === undefined ? {} : { octave: { type: heard.type, excessHz } };
  };
  const rows = input.keys.map(({ key }, place): Row => ({ key, offsetCt: offsetsCents[place] ?? 0, frequencyHz: frequenciesHz[place] ?? 0, basis: gathered.bases.get(key) ?? '', ...octaveFrom(key, place) }));
  return { material, gathered, rows };
}

function mustWork(material: SheetMaterial): Worked {
  const worked = workedOf(material);
  if (typeof worked === 'string') throw new Error(worked);
  return worked;
}

function documentOf({ material, gathered, rows }: Worked): ReportDocument {
  const { say, instrument } = material;
  const compass = compassOf(instrument);
  const tables = Array.from({ length: Math.ceil(rows.length / KEYS_IN_TABLE) }, (_, part) => rows.slice(part * KEYS_IN_TABLE, (part + 1) * KEYS_IN_TABLE));
  return sheetDocument(material, {
    title: tuningSheet.title(material), subtitle: say('sheet.tuning.subtitle'), facts: factsOf({ material, gathered, rows }),
    blocks: [
      { type: 'paragraph', size: 'small', text: say('sheet.tuning.how', { a4: hertzOf(material) }) },
      { type: 'paragraph', size: 'small', text: say('sheet.tuning.beats') },
      { type: 'list', items: [...gathered.assumed.map(({ what, notes }) => `${say(`tuning.assumed.${what}`, { weight: asStated(Number(gathered.input?.['smoothness'] ?? 0), material) })}${notes.length === 0 ? '' : ` ${noteRuns(notes, compass)}`}`), ...gathered.ofStrings.map(({ what, notes }) => `${say(`strings.assumed.${what}`, { a4: asStated(instrument.a4Hz, material) })} ${noteRuns(notes, compass)}`)] },
      ...tables.flatMap((keys) => [{ type: 'pageBreak' } as const, { type: 'heading', level: 1, text: say('sheet.tuning.table') } as const, targetTable(keys, material)]),
    ],
  });
}

const hertzOf = (material: SheetMaterial): string => `${asStated(material.instrument.a4Hz, material)}\u00A0Hz`;

function factsOf({ material, gathered, rows }: Worked): KeyValuesBlock['rows'] {
  const { say, tuning, instrument } = material;
  const compass = compassOf(instrument);
  const [temperament, root] = [tuning?.temperament ?? 'equal', tuning?.root ?? 'C'];
  const asked = (gathered.input?.['octaves'] ?? []) as readonly { readonly fromKey: number; readonly toKey: number; readonly type: string }[];
  const last = instrument.lastMidi - instrument.firstMidi + 1;
  return [
    { label: say('sheet.tuning.fact.a4'), value: cell(hertzOf(material)) },
    { label: say('sheet.tuning.fact.temperament'), value: cell(`${say(`tuning.temperament.${temperament}`)}${root === 'C' ? '' : ` (${root})`}`) },
    { label: say('sheet.tuning.fact.octaves'), value: cell(asked.map(({ fromKey, toKey, type }) => `${noteNameOf(compass, fromKey)}–${noteNameOf(compass, Math.min(toKey, last))}\u00A0${type}`).join(', ')) },
    { label: say('sheet.tuning.fact.basis'), value: cell(say('sheet.tuning.fact.basisOf', { measured: rows.filter(({ basis }) => basis === 'measured').length, count: rows.length })) },
  ];
}

function targetTable(keys: readonly Row[], material: SheetMaterial): TableBlock {
  const { say, instrument } = material;
  const compass = compassOf(instrument);
  const column = (label: string, width: number) => ({ label, align: 'end', width } as const);
  const room = (label: string) => ({ label, align: 'start', width: 1.9 } as const);
  return {
    type: 'table', strips: 2, rowHeads: true, caption: say('sheet.tuning.table'),
    columns: [
      column(say('sheet.column.key'), 1), { label: '', align: 'start', width: 1.2 }, column('ct', 1.3), column('Hz', 1.9), column(say('sheet.tuning.column.octave'), 1.3),
      column(say('sheet.tuning.column.beats'), 1.6), room(say('sheet.tuning.column.found')), room(say('sheet.tuning.column.left')),
    ],
    rows: keys.map(({ key, offsetCt, frequencyHz, octave }): readonly Cell[] => [
      cell(String(key)), cell(noteNameOf(compass, key), 'strong'), cell(bare(offsetCt, material, { signed: true, decimals: 1 }), 'strong'), cell(bare(frequencyHz, material, { decimals: 2 })),
      cell(octave?.type ?? ''), cell(octave === undefined ? '' : beatsOf(octave.excessHz, material)), cell(''), cell(''),
    ]),
  };
}

/** Beats to a tenth; what rounds to none is neither wide nor narrow. */
function beatsOf(excessHz: number, material: SheetMaterial): string {
  const beats = bare(Math.abs(excessHz), material, { decimals: 1 });
  return Math.abs(excessHz) < 0.05 ? beats : `${beats}\u00A0${material.say(excessHz > 0 ? 'sheet.tuning.wide' : 'sheet.tuning.narrow')}`;
}

/** One row a key, in full precision. */
function tableOf({ rows }: Worked): PrintedTable {
  return { header: ['key', 'offsetCents', 'frequencyHz', 'basis', 'octave', 'excessHz'], rows: rows.map(({ key, offsetCt, frequencyHz, basis, octave }) => [key, offsetCt, frequencyHz, basis, octave?.type ?? '', octave?.excessHz ?? '']) };
}
