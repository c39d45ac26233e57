import { USUAL_SMOOTHNESS } from '#tuning';
import { usePiano } from '../../api/piano.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import type { Tuning } from './use-tuning.ts';

/** What had to be taken for granted for the curve, in words, and for which notes. */
export function TuningAssumed({ tuning: { gathered: { assumed, ofStrings } } }: { readonly tuning: Tuning }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, instrument } = usePiano();
  if (assumed.length === 0 && ofStrings.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="tuning-assumed">
      <h2 id="tuning-assumed">{say('tuning.assumed')}</h2>
      <ul className="assumed">
        {assumed.map(({ what, notes }) => <li key={what}>{say(`tuning.assumed.${what}`, { weight: figure(USUAL_SMOOTHNESS, 0) })} <span className="soft small">{sayRuns(notes, compass)}</span></li>)}
        {ofStrings.map(({ what, notes }) => <li key={`string ${what}`}>{say(`strings.assumed.${what}`, { a4: figure(instrument.a4Hz, Number.isInteger(instrument.a4Hz) ? 0 : 1) })} <span className="soft small">{sayRuns(notes, compass)}</span></li>)}
      </ul>
    </section>
  );
}
