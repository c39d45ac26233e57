import { useSay } from '../language/use-say.ts';

export function SettingsPage() {
  const say = useSay();
  return (
    <section className="page">
      <h1>{say('shell.nav.settings')}</h1>
    </section>
  );
}
