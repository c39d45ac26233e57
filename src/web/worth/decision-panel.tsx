import type { DecidedWay, Decision } from '#estimate';
import type { Estimate } from '#workshop';
import type { ReactNode } from 'react';
import { OpenFigure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { useMoney } from './use-worth.ts';
import { breakEvenStory, decisionStory } from './worth-stories.ts';

/** Rates above this are told as such: they say no more than that hardly anything was paid out first. */
const BEYOND_PCT = 1000;

/** What each way leaves: present value, by the bench hour, when the money is back, the sale that breaks even, and why not to go by a rate. */
export function DecisionPanel({ estimate, decision: { ways, ranking, irrDisagrees } }: { readonly estimate: Estimate; readonly decision: Decision }) {
  const say = useSay();
  const figure = useFigures();
  const money = useMoney(estimate.currency);
  const best = ways.find(({ alternative }) => alternative.id === ranking[0]);
  const orDash = (minor: number | null): string => (minor === null ? '–' : money(minor));
  const opened = (output: string, shown: (way: DecidedWay) => string) => (way: DecidedWay, title: string): ReactNode =>
    shown(way) === '–' ? '–' : <OpenFigure story={() => decisionStory(title, estimate, way, output)}>{shown(way)}</OpenFigure>;
  const rows: readonly (readonly [key: string, label: string, shown: (way: DecidedWay, title: string) => ReactNode])[] = [
    ['npv', say('worth.decision.npv'), opened('npvMinor', ({ npvMinor }) => money(npvMinor))],
    ['perHour', say('worth.decision.perHour'), opened('perBenchHourMinor', ({ perBenchHourMinor }) => orDash(perBenchHourMinor))],
    ['profit', say('worth.decision.profit'), opened('profitMinor', ({ profitMinor }) => money(profitMinor))],
    ['payback', say('worth.decision.payback'), opened('paybackMonth', ({ paybackMonth }) => (paybackMonth === null ? say('worth.decision.never') : figure(paybackMonth, 0)))],
    ['irr', say('worth.decision.irr'), opened('irrPct', ({ irrPct }) => (irrPct === null ? say('worth.decision.noIrr') : irrPct > BEYOND_PCT ? say('worth.decision.beyond', { rate: figure(BEYOND_PCT, 0) }) : figure(irrPct, 1, 'pct')))],
    ...(estimate.owner === 'shop' ? [
      ['breakEven', say('worth.decision.breakEven'), (way: DecidedWay, title: string) => (way.breakEvenMinor === null ? '–' : <OpenFigure story={() => breakEvenStory(title, estimate, way)}>{money(way.breakEvenMinor)}</OpenFigure>)] as const,
      ['sale', say('worth.decision.sale'), ({ alternative }: DecidedWay) => orDash(alternative.saleMinor)] as const,
    ] : []),
    ['month', say('worth.decision.month'), ({ alternative }) => figure(alternative.months, 0)],
  ];
  return (
    <section className="panel">
      <h2 id="worth-decision">{say('worth.decision')}</h2>
      {best !== undefined && ways.length > 1 && <p className="worth-best">{say('worth.decision.best', { best: best.alternative.words, npv: money(best.npvMinor), rate: figure(estimate.annualRatePct, 1) })}</p>}
      <ScrollTable label={say('worth.decision')} corner={say('worth.ways.row')} columns={ways.map(({ alternative }) => ({ key: alternative.id, head: alternative.words }))}>
        {rows.map(([key, label, shown]) => (
          <tr key={key}>
            <th scope="row">{label}</th>
            {ways.map((way) => <td key={way.alternative.id}>{shown(way, `${label}, ${way.alternative.words}`)}</td>)}
          </tr>
        ))}
      </ScrollTable>
      <p className="soft small">{say('worth.decision.flows')}</p>
      <Note tone={irrDisagrees ? 'warn' : 'plain'}><p>{say('worth.decision.irrNote')}{irrDisagrees && ` ${say('worth.decision.irrDisagrees')}`}</p></Note>
    </section>
  );
}
