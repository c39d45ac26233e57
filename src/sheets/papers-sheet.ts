import { papersAsked, toFindOf } from '#law';
import { type Block, type ReportDocument, type TableBlock, cell, dayOf, papersInFull, reasonRow, shipmentTitle } from '#report';
import { languageOf } from '#text';
import type { HeldPaper, PapersTold, PrintedTable } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** A checklist to take to the authority: what was noted, what the rules of the day say, and room to note each paper. */
export const papersSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.papers.title', { name: instrument.name }),
  nothing: ({ say, told }) => (told === undefined ? say('sheet.papers.nothing') : undefined),
  document: (material) => documentOf(material, mustTell(material)),
  table: (material) => tableOf(mustTell(material), material),
};

function mustTell({ told }: SheetMaterial): PapersTold {
  if (told === undefined) throw new Error('asked for a sheet of papers without any');
  return told;
}

function documentOf(material: SheetMaterial, told: PapersTold): ReportDocument {
  const { say } = material;
  const ticks = told.shipments.flatMap((shipment): readonly Block[] => {
    const rows: readonly Tick[] = [
      ...papersAsked(shipment.reasons).map((words) => ({ words: words[languageOf(material.locale)], held: shipment.inHand?.find(({ paper }) => paper === words.en) })),
      ...toFindOf(shipment.reasons, say).map((words) => ({ words, held: undefined })),
    ];
    return rows.length === 0 ? [] : [{ type: 'heading', level: 3, text: shipmentTitle(shipment, material) }, tickTable(shipmentTitle(shipment, material), rows, material)];
  });
  return sheetDocument(material, {
    title: papersSheet.title(material), subtitle: say('sheet.papers.subtitle'), facts: [],
    blocks: [{ type: 'heading', level: 1, text: say('proof.papers.title') }, ...papersInFull(told, material), ...(ticks.length === 0 ? [] : [{ type: 'heading', level: 2, text: say('sheet.papers.toTick') } as const, ...ticks])],
  });
}

/** One line to tick: a paper, with what of it is in hand already, or something to be found out. */
interface Tick {
  readonly words: string;
  readonly held: HeldPaper | undefined;
}

function tickTable(caption: string, rows: readonly Tick[], material: SheetMaterial): TableBlock {
  const { say } = material;
  const heldWords = ({ number, on }: HeldPaper): string => [number, on === null ? '' : dayOf(on, material)].filter((part) => part !== '').join(', ');
  return {
    type: 'table', strips: 1, rowHeads: false, caption,
    columns: [{ label: say('sheet.papers.column.done'), align: 'start', width: 1 }, { label: say('field.papers'), align: 'start', width: 6 }, { label: say('sheet.papers.column.number'), align: 'start', width: 5 }],
    rows: rows.map(({ words, held }) => [cell(held === undefined ? '☐' : '☒'), cell(words), cell(held === undefined ? '' : heldWords(held))]),
  };
}

/** One row for each reason of each shipment; of the materials, one where there is no shipment. */
function tableOf({ shipments, materials }: PapersTold, material: SheetMaterial): PrintedTable {
  const rows = shipments.flatMap(({ on, action, from, to, outcome, issued, reasons }) => reasons.map((reason) => {
    const [, , inShort, source] = reasonRow(reason, material);
    return [on, action, from, to, outcome, reason.outcome, reason.kind, reason.place, reason.material ?? '', reason.rule?.id ?? '', reason.missing.join(' '), inShort?.text ?? '', source?.text ?? '', issued];
  }));
  const bare = shipments.length > 0 ? [] : materials.map((one) => ['', '', '', '', '', '', '', '', one.material, '', '', one.where, one.evidence, '']);
  return { header: ['on', 'action', 'from', 'to', 'worst', 'outcome', 'kind', 'place', 'material', 'rule', 'missing', 'inShort', 'source', 'rulesIssued'], rows: [...rows, ...bare] };
}
