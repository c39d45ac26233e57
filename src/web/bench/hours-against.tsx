import { bookedHoursOf, withActualHours } from '#estimate';
import type { BenchPiano, CardOf } from '#workshop';
import { call } from '../api/client.ts';
import { refreshPiano } from '../api/queries.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import { noteWritten } from '../undo/undo.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';

interface HoursAgainstProps {
  readonly piano: BenchPiano;
  readonly entries: readonly CardOf<'hours'>[];
  readonly onProblem: (problem: unknown) => void;
}

/** What the work on one piano took against its estimate, line by line; kept on a line once it is finished. */
export function HoursAgainst({ piano: { instrument: { id, name, cycle }, estimate }, entries, onProblem }: HoursAgainstProps) {
  const say = useSay();
  const figure = useFigures();
  const booked = bookedHoursOf(estimate, cycle, entries);
  if (booked.totalH === 0 && estimate === null) return null;
  const keep = (lineId: string, hours: number): void => {
    if (estimate === null) return;
    call('setEstimate', { params: { id, cycle: String(cycle) }, body: withActualHours(estimate, lineId, hours) })
      .then(() => noteWritten(id, `c${String(cycle)}`)).then(() => refreshPiano(id)).catch(onProblem);
  };
  const hours = (value: number): string => (value === 0 ? '–' : figure(value, 2));
  return (
    <details className="hours-against">
      <summary>{say('bench.against.piano', { piano: name, booked: figure(booked.totalH, 2) })}</summary>
      {estimate === null ? <p className="soft">{say('bench.against.none')}</p> : (
        <>
          <p className="soft small">{say('bench.against.how')}</p>
          <ScrollTable
            label={`${say('bench.against')}: ${name}`} corner={say('bench.against.line')}
            columns={(['points', 'expected', 'booked', 'actual'] as const).map((key) => ({ key, head: say(`bench.against.${key}`) }))}
          >
            {booked.lines.map(({ line, expectedH, bookedH }) => (
              <tr key={line.id}>
                <th scope="row">{line.words}</th>
                <td>{[line.low, line.likely, line.high].map((value) => figure(value, 1)).join(' – ')}</td>
                <td>{figure(expectedH, 1)}</td>
                <td>{hours(bookedH)}</td>
                <td>
                  {line.actualH !== null && figure(line.actualH, 2)}{' '}
                  {bookedH > 0 && line.actualH !== Math.round(bookedH * 100) / 100 && (
                    <button type="button" className="button" aria-label={say('bench.against.keepOf', { hours: figure(bookedH, 2), what: line.words })} onClick={() => { keep(line.id, bookedH); }}>{say('bench.against.keep')}</button>
                  )}
                </td>
              </tr>
            ))}
            {booked.begun.bookedH > 0 && <tr><th scope="row"><strong>{say('bench.against.begun')}</strong></th><td /><td>{figure(booked.begun.expectedH, 1)}</td><td>{hours(booked.begun.bookedH)}</td><td /></tr>}
            {booked.otherH > 0 && <tr><th scope="row">{say('bench.against.other')}</th><td /><td /><td>{hours(booked.otherH)}</td><td /></tr>}
          </ScrollTable>
        </>
      )}
    </details>
  );
}
