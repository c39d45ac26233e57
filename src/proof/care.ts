import { type Spread, climateWatchOperation, lifeUsedOperation } from '#climate';
import { type Block, type KeyValuesBlock, asStated, bare, cell, dayOf } from '#report';
import { type AirOutlook, airOutlookOf, careOf, dayOfHour, usualPlan } from '#workshop';
import type { ProofInput } from './input.ts';

/** Sources of what is told of climate and care. */
export const CARE_SOURCES = [...climateWatchOperation.sources, ...lifeUsedOperation.sources, 'FPL-190'];

/** The air beside the piano as logged, what was agreed for its care, and its moves. Nothing where none of it was noted. */
export function careBlocksOf(input: ProofInput): readonly Block[] {
  const { say, care } = input;
  if (care === undefined) return [];
  const plan = careOf(care.cards, 'plan').at(-1);
  const outlook = airOutlookOf(care.air, plan ?? usualPlan);
  const moves = careOf(care.cards, 'move').filter(({ status }) => status === 'done').toSorted((a, b) => a.on.localeCompare(b.on));
  const rows = [...(outlook === undefined ? [] : airRows(outlook, input)), ...(plan === undefined ? [] : planRows(plan, input))];
  if (rows.length + moves.length === 0) return [];
  const place = (name: string): string => (name === '' ? say('proof.notStated') : name);
  return [
    { type: 'heading', level: 1, text: say('proof.care') },
    { type: 'paragraph', size: 'body', text: say('proof.care.how') },
    ...(rows.length === 0 ? [] : [{ type: 'keyValues', rows } as const]),
    ...(moves.length === 0 ? [] : [{ type: 'heading', level: 2, text: say('proof.care.moves') } as const, { type: 'list', items: moves.map(({ on, fromPlace, toPlace }) => say('proof.care.move', { on: dayOf(on, input), from: place(fromPlace), to: place(toPlace) })) } as const]),
  ];
}

type Rows = KeyValuesBlock['rows'];

function airRows({ fromHour, toHour, humidity, temperature, moisture, watch }: AirOutlook, input: ProofInput): Rows {
  const { say } = input;
  const three = ({ least, mean, most }: Spread, unit: string): string => `${[least, mean, most].map((value) => bare(value, input)).join(' · ')}\u00A0${unit}`;
  const inside = (100 * (watch.hours - watch.dryHours - watch.dampHours)) / watch.hours;
  const row = (name: 'span' | 'hours' | 'humidity' | 'temperature' | 'moisture' | 'inside', value: string) => ({ label: say(`care.air.fact.${name}`), value: cell(value) });
  return [
    row('span', say('care.air.span', { from: dayOf(dayOfHour(fromHour), input), until: dayOf(dayOfHour(toHour), input) })), row('hours', String(watch.hours)), row('humidity', three(humidity, '%')),
    ...(temperature === undefined ? [] : [row('temperature', three(temperature, '°C'))]), row('moisture', `${bare(moisture.least, input)} – ${bare(moisture.most, input)}\u00A0%`), row('inside', `${bare(inside, input)}\u00A0%`),
  ];
}

function planRows(plan: Parameters<typeof airOutlookOf>[1] & { readonly visitsFirstYear: number; readonly visitsLater: number; readonly hoursPerWeek: number }, input: ProofInput): Rows {
  const { say } = input;
  const row = (name: 'visitsFirstYear' | 'visitsLater' | 'hoursPerWeek' | 'lowPct' | 'highPct' | 'dayChangePct', value: number) => ({ label: say(`care.plan.${name}`), value: cell(asStated(value, input)) });
  return [row('visitsFirstYear', plan.visitsFirstYear), row('visitsLater', plan.visitsLater), row('hoursPerWeek', plan.hoursPerWeek), row('lowPct', plan.lowPct), row('highPct', plan.highPct), row('dayChangePct', plan.dayChangePct)];
}
