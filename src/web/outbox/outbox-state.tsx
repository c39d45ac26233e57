import { Suspense, lazy, useState, useSyncExternalStore } from 'react';
import { useSay } from '../language/use-say.ts';
import { outbox } from './the-outbox.ts';
import './outbox.css';

const OutboxDialog = lazy(() => import('./outbox-dialog.tsx'));

/** How saving stands, always in view; opens on what is still on its way. */
export function OutboxState() {
  const say = useSay();
  const state = useSyncExternalStore(outbox.subscribe, outbox.state);
  const [isOpen, setOpen] = useState(false);
  const isHeldUp = state.unreachable || state.unkept;
  const tone = state.stuck > 0 ? 'bad' : isHeldUp || state.held > 0 ? 'warn' : 'good';
  const text =
    state.stuck > 0 ? say('shell.outbox.stuck', { count: state.stuck })
    : state.waiting > 0 && isHeldUp ? say('shell.outbox.waiting', { count: state.waiting })
    : state.held > 0 ? say('shell.outbox.held', { count: state.held })
    : state.waiting === 0 ? say('shell.outbox.saved')
    : say('shell.outbox.saving');
  return (
    <>
      <button type="button" className={`button button-quiet outbox-state outbox-${tone}`} aria-label={say('shell.outbox.open', { text })} onClick={() => { setOpen(true); }}>
        {text}
      </button>
      <span className="visually-hidden" role="status">
        {tone === 'good' ? '' : text}
      </span>
      <Suspense fallback={null}>{isOpen && <OutboxDialog onClose={() => { setOpen(false); }} />}</Suspense>
    </>
  );
}
