import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';

/** Says what to measure first, and why. */
export function NothingBorne({ onHeights }: { readonly onHeights: () => void }) {
  const say = useSay();
  const { isCurrent, instrument } = usePiano();
  return (
    <section className="panel">
      <h2>{say('belly.empty.title')}</h2>
      <p>{say('belly.empty.first')}</p>
      <p>{say('belly.empty.then')}</p>
      {instrument.sections.length === 0 && <p>{say('belly.empty.sections')}</p>}
      {isCurrent && <p><button type="button" className="button button-main" onClick={onHeights}>{say('belly.empty.go')}</button></p>}
    </section>
  );
}
