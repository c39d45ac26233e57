import { type CareOf, careOf, lastTunedOn, usualPlan, wearOf } from '#workshop';
import type { CareMaterial, SheetMaterial } from '../sheet.ts';

/** Nothing known of any of it. */
export const NO_CARE: CareMaterial = { cards: [], air: { hour: [], temperatureC: [], humidityPct: [] }, passes: [] };

/** The plan of care with the days its visits are counted from. */
export function planOf({ care = NO_CARE, tuning, printedAt }: SheetMaterial) {
  const plan = careOf(care.cards, 'plan').at(-1);
  const strungOn = plan?.strungOn ?? tuning?.strungOn ?? null;
  const today = printedAt.slice(0, 10);
  const start = { plan: plan ?? usualPlan, strungOn, lastTunedOn: plan?.lastTunedOn ?? lastTunedOn(care.passes), today };
  return { plan, start, wear: plan === undefined ? [] : wearOf(plan, strungOn, today) };
}

/** The move a sheet is for: the latest that was not called off. */
export function moveOf({ care = NO_CARE }: SheetMaterial): CareOf<'move'> | undefined {
  return careOf(care.cards, 'move').filter(({ status }) => status !== 'cancelled').toSorted((a, b) => a.on.localeCompare(b.on)).at(-1);
}
