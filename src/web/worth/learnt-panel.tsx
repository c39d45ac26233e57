import { LEAST_JOBS, type LearntHours } from '#estimate';
import type { Estimate } from '#workshop';
import { useFigures, useSay } from '../language/use-say.ts';

/** What the shop’s own finished jobs say about its hours, by kind of work. */
export function LearntPanel({ estimates, learnt }: { readonly estimates: readonly Estimate[]; readonly learnt: readonly LearntHours[] }) {
  const say = useSay();
  const figure = useFigures();
  const jobs = estimates.flatMap(({ lines }) => lines).filter((line) => line.kind === 'labour' && line.actualH !== null).length;
  return (
    <section className="panel" aria-labelledby="worth-learnt">
      <h2 id="worth-learnt">{say('worth.learnt')}</h2>
      {learnt.length === 0 ? <p>{say('worth.learnt.few', { least: LEAST_JOBS, jobs })}</p> : (
        <>
          <p className="soft small">{say('worth.learnt.how', { jobs })}</p>
          <ul>
            {learnt.map(({ operation, factor, lowFactor, highFactor, jobs: count }) => (
              <li key={operation}>{say('worth.learnt.one', { operation, factor: figure(factor, 2), low: figure(lowFactor, 2), high: figure(highFactor, 2), jobs: count })}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
