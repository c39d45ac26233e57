import { usePiano } from '../api/piano.tsx';
import { sayRuns } from '../keys/key-runs.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import type { StateScale } from './state-scale.ts';

/** What had to be taken for granted because nobody stated it, in words, and for which notes. */
export function Assumed({ scale: { assumed } }: { readonly scale: StateScale }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, instrument } = usePiano();
  if (assumed.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="strings-assumed">
      <h2 id="strings-assumed">{say('strings.assumed')}</h2>
      <ul className="assumed">
        {assumed.map((one) => (
          <li key={one.what}>{say(`strings.assumed.${one.what}`, { a4: figure(instrument.a4Hz, Number.isInteger(instrument.a4Hz) ? 0 : 1) })} <span className="soft small">{sayRuns(one.notes, compass)}</span></li>
        ))}
      </ul>
    </section>
  );
}
