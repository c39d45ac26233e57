import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';

export function ProofPage() {
  const say = useSay();
  const { instrument } = usePiano();
  return (
    <section className="page">
      <h2>{say('shell.nav.proof')}</h2>
      <p>{instrument.name}</p>
    </section>
  );
}
