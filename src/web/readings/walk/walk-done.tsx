import { useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import type { Walk } from './use-walk.ts';

/** The end of a walk: what is done, and the way to what was left out. */
export function WalkDone({ walk: { plan, context, done, send }, onGrid }: { readonly walk: Walk; readonly onGrid: () => void }) {
  const say = useSay();
  const left = plan.keys.find((key) => plan.slots.some((slot) => context.standing(key, slot) === undefined));
  return (
    <Note tone="accent" role="status">
      <h3>{say('readings.walk.done.title')}</h3>
      <p>{say('readings.walk.done.text', { done, all: plan.keys.length })}</p>
      <div className="row">
        {left !== undefined && <button type="button" className="button" onClick={() => { send({ type: 'goTo', key: left }); }}>{say('readings.walk.done.again')}</button>}
        <button type="button" className="button" onClick={() => { send({ type: 'back' }); }}>{say('readings.walk.back')}</button>
        <button type="button" className="button button-main" onClick={onGrid}>{say('readings.walk.done.grid')}</button>
      </div>
    </Note>
  );
}
