import { TOTAL_TOLERANCE, type RescaleLimits } from './problem.ts';
import type { Row } from './row.ts';

/** Where the load of all strings together must lie, N. */
export interface LoadBand {
  readonly low: number;
  readonly high: number;
}

/** The band that the limits on the total leave: ± 0.1 % of a total to be held, up to a cap. @source OWN */
export function loadBandOf({ totalTensionN, maxTotalTensionN }: Pick<RescaleLimits, 'totalTensionN' | 'maxTotalTensionN'>): LoadBand {
  if (totalTensionN === undefined) return { low: -Infinity, high: maxTotalTensionN ?? Infinity };
  return { low: totalTensionN * (1 - TOTAL_TOLERANCE), high: Math.min(totalTensionN * (1 + TOTAL_TOLERANCE), maxTotalTensionN ?? Infinity) };
}

/** Whether a load lies in the band. */
export const isWithin = ({ low, high }: LoadBand, loadN: number): boolean => loadN >= low && loadN <= high;

/** The least and the greatest load of the rows from each on: what is still to come below and above. */
export function loadsToCome(rows: readonly Row[]): { readonly least: Float64Array; readonly most: Float64Array } {
  const [least, most] = [new Float64Array(rows.length + 1), new Float64Array(rows.length + 1)];
  for (let i = rows.length - 1; i >= 0; i -= 1) {
    const load = rows[i]?.load ?? new Float64Array(1);
    least[i] = (least[i + 1] ?? 0) + load.reduce((a, b) => Math.min(a, b), Infinity);
    most[i] = (most[i + 1] ?? 0) + load.reduce((a, b) => Math.max(a, b), -Infinity);
  }
  return { least, most };
}
