import { type Millimetres, millimetres } from '#units';
import { sizeBeside, wireSizesOf } from '#materials';
import { type AnalysedNote, type NoteQuestion, noteFiguresOf, questionOf } from '#strings';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { decimalsFor } from '../story/say-event.ts';
import { seriesSizes } from './series.ts';

/** What physics says of a plain string: another gauge changes tension and inharmonicity, and hardly its share of breaking. With the figures that show it. */
export function GaugeEffect({ note }: { readonly note: AnalysedNote }) {
  const say = useSay();
  const figure = useFigures();
  const { scale: terms } = usePiano();
  const question = questionOf(note, terms?.strengthModel ?? undefined);
  if (question?.wire.kind !== 'plain' || note.figures === undefined) return null;
  const sizes = terms === null ? wireSizesOf('metric').map(({ diameterMm }) => diameterMm) : seriesSizes(terms, terms.wireSeries ?? 'metric', 'plain');
  const { diameterMm } = question.wire;
  const beside = ([-1, 1] as const).flatMap((direction) => sizeBeside(sizes, diameterMm, direction) ?? []);
  const isOutside = note.verdict !== undefined && note.verdict.side !== 'within';
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
  return (
    <Note tone={isOutside ? 'warn' : 'plain'}>
      <p>{isOutside && <strong aria-hidden="true">▲ </strong>}<strong>{say('strings.gauge.title')}</strong> {say('strings.gauge.why')} {isOutside && say('strings.gauge.cure')}</p>
      <table className="figures-table">
        <thead>
          <tr>
            <th scope="col">{say('strings.gauge.size')}</th>
            <th scope="col">{say('strings.figure.breaking')}</th>
            <th scope="col">{say('strings.figure.tension')}</th>
          </tr>
        </thead>
        <tbody>{[...beside, diameterMm].toSorted((a, b) => a - b).map(line)}</tbody>
      </table>
    </Note>
  );
}

/** The figures of the same note strung with another plain size. A certificate speaks of its own wire only, so the table stands for the others. */
function atSize({ certificateMPa, ...question }: NoteQuestion, diameterMm: Millimetres): { readonly breakingPct: number; readonly tensionN: number } {
  const isSame = question.wire.kind === 'plain' && question.wire.diameterMm === diameterMm;
  const result = noteFiguresOf({ ...question, ...(isSame && certificateMPa !== undefined ? { certificateMPa } : {}), wire: { kind: 'plain', diameterMm: millimetres(diameterMm) } });
  return result.ok ? result.value : { breakingPct: Number.NaN, tensionN: Number.NaN };
}
