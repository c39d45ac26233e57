import type { KeyTouch } from '#action';
import { useSay } from '../language/use-say.ts';

/** Measurements worth taking next, most telling first, each with its reason. */
export function NextList({ next }: { readonly next: KeyTouch['next'] }) {
  const say = useSay();
  return (
    <div>
      <h3>{say('action.next')}</h3>
      <ul className="next-list">
        {next.map((measurement) => (
          <li key={measurement}>
            <strong>{say(`next.${measurement}`)}</strong> <span className="soft">{say(`next.${measurement}.why`)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
