import { compass88, compassOf } from '#instrument';
import { queryClient, pianoQuery, readingsQuery } from '../api/queries.ts';
import { useLocale, useMoments, useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { type Telling, sayPlace } from '../story/say-event.ts';
import type { Parcel, ParcelEntry } from './parcel.ts';
import { placeKeyOf } from './parcel.ts';
import { StandingNow } from './standing-now.tsx';
import { outbox } from './the-outbox.ts';

const SHOWN = 12;

/** One step on its way: its figures, how it stands, and for one that was not taken the choice. */
export function ParcelRow({ parcel }: { readonly parcel: Parcel }) {
  const say = useSay();
  const locale = useLocale();
  const moment = useMoments();
  const file = queryClient.getQueryData(pianoQuery(parcel.pianoId).queryKey);
  const telling: Telling = { say, locale, compass: file === undefined ? compass88 : compassOf(file.instrument) };
  const { entries, status, problem } = parcel;
  const isStuck = status === 'conflict' || status === 'refused';
  return (
    <li className={`parcel parcel-${status}`}>
      <div>
        <strong>{say(`shell.outbox.status.${status}`)}</strong> <span className="soft small">{[file?.instrument.name, moment(new Date(parcel.typedAt).toISOString())].filter(Boolean).join(' · ')}</span>
      </div>
      <ul className="parcel-entries">
        {entries.slice(0, SHOWN).map((entry) => (
          <li key={placeKeyOf(parcel, entry)}>
            {sayPlace(placeKeyOf(parcel, entry), telling)}: <strong>{sayEntry(entry, telling)}</strong>
          </li>
        ))}
        {entries.length > SHOWN && <li>{say('shell.outbox.more', { count: entries.length - SHOWN })}</li>}
      </ul>
      {status === 'conflict' && <StandingNow parcel={parcel} telling={telling} />}
      {status === 'refused' && (problem === undefined || problem.errors.length === 0 ? <p>{problem?.message}</p> : <IssueList issues={problem.errors} />)}
      {status !== 'sending' && (
        <div className="row">
          {status === 'conflict' && (
            <button type="button" className="button" onClick={() => { outbox.writeOver(parcel.sendId); }}>
              {say('shell.outbox.mine')}
            </button>
          )}
          <button type="button" className="button" onClick={() => { takeBack(parcel); }}>
            {say(status === 'conflict' ? 'shell.outbox.theirs' : 'shell.outbox.discard')}
          </button>
        </div>
      )}
      {isStuck && <span className="visually-hidden" role="alert">{say(`shell.outbox.status.${status}`)}</span>}
    </li>
  );
}

/** Takes a parcel out, and asks the server what stands at its places now. */
function takeBack(parcel: Parcel): void {
  outbox.withdraw(parcel.sendId);
  void queryClient.invalidateQueries({ queryKey: readingsQuery(parcel.pianoId, parcel.cycle).queryKey });
}

function sayEntry({ typed, outcome, clear }: ParcelEntry, { say }: Telling): string {
  if (clear === true) return '–';
  return outcome === undefined ? (typed ?? '–') : say(`outcome.${outcome}`);
}
