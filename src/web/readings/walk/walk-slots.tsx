import { useSay } from '../../language/use-say.ts';
import { FieldHelp } from '../../leaves/field-help.tsx';
import { useWords } from '../use-words.ts';
import { keyAt } from './walk-machine.ts';
import type { WalkContext, WalkState } from './walk-state.ts';

interface WalkSlotsProps {
  readonly state: WalkState;
  readonly context: WalkContext;
  readonly onAsk: (slot: number) => void;
}

/** The figures asked for at the key, with what stands; the one typed next is marked. */
export function WalkSlots({ state, context, onAsk }: WalkSlotsProps) {
  const say = useSay();
  const words = useWords();
  const key = keyAt(state, context.plan);
  if (key === undefined) return null;
  const repeats = Math.max(...context.plan.slots.map(({ repeat }) => repeat));
  return (
    <ol className="walk-slots">
      {context.plan.slots.map((slot, index) => {
        const figure = context.standing(key, slot);
        const text = figure === undefined ? '–' : figure.outcome !== null ? say(`outcome.${figure.outcome}`) : figure.value === null ? '' : words.figure(slot.quantity, figure.value, true);
        return (
          <li key={`${slot.quantity} ${String(slot.repeat)}`}>
            <button type="button" className="walk-slot" aria-current={index === state.slot ? 'step' : undefined} onClick={() => { onAsk(index); }}>
              <span className="walk-slot-name">{say(`quantity.${slot.quantity}.short`)}{repeats > 1 && ` ${String(slot.repeat)}`}</span>
              <span className="walk-slot-figure">{text}</span>
            </button>
            {slot.repeat === 1 && <FieldHelp quantity={slot.quantity} />}
          </li>
        );
      })}
    </ol>
  );
}
