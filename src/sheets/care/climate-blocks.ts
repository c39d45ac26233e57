import { climatePlot } from '#plot';
import { type Block, type TableBlock, asStated, bare, cell, dayOf } from '#report';
import { type AirOutlook, airOutlookOf, dayOfHour, dailyMoistureOf, BOARD_LAG_DAYS } from '#workshop';
import type { SheetMaterial } from '../sheet.ts';
import { NO_CARE, planOf } from './care-material.ts';

const DRAWING_WIDTH_PX = 640;
const PANEL_PX = 76;

/** The air as logged, with its plot, and how to keep it; without a log the advice alone. */
export function climateBlocksOf(material: SheetMaterial): readonly Block[] {
  const { say, care = NO_CARE } = material;
  const { start: { plan } } = planOf(material);
  const outlook = airOutlookOf(care.air, plan);
  const band = bandOf(material);
  return [
    { type: 'heading', level: 1, text: say('sheet.owner.climate') },
    ...(outlook === undefined ? [{ type: 'note', text: say('sheet.owner.noAir') } as const] : airBlocks(outlook, material)),
    { type: 'list', items: (['1', '2', '3', '4', '5'] as const).map((number) => say(`sheet.owner.climate.${number}`, band)) },
  ];
}

/** The band asked, in the reader’s decimals. */
function bandOf(material: SheetMaterial): { readonly low: string; readonly high: string; readonly change: string } {
  const { start: { plan } } = planOf(material);
  return { low: asStated(plan.lowPct, material), high: asStated(plan.highPct, material), change: asStated(plan.dayChangePct, material) };
}

function airBlocks(outlook: AirOutlook, material: SheetMaterial): readonly Block[] {
  const { say, locale, care = NO_CARE } = material;
  const { fromHour, toHour, watch, usual: [low, high] } = outlook;
  const said = { from: dayOf(dayOfHour(fromHour), material), until: dayOf(dayOfHour(toHour), material), ...bandOf(material) };
  const { start: { plan } } = planOf(material);
  const moisture = dailyMoistureOf(care.air, BOARD_LAG_DAYS);
  const byDay = new Map(moisture.map(({ dayCount, moisturePct }) => [Math.floor(dayCount), moisturePct]));
  const scene = climatePlot({
    hours: care.air.hour, locale, widthPx: DRAWING_WIDTH_PX, panelPx: PANEL_PX, title: say('sheet.owner.plot'), description: say('sheet.owner.plot.alt', said),
    panels: [
      { label: say('care.figure.humidity'), unit: 'pct', values: care.air.humidityPct, band: { low: plan.lowPct, high: plan.highPct } },
      { label: say('care.figure.moisture'), unit: 'pct', values: care.air.hour.map((hour) => byDay.get(Math.floor(hour / 24)) ?? null) },
      ...(outlook.temperature === undefined ? [] : [{ label: say('care.figure.temperature'), unit: 'degC', values: care.air.temperatureC } as const]),
    ],
  });
  return [
    { type: 'paragraph', size: 'body', text: `${say('sheet.owner.span', { ...said, hours: watch.hours, dry: watch.dryHours, damp: watch.dampHours, fast: watch.fastHours })} ${say('sheet.owner.usual', { low: bare(low, material), high: bare(high, material) })}` },
    spreadTable(outlook, material),
    { type: 'figure', scene, alt: say('sheet.owner.plot.alt', said), caption: '' },
  ];
}

function spreadTable({ humidity, temperature, moisture }: AirOutlook, material: SheetMaterial): TableBlock {
  const { say } = material;
  const number = (value: number) => cell(bare(value, material));
  const row = (name: 'humidity' | 'temperature' | 'moisture', { least, mean, most }: { readonly least: number; readonly mean: number; readonly most: number }) => [cell(say(`sheet.owner.${name}`)), number(least), number(mean), number(most)];
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('sheet.owner.air'),
    columns: [{ label: say('sheet.owner.figure'), align: 'start', width: 4 }, ...(['least', 'mean', 'most'] as const).map((name) => ({ label: say(`sheet.owner.column.${name}`), align: 'end', width: 2 } as const))],
    rows: [row('humidity', humidity), ...(temperature === undefined ? [] : [row('temperature', temperature)]), row('moisture', moisture)],
  };
}
