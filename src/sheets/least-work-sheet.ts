import { type KeyPlan, type LeastWork, type NaivePlan, type StagePlan, type TouchAnalysis, analyseTouch, leastWork } from '#action';
import { type BenchOperation, type BenchSetUp, type KeyNumber, type TouchIntent, compassOf, noteNameOf } from '#instrument';
import { type Block, type Cell, type KeyValuesBlock, type ReportDocument, type TableBlock, asStated, bare, cell, noteRuns } from '#report';
import type { Result } from '#result';
import { explainIssue } from '#text';
import { type GatheredWork, type PrintedTable, leastWorkInputOf, partsNeeded, sayMinutes, sayParts, touchInputOf } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from './sheet.ts';

/** What the sheet is drawn from, worked out once. */
interface Worked {
  readonly material: SheetMaterial;
  readonly intent: TouchIntent;
  readonly touch: TouchAnalysis;
  readonly gathered: GatheredWork;
  readonly plan: LeastWork;
}

/** An empty box to tick. */
const BOX = '\u2610';

/** The least work by stage of the bench: key by key what to do, by how much, what to expect, with room for what is weighed then. */
export const leastWorkSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.leastWork.title', { name: instrument.name }),
  nothing: (material) => {
    const worked = workedOf(material);
    return typeof worked === 'string' ? worked : undefined;
  },
  document: (material) => documentOf(mustWork(material)),
  table: (material) => tableOf(mustWork(material)),
};

/** The plan, or why there is none. */
function workedOf(material: SheetMaterial): Worked | string {
  const { instrument, readings, cycle, intent, sessions, action: terms, say, locale } = material;
  if (intent === null) return say('sheet.leastWork.noIntent');
  const touch = analyseTouch(touchInputOf({ instrument, sessions, readings, cycle, state: 'found', intent }));
  const gathered = leastWorkInputOf({ instrument, readings, cycle, intent, terms, touch });
  if (gathered.problem === undefined) return say('sheet.leastWork.noMinutes');
  const result: Result<LeastWork> = leastWork(gathered.problem);
  const [issue] = result.ok ? [] : result.issues;
  return result.ok ? { material, intent, touch, gathered, plan: result.value } : say('sheet.leastWork.refused', { issue: issue === undefined ? '' : `${issue.path}: ${explainIssue(say, issue, locale)}` });
}

function mustWork(material: SheetMaterial): Worked {
  const worked = workedOf(material);
  if (typeof worked === 'string') throw new Error(worked);
  return worked;
}

function documentOf(worked: Worked): ReportDocument {
  const { material, plan } = worked;
  const { say } = material;
  return sheetDocument(material, {
    title: leastWorkSheet.title(material), subtitle: say('sheet.leastWork.subtitle'), facts: factsOf(worked),
    blocks: [
      ...(plan.stages.length === 0 ? [{ type: 'paragraph', size: 'body', text: say('sheet.leastWork.nothing') } as const] : [{ type: 'paragraph', size: 'small', text: say('sheet.leastWork.expectedHow') } as const]),
      ...setUpsOf(worked), ...plan.stages.flatMap((stage, index) => stageOf(worked, stage, index + 1)), ...partsOf(worked), ...outsideOf(worked), ...assumedOf(worked),
    ],
  });
}

function factsOf({ material, intent, plan }: Worked): KeyValuesBlock['rows'] {
  const { say } = material;
  const withParts = (minutes: number, minor: number): string => [sayMinutes(minutes, material), sayParts(minor, material.action, material.locale)].filter((one) => one !== undefined).join(' + ');
  const naive = ({ minutes, partsMinor, outside }: NaivePlan): Cell => cell(say('sheet.leastWork.naive', { time: withParts(minutes, partsMinor), outside: outside.length }));
  const target = `${say(`intent.${intent.even}`)}${intent.even === 'curve' ? '' : `: ${asStated(intent.targetG, material)}\u00A0g`}`;
  return [
    { label: say('sheet.leastWork.asked'), value: cell(`${target} ±\u00A0${asStated(intent.toleranceG, material)}\u00A0g${intent.upWeightMinG === 0 ? '' : `; ${say('intent.upWeightMin')} ${asStated(intent.upWeightMinG, material)}\u00A0g`}`) },
    { label: say('sheet.leastWork.time'), value: cell(withParts(plan.minutes, plan.partsMinor), 'strong') },
    { label: say('sheet.leastWork.keys'), value: cell(say('leastWork.answer.count', { planned: plan.planned, already: plan.already, out: plan.outOfReach.length })) },
    { label: say('sheet.leastWork.all'), value: naive(plan.replaceAll) },
    { label: say('sheet.leastWork.lead'), value: naive(plan.leadOnly) },
  ];
}

function setUpsOf({ material, plan: { setups } }: Worked): readonly Block[] {
  if (setups.length === 0) return [];
  const { say } = material;
  return [
    { type: 'heading', level: 1, text: say('sheet.leastWork.setUps', { time: sayMinutes(setups.reduce((sum, { minutes }) => sum + minutes, 0), material) }) },
    {
      type: 'table', strips: 1, rowHeads: false, caption: say('leastWork.stages.setUps'),
      columns: [{ label: say('sheet.column.done'), align: 'start', width: 1.2 }, { label: say('leastWork.stages.job'), align: 'start', width: 11 }, { label: say('leastWork.compare.time'), align: 'end', width: 3 }, { label: say('sheet.column.note'), align: 'start', width: 3 }],
      rows: setups.map(({ name, minutes }) => [cell(BOX), cell(say(`actionTerms.setUp.${name as BenchSetUp}`), 'strong'), cell(sayMinutes(minutes, material)), cell('')]),
    },
  ];
}

/** One row for each job at each key of a stage: like jobs together, bass to treble. */
function stageOf({ material, plan }: Worked, { changes, minutes, operations }: StagePlan, stage: number): readonly Block[] {
  const { say, instrument } = material;
  const compass = compassOf(instrument);
  const column = (label: string, width: number, align: 'start' | 'end' = 'start') => ({ label, align, width });
  const heading = say('sheet.leastWork.stage', { stage, name: say(`leastWork.stage.${changes}`), time: sayMinutes(minutes, material) });
  const table: TableBlock = {
    type: 'table', strips: 1, rowHeads: false, caption: heading,
    columns: [
      column(say('sheet.column.done'), 1.2), column(say('sheet.column.key'), 1, 'end'), column('', 1.2), column(say('sheet.leastWork.job'), 4.4), column(say('sheet.leastWork.by'), 1.6, 'end'),
      column(say('sheet.leastWork.expected'), 2.8, 'end'), column(say('sheet.leastWork.weighed'), 2.4), column(say('sheet.column.note'), 3),
    ],
    rows: operations.flatMap(({ operation, keys }) => keys.map((key): readonly Cell[] => {
      const own = planOf(plan, key);
      return [
        cell(BOX), cell(String(key)), cell(noteNameOf(compass, key), 'strong'), cell(say(`actionTerms.operation.${operation as BenchOperation}`)), cell(byOf(own, operation, material), 'strong'),
        cell(`${bare(own.after.downWeightG, material, { decimals: 1 })} / ${bare(own.after.upWeightG, material, { decimals: 1 })}`), cell(''), cell(''),
      ];
    })),
  };
  return [{ type: 'heading', level: 1, text: heading }, ...(changes === 'front' ? [{ type: 'caution', text: say('sheet.leastWork.lead.caution') } as const] : []), table];
}

function planOf({ keys }: LeastWork, key: KeyNumber): KeyPlan {
  const plan = keys.find((one) => one.key === key);
  if (plan === undefined) throw new Error(`no plan for key ${String(key)}`);
  return plan;
}

function byOf({ work }: KeyPlan, operation: string, material: SheetMaterial): string {
  const done = work.find((one) => one.operation === operation);
  if (done?.ratioChange !== undefined) return bare(done.ratioChange, material, { decimals: 2, signed: true });
  return bare(done?.changeG ?? 0, material, { decimals: 1, signed: true });
}

function partsOf({ material: { say, action, locale }, plan }: Worked): readonly Block[] {
  const items = partsNeeded(plan, say);
  if (items.length === 0) return [];
  const price = plan.partsMinor === 0 ? undefined : sayParts(plan.partsMinor, action, locale);
  return [{ type: 'heading', level: 1, text: say('leastWork.parts') }, { type: 'list', items: [...items, ...(price === undefined ? [] : [say('leastWork.parts.price', { price })])] }];
}

/** Keys that no work offered brings inside, and keys that do not enter. */
function outsideOf({ material, plan, gathered: { left } }: Worked): readonly Block[] {
  const { say, instrument } = material;
  const compass = compassOf(instrument);
  const items = [
    ...plan.keys.flatMap(({ key, outOfReach }) => (outOfReach === undefined ? [] : [say('sheet.leastWork.outKeys', { miss: `${bare(outOfReach.missG, material, { decimals: 1 })}\u00A0g`, note: noteNameOf(compass, key) })])),
    ...left.map(({ why, keys }) => `${noteRuns(keys, compass)}: ${say(`leastWork.left.${why}`)}`),
  ];
  return items.length === 0 ? [] : [{ type: 'heading', level: 1, text: say('leastWork.left') }, { type: 'list', items }];
}

function assumedOf({ material: { say, instrument, action }, gathered: { assumed, untimed, unpriced, problem } }: Worked): readonly Block[] {
  const compass = compassOf(instrument);
  return [{ type: 'heading', level: 2, text: say('leastWork.assumed') }, {
    type: 'list',
    items: [
      ...assumed.map(({ what, keys }) => `${say(`leastWork.assumed.${what}`)} (${keys.length === problem?.keys.length ? say('leastWork.assumed.all') : noteRuns(keys, compass)})`), say('leastWork.assumed.model'),
      ...(untimed.operations.length === 0 ? [] : [say('leastWork.untimed', { jobs: untimed.operations.map((name) => say(`actionTerms.operation.${name}`)).join(', ') })]),
      ...(action?.currency == null || unpriced.length === 0 ? [] : [say('leastWork.unpriced', { parts: unpriced.map((part) => say(`benchPart.${part}.one`)).join(', ') })]),
      ...(untimed.setUps.length === 0 ? [] : [say('leastWork.untimedSetUps', { setUps: untimed.setUps.map((name) => say(`actionTerms.setUp.${name}`)).join(', ') })]),
    ],
  }];
}

/** One row for each job at each key, in full precision. */
function tableOf({ plan }: Worked): PrintedTable {
  return {
    header: ['stage', 'operation', 'key', 'changeG', 'ratioChange', 'minutes', 'downWeightAfterG', 'upWeightAfterG', 'frictionAfterG', 'marginG'],
    rows: plan.stages.flatMap(({ changes, operations }) => operations.flatMap(({ operation, keys }) => keys.map((key) => {
      const { work, after, marginG } = planOf(plan, key);
      const done = work.find((one) => one.operation === operation);
      return [changes, operation, key, done?.changeG ?? '', done?.ratioChange ?? '', done?.minutes ?? '', after.downWeightG, after.upWeightG, after.frictionG, marginG];
    }))),
  };
}
