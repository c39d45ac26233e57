import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';

export function StoryPage() {
  const say = useSay();
  const { instrument } = usePiano();
  return (
    <section className="page">
      <h2>{say('shell.nav.story')}</h2>
      <p>{instrument.name}</p>
    </section>
  );
}
