import { type Observation, noteNameOf, compassOf } from '#instrument';
import { type Block, type Cell, type ReportDocument, type TableBlock, cell } from '#report';
import { type PrintedTable, type SurveyedPoint, surveyedOf, usualSurvey } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** A walk around the instrument on paper: what to look for at each part, what was noted before, and room to write. */
export const surveySheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.survey.title', { name: instrument.name }),
  nothing: () => undefined,
  document: documentOf,
  table: tableOf,
};

/** The points of the shop's template, or the usual ones, with what stands in this stay. */
function surveyedIn(material: SheetMaterial): readonly SurveyedPoint[] {
  return surveyedOf(material.survey ?? usualSurvey(material.instrument.kind, material.say), material.observations);
}

function documentOf(material: SheetMaterial): ReportDocument {
  const { say } = material;
  const surveyed = surveyedIn(material);
  const blocks: readonly Block[] = [
    { type: 'caution', text: say('sheet.survey.caution') },
    { type: 'paragraph', size: 'small', text: say('sheet.survey.how') },
    { type: 'heading', level: 1, text: say('sheet.survey.table') },
    pointTable(surveyed, material),
  ];
  const looked = surveyed.filter(({ seen }) => seen.length > 0).length;
  return sheetDocument(material, {
    title: surveySheet.title(material), subtitle: say('sheet.survey.subtitle'),
    facts: [{ label: say('sheet.survey.fact.looked'), value: cell(say('survey.looked', { looked, all: surveyed.length })) }, { label: say('sheet.survey.fact.by'), value: cell('') }],
    blocks,
  });
}

function pointTable(surveyed: readonly SurveyedPoint[], material: SheetMaterial): TableBlock {
  const { say } = material;
  const room = (label: string, width: number) => ({ label, align: 'start', width } as const);
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('sheet.survey.table'),
    columns: [room(say('observation.field.part'), 1.6), room(say('sheet.survey.column.ask'), 4), room(say('sheet.survey.column.seen'), 4), room(say('observation.field.severity'), 1.4), room(say('sheet.survey.column.job'), 2)],
    rows: surveyed.map(({ part, ask, seen }): readonly Cell[] => [
      cell(say(`observation.part.${part}`), 'strong'), cell(ask), cell(seen.map((one) => told(one, material)).join('; ')),
      cell([...new Set(seen.flatMap(({ severity }) => (severity === null ? [] : [say(`observation.severity.${severity}`)])))].join(', ')), cell(''),
    ]),
  };
}

/** `Crack, C4 to E4: beside the third rib` */
function told({ fault, fromKey, toKey, remark }: Observation, { say, instrument }: SheetMaterial): string {
  const note = (key: number): string => noteNameOf(compassOf(instrument), key);
  const where = fromKey === null ? '' : toKey === null || toKey === fromKey ? note(fromKey) : `${note(fromKey)}–${note(toKey)}`;
  return `${[say(`observation.fault.${fault}`), where].filter((part) => part !== '').join(', ')}${remark === '' ? '' : `: ${remark}`}`;
}

/** One row for each thing seen, and one for each point where nothing was. */
function tableOf(material: SheetMaterial): PrintedTable {
  const rows = surveyedIn(material).flatMap(({ part, ask, seen }) => (seen.length === 0 ? [[part, ask, '', '', '', '', '', '']]
    : seen.map(({ fault, severity, fromKey, toKey, lengthMm, remark }) => [part, ask, fault, severity ?? '', fromKey ?? '', toKey ?? '', lengthMm ?? '', remark])));
  return { header: ['part', 'ask', 'fault', 'severity', 'fromKey', 'toKey', 'lengthMm', 'remark'], rows };
}
