import type { GatheredLeads } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { useSay } from '../../language/use-say.ts';
import { useTakePart } from '../taken/take-part.ts';

/** Keys that cannot be worked out and what they lack, and what was taken for granted of the others. */
export function GatheredNotes({ gathered: { missing, assumed, keys } }: { readonly gathered: GatheredLeads }) {
  const say = useSay();
  const { compass, isCurrent } = usePiano();
  const take = useTakePart();
  const isOfAll = (some: readonly number[]): boolean => some.length === keys.length;
  return (
    <>
      {missing.length > 0 && (
        <section className="panel" aria-labelledby="leads-missing">
          <h2 id="leads-missing">{say('leads.missing')}</h2>
          <ul className="assumed">{missing.map(({ what, keys: of }) => <li key={what}>{say(`leads.missing.${what}`)} <span className="soft small">{sayRuns(of, compass)}</span></li>)}</ul>
          {isCurrent && <p><button type="button" className="button" onClick={() => { take('leads'); }}>{say('leads.take')}</button></p>}
        </section>
      )}
      {assumed.length > 0 && (
        <section className="panel" aria-labelledby="leads-assumed">
          <h2 id="leads-assumed">{say('leads.assumed')}</h2>
          <ul className="assumed">{assumed.map(({ what, keys: of }) => <li key={what}>{say(`leads.assumed.${what}`)} {!isOfAll(of) && <span className="soft small">{sayRuns(of, compass)}</span>}</li>)}</ul>
        </section>
      )}
    </>
  );
}
