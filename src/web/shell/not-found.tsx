import { Link } from '@tanstack/react-router';
import { useSay } from '../language/use-say.ts';

export function NotFound() {
  const say = useSay();
  return (
    <section className="page">
      <h1>{say('shell.notFound.title')}</h1>
      <p>{say('shell.notFound.text')}</p>
      <p>
        <Link to="/pianos">{say('shell.notFound.back')}</Link>
      </p>
    </section>
  );
}
