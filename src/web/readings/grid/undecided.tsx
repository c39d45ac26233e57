import { type Reading, isQuantityName, noteNameOf } from '#instrument';
import { useQueryClient } from '@tanstack/react-query';
import { memo, useEffect, useSyncExternalStore } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { readingsQuery } from '../../api/queries.ts';
import { useSay } from '../../language/use-say.ts';
import type { Parcel, ParcelEntry } from '../../outbox/parcel.ts';
import { outbox } from '../../outbox/the-outbox.ts';
import { Note } from '../../ui/note.tsx';
import { useDesk } from '../desk.tsx';
import { cellIdOf } from '../sheet/sheet-row.ts';
import { useRows } from '../sheet/use-sheet.ts';
import { useWords } from '../use-words.ts';

const SHOWN = 6;

/** Figures the server did not take as they were sent: what was typed here, what stands, and the choice between them. */
export const Undecided = memo(function Undecided() {
  const stuck = useSyncExternalStore(outbox.subscribe, () => outbox.state().stuck);
  return stuck === 0 ? null : <UndecidedParcels />;
});

function UndecidedParcels() {
  const { id, cycle } = usePiano();
  const { sheet, state } = useDesk();
  const client = useQueryClient();
  useRows(sheet, state);
  const { parcels, stuck } = useSyncExternalStore(outbox.subscribe, outbox.state);
  const here = parcels.filter((parcel) => parcel.pianoId === id && parcel.cycle === cycle && parcel.state === state && (parcel.status === 'conflict' || parcel.status === 'refused'));
  useEffect(() => {
    if (stuck > 0) void client.invalidateQueries({ queryKey: readingsQuery(id, cycle).queryKey });
  }, [client, id, cycle, stuck]);
  return <>{here.map((parcel) => <UndecidedParcel key={parcel.sendId} parcel={parcel} />)}</>;
}

function UndecidedParcel({ parcel }: { readonly parcel: Parcel }) {
  const say = useSay();
  const words = useWords();
  const { compass } = usePiano();
  const { sheet, state } = useDesk();
  const isConflict = parcel.status === 'conflict';
  const typedOf = ({ typed, outcome }: ParcelEntry): string => typed ?? (outcome === undefined ? say('readings.conflict.nothing') : say(`outcome.${outcome}`));
  const standsOf = ({ quantity, scope, index, repeat = 1 }: ParcelEntry): Reading | undefined => sheet.cell(state, scope, index, cellIdOf(quantity, repeat))?.acknowledged;
  const nameOf = ({ quantity, scope, index }: ParcelEntry): string => {
    const name = isQuantityName(quantity) ? say(`quantity.${quantity}.name`) : quantity;
    return scope === 'key' ? say('readings.figure', { quantity: name, note: noteNameOf(compass, index) }) : name;
  };
  return (
    <Note tone="bad" role="alert">
      <h3><span aria-hidden="true">{isConflict ? '≠ ' : '✕ '}</span>{say(isConflict ? 'readings.conflict.title' : 'readings.refused.title')}</h3>
      {!isConflict && <p>{parcel.problem?.message}</p>}
      <ul>
        {parcel.entries.slice(0, SHOWN).map((entry) => {
          const stands = standsOf(entry);
          return (
            <li key={`${entry.quantity} ${entry.scope} ${String(entry.index)} ${String(entry.repeat ?? 1)}`}>
              {nameOf(entry)}: {say('readings.conflict.yours')} <strong>{typedOf(entry)}</strong>, {say('readings.conflict.theirs')} <strong>{stands === undefined ? say('readings.conflict.nothing') : words.reading(stands)}</strong>
            </li>
          );
        })}
        {parcel.entries.length > SHOWN && <li>{say('readings.paste.more', { count: parcel.entries.length - SHOWN })}</li>}
      </ul>
      <div className="row">
        <button type="button" className="button button-main" onClick={() => { outbox.writeOver(parcel.sendId); }}>{say(isConflict ? 'readings.conflict.keepYours' : 'readings.refused.retry')}</button>
        <button type="button" className="button" onClick={() => { outbox.withdraw(parcel.sendId); }}>{say(isConflict ? 'readings.conflict.keepTheirs' : 'readings.refused.drop')}</button>
      </div>
    </Note>
  );
}
