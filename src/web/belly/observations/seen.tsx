import { type State, states } from '#instrument';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { toast } from '../../toast/toasts.ts';
import { ObservationForm, isOfBelly } from './observation-form.tsx';
import { SeenItem } from './seen-item.tsx';
import { useObserving } from './use-observing.ts';

/** What was seen by eye in this stay, state by state; added, corrected and withdrawn here. */
export function Seen({ state }: { readonly state: State }) {
  const say = useSay();
  const { observations, isCurrent } = usePiano();
  const [open, setOpen] = useState<string>();
  const observing = useObserving();
  const shown = states.flatMap((one) => observations.filter((seen) => seen.state === one && isOfBelly(seen.part)));
  const withdraw = (id: string): void => { observing.mutate({ kind: 'withdraw', id, onKept: () => { toast(say('belly.seen.withdrawn')); } }); };
  return (
    <section className="seen" aria-labelledby="seen-title">
      <div className="row row-between">
        <h2 id="seen-title">{say('belly.seen.title')}</h2>
        {isCurrent && open !== 'new' && <button type="button" className="button button-main" onClick={() => { setOpen('new'); }}>{say('belly.seen.add')}</button>}
      </div>
      {open === 'new' && <ObservationForm state={state} onClose={() => { setOpen(undefined); }} />}
      {shown.length === 0 && open !== 'new' && <p>{say('belly.seen.none')}</p>}
      {observing.error !== null && <ProblemNote problem={observing.error} />}
      <ul className="seen-list">
        {shown.map((seen) => (open === seen.id
          ? <li key={seen.id}><ObservationForm seen={seen} state={seen.state} onClose={() => { setOpen(undefined); }} /></li>
          : <SeenItem key={seen.id} seen={seen} {...(isCurrent ? { onCorrect: () => { setOpen(seen.id); }, onWithdraw: () => { withdraw(seen.id); } } : {})} />))}
      </ul>
    </section>
  );
}
