import { type RegulationAnalysis, type RegulationName, type RegulationOfRegister, analyseRegulation, orderOfWork } from '#action';
import { type KeyNumber, compassOf, noteNameOf } from '#instrument';
import { type Block, type Cell, type KeyValuesBlock, type ReportDocument, type TableBlock, asStated, bare, cell, noteRuns } from '#report';
import { type GatheredRegulation, type PrintedTable, regulationInputOf, sayOfSpread } from '#workshop';
import { uprightBlocksOf } from './upright-blocks.ts';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** What the sheet is drawn from, worked out once. */
interface Worked {
  readonly material: SheetMaterial;
  readonly gathered: GatheredRegulation;
  readonly analysis: RegulationAnalysis;
  /** Steps in the order of work; those of which nothing is asked or read are left out. */
  readonly steps: readonly RegulationName[];
}

/** An empty box to tick. */
const BOX = '\u2610';
/** Keys in one of the tables to tick. */
const KEYS_IN_TABLE = 44;

/** What to set, by register, in the order of work, with room to tick and note; and the keys to look at. */
export const regulationSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.regulation.title', { name: instrument.name }),
  nothing: (material) => (workedOf(material).steps.length === 0 && uprightBlocksOf(material).length === 0 ? material.say('sheet.regulation.nothing') : undefined),
  document: documentOf,
  table: tableOf,
};

function workedOf(material: SheetMaterial): Worked {
  const { instrument, readings, cycle, state, action } = material;
  const gathered = regulationInputOf({ instrument, readings, cycle, state, terms: action });
  const analysis = analyseRegulation(gathered.input);
  const order = orderOfWork(instrument.kind, gathered.input.floats);
  const steps = order.filter((name) => analysis.rows.some((row) => row.name === name) || analysis.asked.some(({ figures }) => figures[name] !== undefined));
  return { material, gathered, analysis, steps };
}

function documentOf(material: SheetMaterial): ReportDocument {
  const { say } = material;
  const worked = workedOf(material);
  return sheetDocument(material, {
    title: regulationSheet.title(material), subtitle: say('sheet.regulation.subtitle'), facts: factsOf(worked),
    blocks: [
      { type: 'heading', level: 1, text: say('sheet.regulation.steps') },
      { type: 'paragraph', size: 'small', text: say('sheet.regulation.before') },
      stepsTable(worked),
      { type: 'paragraph', size: 'small', text: say('sheet.regulation.how') },
      ...misfitsOf(worked), ...keysOf(worked), ...uprightBlocksOf(material), ...assumedOf(worked), ...ticksOf(worked),
    ],
  });
}

function factsOf({ material, gathered: { input: { floats, levers, stated }, spread } }: Worked): KeyValuesBlock['rows'] {
  const { say } = material;
  const unknown = cell(say('proof.notStated'), 'quiet');
  const ratios = [levers.natural, levers.sharp].map((one) => (one === undefined ? '–' : bare(one.distanceRatio, material, { decimals: 2 }))).join(' / ');
  const loss = levers.natural ?? levers.sharp;
  return [
    { label: say('sheet.regulation.floats'), value: Object.keys(stated).length === 0 ? unknown : cell(floats === undefined ? say('regulation.terms.none') : say(`actionTerms.regulationFloats.${floats}`)) },
    { label: say('sheet.regulation.ratio'), value: loss === undefined ? unknown : cell(ratios) },
    { label: say('sheet.regulation.loss'), value: loss === undefined ? unknown : cell(`${asStated(loss.lossMm, material)}\u00A0mm`) },
    ...(spread === undefined ? [] : [{ label: say('regulation.spread'), value: cell(sayOfSpread(say, spread, (value) => `${bare(value, material, { decimals: 1 })}\u00A0mm`)) }]),
  ];
}

const REGISTERS = ['bass', 'middle', 'treble'] as const;

/** One row a step, two where naturals and sharps differ; what was not asked is not filled in. */
function stepsTable({ material, gathered, analysis, steps }: Worked): TableBlock {
  const { say } = material;
  const column = (label: string, width: number, align: 'start' | 'end' = 'start') => ({ label, align, width });
  const rows = steps.flatMap((name, index) => coloursOf(name, analysis).map((colour): readonly Cell[] => {
    const what = say(`quantity.${name}.short`);
    const of = REGISTERS.map((register) => analysis.asked.find((one) => one.register === register && one.colour === (colour ?? 'natural')));
    return [
      cell(String(index + 1)), cell(colour === undefined ? what : say('sheet.regulation.ofColour', { what, colour: say(`colour.${colour}`) }), 'strong'), cell(byOf(name, material, gathered)),
      ...of.map((one) => figureOf(name, one, material)), cell(bare(gathered.input.tolerances[name], material, { decimals: 2 })), cell(BOX), cell(''),
    ];
  }));
  return {
    type: 'table', strips: 1, rowHeads: false, caption: say('sheet.regulation.steps'),
    columns: [
      column(say('sheet.column.step'), 1.1), column(say('sheet.column.set'), 3.1), column(say('sheet.column.by'), 3.2),
      ...REGISTERS.map((register) => column(say(`register.${register}`), 1.5, 'end')), column(say('sheet.column.tolerance'), 1.1, 'end'), column(say('sheet.column.done'), 1.1), column(say('sheet.column.note'), 3.6),
    ],
    rows,
  };
}

/** Naturals and sharps apart where what is asked of them differs; the height of the sharps stands with the sharps. */
function coloursOf(name: RegulationName, { asked }: RegulationAnalysis): readonly ('natural' | 'sharp' | undefined)[] {
  if (name === 'sharpHeightMm') return ['sharp'];
  return asked.some(({ worked }) => worked === name) ? ['natural', 'sharp'] : [undefined];
}

function figureOf(name: RegulationName, asked: RegulationOfRegister | undefined, material: SheetMaterial): Cell {
  const value = asked?.figures[name];
  if (value === undefined) return cell('–', 'quiet');
  return asked?.worked === name ? cell(bare(value, material, { decimals: 2 }), 'strong') : cell(asStated(value, material), 'strong');
}

function byOf(name: RegulationName, { say, instrument }: SheetMaterial, { input: { floats } }: GatheredRegulation): string {
  const isFollowing = floats !== undefined && name === `${floats}Mm`;
  return isFollowing ? say('sheet.regulation.follows') : say(`sheet.regulation.by.${name}`, { kind: instrument.kind, floats: floats ?? 'none' });
}

function misfitsOf({ material, analysis }: Worked): readonly Block[] {
  const { say } = material;
  const mm = (value: number, decimals: number): string => `${bare(value, material, { decimals })}\u00A0mm`;
  return analysis.asked.flatMap(({ register, colour, misfit }): readonly Block[] => (misfit === undefined ? [] : [{
    type: 'note',
    text: say('regulation.asked.misfit', { register: say(`register.${register}`), colour: say(`colour.${colour}`), given: mm(misfit.givenAftertouchMm, 2), dip: mm(misfit.dipMm, 2), blow: mm(misfit.blowMm, 1) }),
  }]));
}

/** Keys outside or uneven, one line a step; what blocks first. */
function keysOf({ material, analysis, steps }: Worked): readonly Block[] {
  const { say, instrument, state } = material;
  const compass = compassOf(instrument);
  const line = (what: string, keys: readonly KeyNumber[]): readonly string[] => (keys.length === 0 ? [] : [say('sheet.regulation.keysOf', { what, count: keys.length, notes: noteRuns(keys, compass) })]);
  const having = (holds: (finding: RegulationAnalysis['keys'][number]['findings'][number]) => boolean): readonly KeyNumber[] => analysis.keys.flatMap(({ key, findings }) => (findings.some(holds) ? [key] : []));
  const items = [
    ...line(say('sheet.regulation.stops'), having(({ code }) => code === 'blocks' || code === 'noEscape' || code === 'noDrop')),
    ...steps.flatMap((name) => (['high', 'low'] as const).flatMap((way) => line(say('regulation.finding.outside', { name, what: say(`quantity.${name}.short`), way }), having((one) => one.code === 'outside' && one.name === name && (one.figureMm > one.limitMm) === (way === 'high'))))),
    ...steps.flatMap((name) => line(say('regulation.finding.uneven', { what: say(`quantity.${name}.short`) }), having((one) => one.code === 'uneven' && one.name === name))),
    ...line(say('sheet.regulation.notGiven'), having(({ code }) => code === 'aftertouchNotGiven')),
    ...line(say('regulation.finding.aftertouchDiffers'), having(({ code }) => code === 'aftertouchDiffers')),
  ];
  const heading = { type: 'heading', level: 1, text: say('sheet.regulation.keys', { state: say(`proof.state.${state}`) }) } as const;
  if (items.length > 0) return [heading, { type: 'list', items }];
  return [heading, { type: 'paragraph', size: 'body', text: analysis.rows.length === 0 ? say('sheet.regulation.keysUnread') : say('sheet.regulation.keysNone') }];
}

function assumedOf({ material: { say }, gathered: { assumed } }: Worked): readonly Block[] {
  if (assumed.length === 0) return [];
  return [{ type: 'heading', level: 2, text: say('regulation.assumed') }, { type: 'list', items: assumed.map((what) => say(`regulation.assumed.${what}`)) }];
}

/** A box for each key and step, on a page of its own, with room for a note. */
function ticksOf({ material, analysis, steps }: Worked): readonly Block[] {
  const { say, instrument } = material;
  const compass = compassOf(instrument);
  const named = steps.map((name, index) => `${String(index + 1)}\u00A0${say(`quantity.${name}.short`)}`).join(', ');
  const tables = Array.from({ length: Math.ceil(analysis.keys.length / KEYS_IN_TABLE) }, (_, part) => analysis.keys.slice(part * KEYS_IN_TABLE, (part + 1) * KEYS_IN_TABLE));
  const columns = [
    { label: say('sheet.column.key'), align: 'end', width: 1.3 } as const, { label: '', align: 'start', width: 1.3 } as const,
    ...steps.map((_, index) => ({ label: String(index + 1), align: 'start', width: 0.9 } as const)), { label: say('sheet.column.note'), align: 'start', width: 2.6 } as const,
  ];
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('sheet.regulation.ticks') },
    { type: 'paragraph', size: 'small', text: say('sheet.regulation.ticksHow', { steps: named }) },
    ...tables.map((keys): TableBlock => ({
      type: 'table', strips: 2, rowHeads: true, caption: say('sheet.regulation.ticks'), columns,
      rows: keys.map(({ key, colour }) => [cell(String(key)), cell(noteNameOf(compass, key), 'strong'), ...steps.map((name) => cell(name === 'sharpHeightMm' && colour === 'natural' ? '' : BOX)), cell('')]),
    })),
  ];
}

/** One row for each step, register and colour of which something is asked, in full precision. */
function tableOf(material: SheetMaterial): PrintedTable {
  const { analysis, gathered, steps } = workedOf(material);
  return {
    header: ['step', 'quantity', 'register', 'colour', 'askedMm', 'toleranceMm', 'follows'],
    rows: steps.flatMap((name, index) => analysis.asked.flatMap(({ register, colour, figures, worked }) =>
      (figures[name] === undefined ? [] : [[index + 1, name, register, colour, figures[name], gathered.input.tolerances[name], worked === name ? 'yes' : 'no']]))),
  };
}
