import { type KeyNumber, noteNameOf, states } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { useDesk } from '../desk.tsx';
import { cellIdOf } from '../sheet/sheet-row.ts';
import { useRows } from '../sheet/use-sheet.ts';
import { useWords } from '../use-words.ts';
import type { WalkPlan, WalkState } from './walk-state.ts';

/** What was understood last, large enough to be read with the eyes on the key. */
export function WalkEcho({ echo }: { readonly echo: WalkState['echo'] }) {
  const say = useSay();
  const words = useWords();
  const { compass } = usePiano();
  return (
    <p className="walk-echo" role="status">
      {echo !== null && (
        <>
          <span className="soft small">{say('readings.walk.last')}</span>
          <strong>
            {noteNameOf(compass, echo.key)}{' '}
            {echo.figures.map(({ slot, value, outcome }) => (outcome !== null ? say(`outcome.${outcome}`) : value === null ? '' : words.figure(slot.quantity, value))).join(' / ')}
          </strong>
        </>
      )}
    </p>
  );
}

/** The same key in the other states, small: what it was, or what it is to become. */
export function WalkOthers({ at, plan }: { readonly at: KeyNumber; readonly plan: WalkPlan }) {
  const words = useWords();
  const { sheet, state } = useDesk();
  useRows(sheet, state);
  const others = states.filter((other) => other !== state).flatMap((other) => {
    const row = sheet.row(other, at);
    const figures = plan.slots.flatMap(({ quantity, repeat }) => {
      const reading = row.cells.get(cellIdOf(quantity, repeat))?.reading;
      return reading === undefined ? [] : [words.reading(reading)];
    });
    return figures.length === 0 ? [] : [{ other, figures: figures.join(' / ') }];
  });
  if (others.length === 0) return null;
  return (
    <ul className="walk-others">
      {others.map(({ other, figures }) => <li key={other}><StateMark state={other} /> {figures}</li>)}
    </ul>
  );
}
