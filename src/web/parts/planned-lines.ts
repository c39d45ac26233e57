import { compassOf } from '#instrument';
import { type PurchaseLine, hammerLinesOf, hasStrings, leadLinesOf, purchaseLinesOf, stringOrderOf } from '#order';
import type { Say } from '#text';
import { type CardOf, leadPlanOf, stayOf } from '#workshop';
import { pianoQuery, queryClient, readingsQuery } from '../api/queries.ts';
import { type LineForm, lineFormOf } from './purchase-form.ts';

/** Plans of a piano that lines of an order are taken from. */
export const planKinds = ['strings', 'hammers', 'leads'] as const;
export type PlanKind = (typeof planKinds)[number];

interface Taking {
  readonly stocks: readonly CardOf<'stock'>[];
  readonly locale: string;
  readonly say: Say;
}

/** Lines of what a piano is planned with; what the shop keeps in that size is told as that. */
export async function plannedLines(plan: PlanKind, pianoId: string, { stocks, locale, say }: Taking): Promise<readonly LineForm[]> {
  const file = await queryClient.query(pianoQuery(pianoId));
  const { instrument } = file;
  const { cycle } = instrument;
  const readings = await queryClient.query(readingsQuery(pianoId, cycle));
  const { scale, action } = stayOf(file, cycle);
  const linesOf: Readonly<Record<PlanKind, () => readonly PurchaseLine[]>> = {
    strings: () => {
      const order = stringOrderOf({ instrument, readings, cycle, state: 'planned', terms: scale, orderTerms: {} });
      return hasStrings(order) ? purchaseLinesOf(order, compassOf(instrument), say) : [];
    },
    hammers: () => hammerLinesOf(readings, cycle, compassOf(instrument), { say, locale, terms: action }),
    leads: () => leadLinesOf(leadPlanOf({ instrument, readings, cycle, terms: action }), { say, locale }),
  };
  return linesOf[plan]().map((line) => {
    const kept = stocks.find(({ what, sizeMm, unit }) => what === line.what && unit === line.unit && sizeMm !== null && line.sizeMm !== null && Math.abs(sizeMm - line.sizeMm) < 1e-3);
    return lineFormOf({ ...line, stock: kept?.id ?? null }, locale);
  });
}
