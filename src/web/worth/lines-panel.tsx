import type { DecidedWay, LearntHours } from '#estimate';
import type { Estimate, EstimateLine } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { LineForm } from './line-form.tsx';
import type { LineKind } from './line-draft.ts';
import { useMoney, useStateEstimate } from './use-worth.ts';

const KINDS = ['labour', 'part', 'outside'] as const;

interface LinesPanelProps {
  readonly estimate: Estimate;
  readonly ways: readonly DecidedWay[];
  readonly learnt: readonly LearntHours[];
}

type Open = { readonly kind: LineKind; readonly line?: EstimateLine };

/** The lines of the estimate: work by three points, parts, work of others, each with the ways it belongs to. */
export function LinesPanel({ estimate, ways, learnt }: LinesPanelProps) {
  const say = useSay();
  const { isCurrent } = usePiano();
  const [open, setOpen] = useState<Open>();
  const stating = useStateEstimate();
  const drop = (id: string): void => { stating.mutate({ estimate: { ...estimate, lines: estimate.lines.filter((line) => line.id !== id) } }); };
  return (
    <section className="panel">
      <h2 id="worth-lines">{say('worth.lines')}</h2>
      {estimate.lines.length === 0 ? <p>{say('worth.lines.none')}</p> : <LineTable estimate={estimate} ways={ways} isBusy={stating.isPending} onChange={(line) => { setOpen({ kind: line.kind, line }); }} onDrop={drop} />}
      {isCurrent && (
        <div className="row no-print">
          {KINDS.map((kind) => <button key={kind} type="button" className="button" onClick={() => { setOpen({ kind }); }}>{say(`worth.line.add.${kind}`)}</button>)}
        </div>
      )}
      {open !== undefined && isCurrent && <LineForm key={`${open.kind} ${open.line?.id ?? ''}`} estimate={estimate} {...open} learnt={learnt} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}

interface LineTableProps extends Omit<LinesPanelProps, 'learnt'> {
  readonly isBusy: boolean;
  readonly onChange: (line: EstimateLine) => void;
  readonly onDrop: (id: string) => void;
}

function LineTable({ estimate, ways, isBusy, onChange, onDrop }: LineTableProps) {
  const say = useSay();
  const figure = useFigures();
  const money = useMoney(estimate.currency);
  const { isCurrent } = usePiano();
  const costs = new Map(ways.flatMap(({ figures }) => figures.lines.map(({ line, costMinor }) => [line.id, costMinor] as const)));
  const much = (line: EstimateLine): string => {
    if (line.kind === 'labour') {
      const hours = say('worth.line.hours', { low: print(line.low), likely: print(line.likely), high: print(line.high) });
      return line.chancePct < 100 ? `${hours}, ${say('worth.line.chance', { pct: print(line.chancePct) })}` : hours;
    }
    const wait = line.leadDays === null ? [] : [say('worth.line.lead', { count: line.leadDays })];
    return [...(line.kind === 'part' && line.quantity !== 1 ? [say('worth.line.pieces', { quantity: print(line.quantity), price: money(line.priceMinor) })] : []), ...wait].join(', ');
  };
  const print = (value: number): string => figure(value, Number.isInteger(value) ? 0 : 2);
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap" tabIndex={0} role="region" aria-label={say('worth.lines')}>
      <table className="figures-table worth-lines">
        <thead>
          <tr>
            <th scope="col">{say('worth.line.column.what')}</th><th scope="col">{say('worth.line.column.much')}</th><th scope="col">{say('worth.line.column.amount', { currency: estimate.currency })}</th>
            <th scope="col">{say('worth.line.column.actual')}</th><th scope="col">{say('worth.line.ways')}</th>
            {isCurrent && <th scope="col" className="no-print"><span className="visually-hidden">{say('worth.line.change')}</span></th>}
          </tr>
        </thead>
        <tbody>
          {estimate.lines.map((line) => {
            const cost = costs.get(line.id);
            return (
              <tr key={line.id}>
                <th scope="row">{line.words}<div className="soft small">{say(`worth.line.kind.${line.kind}`)}{line.kind === 'labour' && line.operation !== '' && `: ${line.operation}`}{line.kind !== 'labour' && line.supplier !== '' && `: ${line.supplier}`}</div></th>
                <td>{much(line)}</td>
                <td>{cost === undefined ? '–' : money(cost)}</td>
                <td>{line.kind === 'labour' && line.actualH !== null ? `${print(line.actualH)}\u00A0h` : '–'}</td>
                <td>{estimate.alternatives.filter(({ id }) => line.ways.includes(id)).map(({ words }) => words).join(', ')}</td>
                {isCurrent && (
                  <td className="no-print">
                    <span className="worth-doings">
                      <button type="button" className="button button-quiet" aria-label={say('worth.line.change.of', { what: line.words })} onClick={() => { onChange(line); }}>{say('worth.line.change')}</button>
                      <button type="button" className="button button-quiet" aria-label={say('worth.line.drop.of', { what: line.words })} disabled={isBusy} onClick={() => { onDrop(line.id); }}>{say('worth.line.drop')}</button>
                    </span>
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
