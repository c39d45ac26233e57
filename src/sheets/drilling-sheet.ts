import type { Lead } from '#action';
import { compassOf } from '#instrument';
import { type ReportDocument, type TableBlock, asStated, bare, cell, noteRuns } from '#report';
import { type LeadPlan, type PlannedLeads, type PrintedTable, leadPlanOf } from '#workshop';
import { checkLine, densityOf, metalOf, stripPages, useOf } from './drilling-strips.ts';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** The leads noted as planned, one strip a key at 1 : 1 to lay on the key, with what is to be bought, drilled and plugged. */
export const drillingSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.drilling.title', { name: instrument.name }),
  nothing: (material) => (planOf(material).keys.length === 0 ? material.say('sheet.drilling.nothing') : undefined),
  document: documentOf,
  table: tableOf,
};

function planOf({ instrument, readings, cycle, action }: SheetMaterial): LeadPlan {
  return leadPlanOf({ instrument, readings, cycle, terms: action });
}

function documentOf(material: SheetMaterial): ReportDocument {
  const { say, instrument } = material;
  const plan = planOf(material);
  const compass = compassOf(instrument);
  const [changed, standing] = [plan.keys.filter(({ isChanged }) => isChanged), plan.keys.filter(({ isChanged }) => !isChanged)];
  return sheetDocument({ ...material, state: 'planned' }, {
    title: drillingSheet.title(material), subtitle: say('sheet.drilling.subtitle'), page: 'wide', facts: factsOf(plan, material),
    blocks: [
      { type: 'heading', level: 1, text: say('sheet.drilling.scale') },
      { type: 'caution', text: say('sheet.drilling.scaleHow') },
      checkLine(material),
      { type: 'heading', level: 1, text: say('sheet.drilling.care') },
      { type: 'caution', text: say('leads.caution') },
      { type: 'caution', text: say('leads.caution.key') },
      { type: 'paragraph', size: 'body', text: say('sheet.drilling.how') },
      ...(plan.areKeepOutsUsual ? [{ type: 'note', text: say('leads.assumed.keepOutsUsual') } as const] : []),
      { type: 'heading', level: 1, text: say('leads.buy') },
      sizesTable(plan.keys, material),
      ...(standing.length === 0 ? [] : [{ type: 'paragraph', size: 'body', text: say('sheet.drilling.standing', { notes: noteRuns(standing.map(({ key }) => key), compass) }) } as const]),
      ...stripPages(changed, compass, material),
    ],
  });
}

function factsOf({ keys, rules }: LeadPlan, material: SheetMaterial) {
  const { say } = material;
  const fact = (label: string, value: string) => ({ label, value: cell(value) });
  const newHoles = keys.reduce((sum, { leads }) => sum + leads.filter(({ hole }) => hole === 'new').length, 0);
  const plugs = keys.reduce((sum, key) => sum + key.plugs.length, 0);
  const trimmed = keys.reduce((sum, { leads }) => sum + leads.filter(({ isTrimmed }) => isTrimmed).length, 0);
  const exchanged = keys.reduce((sum, { leads }) => sum + leads.filter(({ isExchanged }) => isExchanged).length, 0);
  return [
    fact(say('sheet.drilling.keys'), say('sheet.drilling.keysOf', { count: keys.length, changed: keys.filter(({ isChanged }) => isChanged).length })),
    fact(say('sheet.drilling.holes'), say('sheet.drilling.holesOf', { holes: newHoles, plugs, trimmed, exchanged })),
    fact(say('actionTerms.field.leadGPerMm3'), densityOf(rules.leadDensityGPerMm3, material)),
    ...(rules.insert === undefined ? [] : [fact(say('actionTerms.field.insertMetal'), `${say(`actionTerms.insertMetal.${rules.insert.metal}`)}, ${densityOf(rules.insert.densityGPerMm3, material)}`)]),
  ];
}

/** By diameter and metal: leads in old and new holes, plugs, and the metal of all those leads. */
function sizesTable(keys: readonly PlannedLeads[], material: SheetMaterial): TableBlock {
  const { say } = material;
  const all = keys.flatMap(({ leads, plugs }): readonly Lead[] => [...leads, ...plugs]);
  const kinds = [...new Map(all.map((lead) => [`${String(lead.diameterMm)} ${String(lead.densityGPerMm3)}`, lead])).values()].sort((a, b) => a.diameterMm - b.diameterMm || (a.densityGPerMm3 ?? 0) - (b.densityGPerMm3 ?? 0));
  const column = (name: 'diameter' | 'refilled' | 'drilled' | 'plugged' | 'metal') => ({ label: say(`leads.column.${name}`), align: 'end', width: 1 } as const);
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('leads.buy'), columns: (['diameter', 'refilled', 'drilled', 'plugged', 'metal'] as const).map(column),
    rows: kinds.map((kind) => {
      const isKind = (lead: Lead): boolean => lead.diameterMm === kind.diameterMm && lead.densityGPerMm3 === kind.densityGPerMm3;
      const ofSize = keys.flatMap(({ leads, bed }) => leads.filter(isKind).map((lead) => ({ ...lead, metalG: bed === undefined ? undefined : metalOf(lead, bed) })));
      const metal = ofSize.some(({ metalG }) => metalG === undefined) ? undefined : ofSize.reduce((sum, { metalG = 0 }) => sum + metalG, 0);
      const count = (hole: 'existing' | 'new'): string => String(ofSize.filter((lead) => lead.hole === hole).length);
      const plugged = keys.reduce((sum, { plugs }) => sum + plugs.filter(isKind).length, 0);
      return [cell(`${asStated(kind.diameterMm, material)}\u00A0mm${kind.densityGPerMm3 === undefined ? '' : `, ${densityOf(kind.densityGPerMm3, material)}`}`, 'strong'), cell(count('existing')), cell(count('new')), cell(String(plugged)), metal === undefined ? cell(say('proof.notStated'), 'quiet') : cell(`${bare(metal, material, { decimals: 0 })}\u00A0g`)];
    }),
  };
}

/** One row a hole, in full precision. */
function tableOf(material: SheetMaterial): PrintedTable {
  return {
    header: ['key', 'use', 'positionMm', 'diameterMm', 'boreMm', 'densityGPerMm3', 'massG'],
    rows: planOf(material).keys.flatMap(({ key, leads, plugs, bed }) => [
      ...leads.map((lead) => [key, useOf(lead), lead.positionMm, lead.diameterMm, lead.boreMm ?? '', lead.densityGPerMm3 ?? '', bed === undefined ? '' : metalOf(lead, bed)]),
      ...plugs.map((lead) => [key, 'plug', lead.positionMm, lead.diameterMm, lead.boreMm ?? '', lead.densityGPerMm3 ?? '', '']),
    ]),
  };
}
