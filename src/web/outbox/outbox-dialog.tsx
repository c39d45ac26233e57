import { useSyncExternalStore } from 'react';
import { useSay } from '../language/use-say.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { Note } from '../ui/note.tsx';
import { ParcelRow } from './parcel-row.tsx';
import { outbox } from './the-outbox.ts';

/** Everything typed here that the server has not acknowledged, and what can be done about what it would not take. */
export default function OutboxDialog({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  const { parcels, unkept, unreachable } = useSyncExternalStore(outbox.subscribe, outbox.state);
  return (
    <AppDialog title={say('shell.outbox.title')} isOpen onClose={onClose} form="wide">
      {unkept && (
        <Note tone="bad">
          <p>{say('shell.outbox.unkept')}</p>
        </Note>
      )}
      <p>{say(parcels.length === 0 ? 'shell.outbox.none' : 'shell.outbox.explain')}</p>
      {unreachable && (
        <div className="row">
          <p>{say('shell.problem.noAnswer')}</p>
          <button type="button" className="button" onClick={() => { outbox.nudge(); }}>
            {say('shell.outbox.retry')}
          </button>
        </div>
      )}
      <ul className="parcels">
        {parcels.map((parcel) => (
          <ParcelRow key={parcel.sendId} parcel={parcel} />
        ))}
      </ul>
    </AppDialog>
  );
}
