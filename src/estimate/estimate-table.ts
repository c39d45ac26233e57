import { type Money, decimalText } from '#money';
import { type Result, all, map } from '#result';
import type { Say } from '#text';
import type { Alternative, Estimate, PrintedTable } from '#workshop';
import { type EstimateFigures, type LineFigures, estimateFiguresOf } from './figures.ts';

/** The sums of an estimate in the order they are added up. */
export const estimateSums = ['labourMinor', 'partsMinor', 'outsideMinor', 'contingencyMinor', 'overheadMinor', 'costMinor', 'profitMinor', 'netMinor', 'taxMinor', 'totalMinor'] as const;

/** Every alternative of an estimate as one table: its lines, then its sums, each to the last unit. */
export function estimateTable(estimate: Estimate, say: Say): Result<PrintedTable> {
  return map(all(estimate.alternatives.map((way) => map(estimateFiguresOf(estimate, way), (figures) => ({ way, figures })))), (ways) => ({
    header: ['alternative', 'kind', 'words', 'expectedH', 'amountMinor', 'amount', 'currency'],
    rows: ways.flatMap(({ way, figures }) => rowsOf(way, figures, say)),
  }));
}

function rowsOf({ words: named }: Alternative, figures: EstimateFigures, say: Say): PrintedTable['rows'] {
  const { currency } = figures;
  const amount = (minor: number): readonly (string | number)[] => [minor, decimalText({ minor, currency } satisfies Money), currency];
  const lineRow = ({ line, expectedH, costMinor }: LineFigures): readonly (string | number)[] => [named, line.kind, line.words, line.kind === 'labour' ? expectedH : '', ...amount(costMinor)];
  return [
    ...figures.lines.map(lineRow),
    ...estimateSums.map((sum): readonly (string | number)[] => [named, sum.replace('Minor', ''), say(`worth.sum.${sum}`), sum === 'contingencyMinor' ? figures.contingencyH : '', ...amount(figures[sum])]),
  ];
}
