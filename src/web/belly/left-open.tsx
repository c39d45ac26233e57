import { usePiano } from '../api/piano.tsx';
import { sayRuns } from '../keys/key-runs.ts';
import { useSay } from '../language/use-say.ts';
import type { StateBelly } from './state-belly.ts';

/** What had to be taken for granted or left open because nobody stated it, in words, and for which notes. */
export function LeftOpen({ belly: { gathered: { assumed } } }: { readonly belly: StateBelly }) {
  const say = useSay();
  const { compass } = usePiano();
  if (assumed.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="bearing-assumed">
      <h2 id="bearing-assumed">{say('belly.assumed')}</h2>
      <ul className="assumed">
        {assumed.map(({ what, notes }) => <li key={what}>{say(`belly.assumed.${what}`)} <span className="soft small">{sayRuns(notes, compass)}</span></li>)}
      </ul>
    </section>
  );
}
