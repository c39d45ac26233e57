import { type Block, type TableBlock, asStated, bare, cell, dayOf } from '#report';
import { type WearRow, tuningVisitsOf } from '#workshop';
import type { SheetMaterial } from '../sheet.ts';
import { planOf } from './care-material.ts';

const VISITS_TOLD = 4;

/** The tunings to come, the parts that wear, and what an owner does and leaves. */
export function careBlocksOf(material: SheetMaterial): readonly Block[] {
  const { say } = material;
  const { plan, start, wear } = planOf(material);
  const days = tuningVisitsOf(start, VISITS_TOLD).map((day) => dayOf(day, material)).join(', ');
  return [
    { type: 'heading', level: 1, text: say('sheet.owner.care') },
    ...(plan === undefined ? [{ type: 'note', text: say('sheet.owner.noPlan') } as const] : [
      { type: 'heading', level: 2, text: say('sheet.owner.visits') } as const,
      { type: 'paragraph', size: 'body', text: say('sheet.owner.visits.days', { days, first: plan.visitsFirstYear, later: plan.visitsLater }) } as const,
    ]),
    ...(wear.length === 0 || plan === undefined ? [] : [
      { type: 'heading', level: 2, text: say('sheet.owner.wear') } as const, wearTable(wear, material),
      { type: 'paragraph', size: 'small', text: say('sheet.owner.wear.how', { hours: asStated(plan.hoursPerWeek, material) }) } as const,
    ]),
    { type: 'list', items: (['1', '2', '3', '4'] as const).map((number) => say(`sheet.owner.care.${number}`)) },
    ...(plan === undefined || plan.remark === '' ? [] : [{ type: 'heading', level: 2, text: say('sheet.owner.remark') } as const, { type: 'paragraph', size: 'body', text: plan.remark } as const]),
  ];
}

function wearTable(wear: readonly WearRow[], material: SheetMaterial): TableBlock {
  const { say } = material;
  const due = ({ dueFrom, dueTo }: WearRow): string => (dueFrom === undefined || dueTo === undefined ? say('sheet.owner.due.none') : say('sheet.owner.due.between', { from: dueFrom.slice(0, 4), to: dueTo.slice(0, 4) }));
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('sheet.owner.wear'),
    columns: ([['part', 3], ['since', 3], ['used', 2], ['due', 3]] as const).map(([name, width]) => ({ label: say(`sheet.owner.column.${name}`), align: 'start', width })),
    rows: wear.map((row) => [
      cell(say(`care.part.${row.life.part}`), 'strong'), cell(dayOf(row.since, material)),
      cell(say('sheet.owner.used', { least: bare(row.leastPct, material, { decimals: 0 }), most: bare(row.mostPct, material, { decimals: 0 }) }), row.mostPct >= 100 ? 'flag' : 'plain'), cell(due(row)),
    ]),
  };
}
