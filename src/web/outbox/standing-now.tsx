import { useQuery } from '@tanstack/react-query';
import { readingsQuery } from '../api/queries.ts';
import { byPlace } from '../api/reading-book.ts';
import { useMoments } from '../language/use-say.ts';
import { type Telling, sayPlace, sayReading } from '../story/say-event.ts';
import { type Parcel, placeKeyOf } from './parcel.ts';

/** What stands now at the places a parcel could not be written to, and since when. */
export function StandingNow({ parcel, telling }: { readonly parcel: Parcel; readonly telling: Telling }) {
  const moment = useMoments();
  const { data = [] } = useQuery({ ...readingsQuery(parcel.pianoId, parcel.cycle), staleTime: 0 });
  const standing = byPlace(data);
  const differing = parcel.entries.filter((entry) => entry.basedOn !== undefined && (standing.get(placeKeyOf(parcel, entry))?.id ?? null) !== entry.basedOn);
  return (
    <ul className="parcel-entries">
      {differing.map((entry) => {
        const place = placeKeyOf(parcel, entry);
        const now = standing.get(place);
        const stands = [sayReading(now, telling), now === undefined ? '' : moment(now.at)].filter((part) => part !== '').join(' · ');
        return <li key={place}>{telling.say('shell.outbox.stands', { place: sayPlace(place, telling), stands })}</li>;
      })}
    </ul>
  );
}
