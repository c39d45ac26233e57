import { floorLoadOf, restOfWarmingOf, unwrapAt, dewPointOf } from '#climate';
import { type Block, type KeyValuesBlock, type TableBlock, asStated, bare, cell, dayOf, statedOr } from '#report';
import { celsius, hours, percent } from '#units';
import { type CareOf, type PrintedTable, loanParts } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from '../sheet.ts';
import { moveOf } from './care-material.ts';

type Move = CareOf<'move'>;
type Rows = KeyValuesBlock['rows'];

/** The sheet that goes with a piano on its way: loads, the way, wrapping, the air on arrival, condition before and after with room to write. */
export const moveSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.move.title', { name: instrument.name }),
  nothing: (material) => (moveOf(material) === undefined ? material.say('sheet.move.nothing') : undefined),
  document: (material) => {
    const { say } = material;
    const move = mustMove(material);
    return sheetDocument(material, { title: moveSheet.title(material), subtitle: say('sheet.move.subtitle', { on: dayOf(move.on, material), from: placeOf(move.fromPlace, material), to: placeOf(move.toPlace, material) }), facts: [], isOfKeys: false, blocks: blocksOf(move, material) });
  },
  table: (material) => tableOf(mustMove(material)),
};

function mustMove(material: SheetMaterial): Move {
  const move = moveOf(material);
  if (move === undefined) throw new Error('a sheet of no move was asked for');
  return move;
}

const placeOf = (place: string, { say }: SheetMaterial): string => (place === '' ? say('proof.notStated') : place);

function blocksOf(move: Move, material: SheetMaterial): readonly Block[] {
  const { say } = material;
  const heading = (name: 'load' | 'way' | 'arrival' | 'condition'): Block => ({ type: 'heading', level: 1, text: say(`sheet.move.${name}`) });
  return [
    { type: 'caution', text: say('sheet.move.caution') },
    heading('way'), { type: 'keyValues', rows: wayOf(move, material) },
    heading('load'), ...loadBlocks(move, material), { type: 'caution', text: say('sheet.move.load.caution') },
    heading('arrival'), ...arrivalBlocks(move, material), { type: 'note', text: say('sheet.move.arrival.how') },
    heading('condition'), conditionTable(move, material),
    ...(move.remark === '' ? [] : [{ type: 'paragraph', size: 'body', text: move.remark } as const]),
  ];
}

function wayOf(move: Move, material: SheetMaterial): Rows {
  const { say } = material;
  const figure = (value: number | null, unit = ''): string | null => (value === null ? null : `${asStated(value, material)}${unit}`);
  const row = (name: 'from' | 'to' | 'storey' | 'steps' | 'narrowest', value: string | null) => ({ label: say(`sheet.move.way.${name}`), value: statedOr(value, material) });
  return [
    row('from', move.fromPlace), row('to', move.toPlace), row('storey', move.storey === null ? null : say(`care.storey.${move.storey}`)), row('steps', figure(move.steps)), row('narrowest', figure(move.narrowestMm, '\u00A0mm')),
    { label: say('sheet.move.wrap'), value: statedOr(move.wrap, material) }, { label: say('sheet.move.way.crew'), value: cell('') },
  ];
}

function loadBlocks(move: Move, material: SheetMaterial): readonly Block[] {
  const { say } = material;
  const { weightKg, areaM2, footMm } = move;
  if (weightKg === null || areaM2 === null) return [{ type: 'note', text: say('sheet.move.load.none') }];
  const load = floorLoadOf({ ...move, weightKg, areaM2, footMm: footMm ?? 1 });
  const kilonewtons = (newtons: number): string => `${bare(newtons / 1000, material, { decimals: 2 })}\u00A0kN`;
  return [{
    type: 'keyValues', rows: [
      { label: say('care.field.weightKg'), value: cell(`${asStated(weightKg, material)}\u00A0kg`) },
      { label: say('sheet.move.load.leg'), value: cell(kilonewtons(load.meanLegN)) },
      { label: say('sheet.move.load.heaviest', { share: asStated(move.heaviestPct, material) }), value: cell(kilonewtons(load.heaviestLegN)) },
      { label: say('sheet.move.load.spread', { area: asStated(areaM2, material) }), value: cell(`${bare(load.spreadKPa, material, { decimals: 2 })}\u00A0kN/m²`) },
      ...(footMm === null ? [] : [{ label: say('sheet.move.load.foot', { foot: asStated(footMm, material) }), value: cell(`${bare(load.footMPa, material, { decimals: 2 })}\u00A0N/mm²`) }]),
    ],
  }];
}

function arrivalBlocks({ arrival }: Move, material: SheetMaterial): readonly Block[] {
  const { say } = material;
  if (arrival === null) return [{ type: 'paragraph', size: 'body', text: say('sheet.move.arrival.none') }];
  const { temperatureC, humidityPct, surfaceC, laterC, betweenHours } = arrival;
  const air = { temperatureC: celsius(temperatureC), humidityPct: percent(humidityPct) };
  const [last, wanted] = [laterC ?? surfaceC, unwrapAt(air)];
  const wait = laterC === null || betweenHours === null ? undefined : restOfWarmingOf({ air, surfaceC: celsius(surfaceC), laterC: celsius(laterC), betweenHours: hours(betweenHours) });
  const degrees = (value: number): string => `${bare(value, material)}\u00A0°C`;
  const row = (name: 'air' | 'dew' | 'surface' | 'need' | 'wait', value: string) => ({ label: say(`sheet.move.arrival.${name}`), value: cell(value) });
  const rest = last >= wanted ? say('sheet.move.arrival.reached') : wait === undefined ? undefined : `${bare(wait, material, { decimals: 0 })}\u00A0h`;
  return [{ type: 'keyValues', rows: [
    row('air', `${degrees(temperatureC)}, ${asStated(humidityPct, material)}\u00A0%`), row('dew', degrees(dewPointOf(air))), row('surface', degrees(last)), row('need', degrees(wanted)), ...(rest === undefined ? [] : [row('wait', rest)]),
  ] }];
}

function conditionTable({ before, after }: Move, material: SheetMaterial): TableBlock {
  const { say } = material;
  const told = (side: Move['before'], part: (typeof loanParts)[number]) => {
    const point = side?.points.find((one) => one.part === part);
    return cell(point === undefined ? '' : [say(`shop.grade.${point.grade}`), point.words].filter((text) => text !== '').join(': '));
  };
  const onDay = (side: Move['before']) => cell(side === null ? '' : dayOf(side.on, material));
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('sheet.move.condition'),
    columns: [{ label: say('sheet.owner.column.part'), align: 'start', width: 2 }, { label: say('sheet.move.column.before'), align: 'start', width: 4 }, { label: say('sheet.move.column.after'), align: 'start', width: 4 }],
    rows: [[cell(say('sheet.move.condition.on')), onDay(before), onDay(after)], ...loanParts.map((part) => [cell(say(`shop.part.${part}`), 'strong'), told(before, part), told(after, part)]), [cell(say('sheet.move.signed')), cell(''), cell('')]],
  };
}

function tableOf({ before, after }: Move): PrintedTable {
  const of = (side: Move['before'], part: (typeof loanParts)[number]): readonly string[] => { const point = side?.points.find((one) => one.part === part); return [point?.grade ?? '', point?.words ?? '']; };
  return { header: ['part', 'before', 'beforeWords', 'after', 'afterWords'], rows: loanParts.map((part) => [part, ...of(before, part), ...of(after, part)]) };
}
