import type { Reading } from '#instrument';
import { useSay } from '../language/use-say.ts';
import type { Origin } from './figure-store.ts';
import { Provenance } from './provenance.tsx';

/** Where an input came from: how it was turned into what it is, and the readings it goes back to. */
export function OriginLines({ origin }: { readonly origin: Origin }) {
  const say = useSay();
  const { how, readings = [] } = origin;
  const isMixed = new Set(readings.map(({ quantity }) => quantity)).size > 1;
  const nameOf = ({ quantity }: Reading): string | undefined => (isMixed ? say(`quantity.${quantity}.short`) : undefined);
  return (
    <>
      {how !== undefined && <div className="soft small">{say(`shell.figure.origin.${how}`)}</div>}
      {how === undefined && readings.length > 1 && <div className="soft small">{say('shell.figure.origin.mean', { count: readings.length })}</div>}
      {readings.map((reading) => <Provenance key={reading.id + reading.quantity} reading={reading} name={nameOf(reading)} />)}
    </>
  );
}
