import type { State } from '#instrument';
import { inkingOf, stateShape, symbolPathOf } from '#plot';
import { useSay } from '../language/use-say.ts';
import './leaves.css';

/** A state by its mark and word, as in every plot and print. */
export function StateMark({ state, word = true }: { readonly state: State; readonly word?: boolean }) {
  const say = useSay();
  const shape = stateShape[state];
  const ink = `var(--state-${state})`;
  return (
    <span className="state-mark">
      <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
        <path d={symbolPathOf({ shape, x: 6, y: 6, radiusPx: 4 })} fill={inkingOf(shape) === 'open' ? 'var(--paper-raised)' : ink} stroke={ink} strokeWidth="1.4" />
      </svg>
      {word ? say(`state.${state}`) : <span className="visually-hidden">{say(`state.${state}`)}</span>}
    </span>
  );
}
