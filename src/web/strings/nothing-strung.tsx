import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';

/** Says what to measure first, and why. */
export function NothingStrung({ onSizes }: { readonly onSizes: () => void }) {
  const say = useSay();
  const { isCurrent, instrument } = usePiano();
  return (
    <section className="panel">
      <h2>{say('strings.empty.title')}</h2>
      <p>{say('strings.empty.first')}</p>
      <p>{say('strings.empty.then')}</p>
      {instrument.sections.length === 0 && <p>{say('strings.empty.sections')}</p>}
      {isCurrent && <p><button type="button" className="button button-main" onClick={onSizes}>{say('strings.empty.go')}</button></p>}
    </section>
  );
}
