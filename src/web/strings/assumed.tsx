import { noteNameOf } from '#instrument';
import type { ScaleAssumption } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import type { StateScale } from './state-scale.ts';

/** What had to be taken for granted because nobody stated it, in words, and for which notes. */
export function Assumed({ scale: { assumed } }: { readonly scale: StateScale }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, instrument } = usePiano();
  if (assumed.length === 0) return null;
  const runs = ({ notes }: ScaleAssumption): string => runsOf(notes).map(([first, last]) => (first === last ? noteNameOf(compass, first) : `${noteNameOf(compass, first)}–${noteNameOf(compass, last)}`)).join(', ');
  return (
    <section className="panel" aria-labelledby="strings-assumed">
      <h2 id="strings-assumed">{say('strings.assumed')}</h2>
      <ul className="assumed">
        {assumed.map((one) => (
          <li key={one.what}>{say(`strings.assumed.${one.what}`, { a4: figure(instrument.a4Hz, Number.isInteger(instrument.a4Hz) ? 0 : 1) })} <span className="soft small">{runs(one)}</span></li>
        ))}
      </ul>
    </section>
  );
}

/** Keys in runs without gaps. */
function runsOf(keys: readonly number[]): readonly (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  for (const key of keys) {
    const last = runs.at(-1);
    if (last?.[1] === key - 1) runs[runs.length - 1] = [last[0], key];
    else runs.push([key, key]);
  }
  return runs;
}
