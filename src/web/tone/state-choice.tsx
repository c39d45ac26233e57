import type { State } from '#instrument';
import type { StateTone } from '#workshop';
import { useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { Choice } from '../ui/choice.tsx';

/** Which of the recorded states is looked through; nothing to choose where there is one. */
export function StateChoice({ tones, shown, onState }: { readonly tones: readonly StateTone[]; readonly shown: State; readonly onState: (state: State) => void }) {
  const say = useSay();
  if (tones.length < 2) return null;
  return <Choice label={say('tone.lookedAt')} value={shown} options={tones.map(({ state }) => ({ value: state, label: <StateMark state={state} /> }))} onChange={onState} />;
}
