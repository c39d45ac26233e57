import type { ImportRow } from '#workshop';
import { useSay } from '../../language/use-say.ts';

const SIGNS: Readonly<Record<ImportRow['outcome'], string>> = { create: '＋', update: '↻', same: '=', refused: '✕', empty: '·' };

/** Rows of the file with what becomes of each; a refused one says why beneath it. */
export function ImportRows({ rows, headers }: { readonly rows: readonly ImportRow[]; readonly headers: readonly string[] }) {
  const say = useSay();
  return (
    // A region that scrolls must be reachable by keyboard.
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <div className="import-scroll" tabIndex={0} role="region" aria-label={say('readings.import.preview')}>
      <table className="import-table">
        <thead>
          <tr>
            <th scope="col">{say('readings.import.row')}</th>
            <th scope="col">{say('readings.import.what')}</th>
            {headers.map((header, index) => <th key={`${header} ${String(index)}`} scope="col">{header}</th>)}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ row, outcome, cells, problems }) => (
            <tr key={row} className={`import-${outcome}`}>
              <th scope="row">{row}</th>
              <td>
                <span aria-hidden="true">{SIGNS[outcome]} </span>{say(`readings.import.outcome.${outcome}`)}
                {problems.map((problem) => <span key={problem} className="import-problem" {...(outcome === 'refused' ? { tabIndex: -1 } : {})}>{problem}</span>)}
              </td>
              {headers.map((header, index) => <td key={`${header} ${String(index)}`}>{cells[index] ?? ''}</td>)}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
