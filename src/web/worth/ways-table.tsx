import { type DecidedWay, estimateSums } from '#estimate';
import type { Estimate } from '#workshop';
import type { ReactNode } from 'react';
import { OpenFigure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { useMoney } from './use-worth.ts';
import { hoursStory, sumStory } from './worth-stories.ts';

const QUANTILES = ['p50', 'p80', 'p90'] as const;

/** The ways beside each other: hours with their doubt, then the money from work to total. */
export function WaysTable({ estimate, ways }: { readonly estimate: Estimate; readonly ways: readonly DecidedWay[] }) {
  const say = useSay();
  const figure = useFigures();
  const money = useMoney(estimate.currency);
  const hours = (output: 'exactMeanH' | 'p50H' | 'p80H' | 'p90H') => (way: DecidedWay, title: string): ReactNode => {
    const [story, value] = [hoursStory(title, estimate, way, output), way.figures.hours?.[output]];
    return story === undefined || value === undefined ? '–' : <OpenFigure story={() => story}>{`${figure(value, 1)}\u00A0h`}</OpenFigure>;
  };
  const isShop = estimate.owner === 'shop';
  const rows: readonly (readonly [key: string, label: string, shown: (way: DecidedWay, title: string) => ReactNode])[] = [
    ['expected', say('worth.hours.expected'), hours('exactMeanH')],
    ...QUANTILES.map((quantile) => [quantile, say(`worth.hours.${quantile}`), hours(`${quantile}H`)] as const),
    ['lead', say('worth.lead'), ({ figures }) => (figures.longestLeadDays === null ? '–' : say('worth.days', { count: figures.longestLeadDays }))],
    ...estimateSums.flatMap((sum) => [
      ...(sum === 'taxMinor' && isShop ? [['instrument', say('worth.sum.instrument'), () => money(estimate.purchaseMinor ?? 0)] as const] : []),
      [sum, say(`worth.sum.${sum}`), (way: DecidedWay, title: string) => <OpenFigure story={() => sumStory(title, estimate, way, sum)}>{`${money(way.figures[sum])}${sum === 'contingencyMinor' && way.figures.contingencyH > 0 ? ` (${figure(way.figures.contingencyH, 2)}\u00A0h)` : ''}`}</OpenFigure>] as const,
    ]),
  ];
  return (
    <ScrollTable label={say('worth.ways')} corner={say('worth.ways.row')} columns={ways.map(({ alternative }) => ({ key: alternative.id, head: alternative.words }))}>
      {rows.map(([key, label, shown]) => (
        <tr key={key} className={SUMS.has(key) ? 'worth-sum' : undefined}>
          <th scope="row">{label}</th>
          {ways.map((way) => <td key={way.alternative.id}>{shown(way, `${label}, ${way.alternative.words}`)}</td>)}
        </tr>
      ))}
    </ScrollTable>
  );
}

const SUMS: ReadonlySet<string> = new Set(['costMinor', 'netMinor', 'totalMinor']);
