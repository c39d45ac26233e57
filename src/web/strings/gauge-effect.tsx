import { sizeBeside } from '#materials';
import { type AnalysedNote, type NoteQuestion, noteFiguresOf, questionOf } from '#strings';
import type { Millimetres } from '#units';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { decimalsFor } from '../story/say-event.ts';
import { seriesSizes } from './series.ts';

/** What physics says of a plain string: another gauge changes tension and inharmonicity, and hardly its share of breaking. With the figures that show it. */
export function GaugeEffect({ note, isOutside }: { readonly note: AnalysedNote; readonly isOutside: boolean }) {
  const say = useSay();
  const figure = useFigures();
  const { scale: terms } = usePiano();
  const question = questionOf(note, terms?.strengthModel ?? undefined);
  if (question?.wire.kind !== 'plain' || note.figures === undefined) return null;
  const sizes = seriesSizes(terms, terms?.wireSeries ?? 'metric', 'plain');
  const { diameterMm } = question.wire;
  const beside = ([-1, 1] as const).flatMap((direction) => sizeBeside(sizes, diameterMm, direction) ?? []);
  const line = (size: Millimetres) => {
    const { breakingPct, tensionN } = atSize(question, size);
    return (
      <tr key={size}>
        <th scope="row">{figure(size, decimalsFor(size, 3), 'mm')}{size === diameterMm && <span className="soft small"> {say('strings.gauge.now')}</span>}</th>
        <td><strong>{figure(breakingPct, 1, 'pct')}</strong></td>
        <td>{figure(tensionN, 0, 'N')}</td>
      </tr>
    );
  };
  const table = (
    <table className="figures-table">
      {question.certificateMPa !== undefined && <caption>{say('strings.gauge.byTable')}</caption>}
      <thead>
        <tr>
          <th scope="col">{say('strings.gauge.size')}</th>
          <th scope="col">{say('strings.figure.breaking')}</th>
          <th scope="col">{say('strings.figure.tension')}</th>
        </tr>
      </thead>
      <tbody>{[...beside, diameterMm].toSorted((a, b) => a - b).map(line)}</tbody>
    </table>
  );
  if (!isOutside) {
    return (
      <details>
        <summary>{say('strings.gauge.title')}</summary>
        <p className="small">{say('strings.gauge.why')}</p>
        {table}
      </details>
    );
  }
  return (
    <Note tone="warn">
      <p><strong><span aria-hidden="true">▲ </span>{say('strings.gauge.title')}</strong> {say('strings.gauge.why')} <strong>{say('strings.gauge.cure')}</strong></p>
      {table}
    </Note>
  );
}

/** The figures of the same note strung with another plain size, all by the table: a certificate speaks of its own wire only. */
function atSize({ certificateMPa: _, ...question }: NoteQuestion, diameterMm: Millimetres): { readonly breakingPct: number; readonly tensionN: number } {
  const result = noteFiguresOf({ ...question, wire: { kind: 'plain', diameterMm } });
  return result.ok ? result.value : { breakingPct: Number.NaN, tensionN: Number.NaN };
}
