import { sourceOf } from '#sources';
import { temperaments, temperedNotesOf } from '#tuning';
import { unitSign } from '#units';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useSay } from '../../language/use-say.ts';

/** The temperament chosen, note by note, with its source. */
export function TemperamentPanel() {
  const say = useSay();
  const { tuning } = usePiano();
  const [name, root] = [tuning?.temperament ?? 'equal', tuning?.root ?? 'C'];
  const columns = [['offsetCents', 'tuning.temperament.offset'], ['fifthCents', 'tuning.temperament.fifth'], ['thirdCents', 'tuning.temperament.third']] as const;
  return (
    <details className="panel">
      <summary><h2>{say('tuning.temperament.table')}: {say(`tuning.temperament.${name}`)}{root === 'C' ? '' : ` (${root})`}</h2></summary>
      <div className="table-wrap">
        <table className="figures-table">
          <caption className="visually-hidden">{say('tuning.temperament.table')}</caption>
          <thead><tr><th scope="col">{say('tuning.column.note')}</th>{columns.map(([field, label]) => <th key={field} scope="col">{say(label)} ({unitSign.ct})</th>)}</tr></thead>
          <tbody>
            {temperedNotesOf(name, root).map((note, index) => (
              <tr key={note.note}>
                <th scope="row">{note.note}</th>
                {columns.map(([field, label]) => <td key={field}><Figure value={note[field]} decimals={2} signed story={() => ({ title: `${say(label)}, ${note.note}`, operation: 'temperament', input: { temperament: name, root }, output: `notes[${String(index)}].${field}` })} /></td>)}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft small">{say('tuning.temperament.source', { source: sourceOf(temperaments[name].source).title })}</p>
    </details>
  );
}
