import type { RecapRow, SlackRow } from '#belly';
import { type KeyNumber, noteNameOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { loadedStory, slackStory, uncutStory } from './recap-stories.ts';
import type { Recap } from './use-recap.ts';

interface RecapTableProps {
  readonly recap: Recap;
  readonly onKey: (key: KeyNumber) => void;
}

/** Note by note: the angle now and asked, where the bridge stands and is to stand, and how much to build up or plane off. */
export function RecapTable({ recap, onKey }: RecapTableProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const { notes, plan, spring } = recap;
  const isSlack = spring !== undefined;
  const heads = ['now', 'asked', 'stands', 'loaded', 'loadedChange', ...(isSlack ? (['slackNow', 'cutTo', 'change', 'uncut'] as const) : [])] as const;
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap recap-scroll" tabIndex={0} role="region" aria-label={say('belly.recap.table')}>
      <table className="figures-table">
        <caption className="visually-hidden">{say('belly.recap.table')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('belly.recap.note')}</th>
            {heads.map((head) => <th key={head} scope="col">{say(`belly.recap.${head}`)}</th>)}
          </tr>
        </thead>
        <tbody>
          {notes.map(({ key, isEstimated, note }, index) => {
            const row = plan.rows[index];
            const name = noteNameOf(compass, key);
            return row !== undefined && (
              <tr key={key}>
                <th scope="row"><button type="button" className="figure" onClick={() => { onKey(key); }}>{name}</button>{isEstimated && <span className="soft small"> ≈</span>}</th>
                <td>{figure(row.nowDeg, 2, 'deg')}</td>
                <td>{figure(note.targetTotalDeg, 2, 'deg')}</td>
                <td>{figure(row.loadedNowMm, 2)}</td>
                <td><Figure value={row.loadedMm} decimals={2} story={() => loadedStory(`${say('belly.recap.loaded')}, ${name}`, recap, index)} /><Doubt standard={row.loadedUncertaintyMm} /></td>
                <td><Change value={row.loadedChangeMm} standard={row.loadedChangeUncertaintyMm} /></td>
                {row.slack !== undefined && <SlackCells slack={row.slack} recap={recap} name={name} />}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function SlackCells({ slack, recap, name }: { readonly slack: SlackRow; readonly recap: Recap; readonly name: string }) {
  const say = useSay();
  const figure = useFigures();
  return (
    <>
      <td>{!slack.isMeasured && '≈ '}{figure(slack.nowMm, 2)}</td>
      <td><Figure value={slack.cutToMm} decimals={2} story={() => slackStory(`${say('belly.recap.cutTo')}, ${name}`, recap)} /><Doubt standard={slack.cutToUncertaintyMm} /></td>
      <td><strong><Change value={slack.changeMm} standard={slack.changeUncertaintyMm} /></strong></td>
      <td><Figure value={slack.uncutDeg} decimals={2} unit="deg" story={() => uncutStory(`${say('belly.recap.uncut')}, ${name}`, recap)} /></td>
    </>
  );
}

/** The expanded uncertainty beside a height; where it cannot be told, a sign that it is not known. */
function Doubt({ standard }: { readonly standard: number | undefined }) {
  const say = useSay();
  const figure = useFigures();
  return <span className="soft figure-doubt"> {standard === undefined ? say('belly.doubt.unknown') : `± ${figure(2 * standard, 2)}`}</span>;
}

/** A change with its sign in words: built up or planed off. */
function Change({ value, standard }: { readonly value: RecapRow['loadedChangeMm']; readonly standard: number | undefined }) {
  const say = useSay();
  const figure = useFigures();
  return (
    <>
      {figure(value, 2, 'mm', true)}<Doubt standard={standard} />
      <span className="soft small figure-doubt"> {say(value >= 0 ? 'belly.recap.up' : 'belly.recap.off')}</span>
    </>
  );
}
