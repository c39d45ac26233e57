import { Suspense, lazy, useState, useSyncExternalStore } from 'react';
import { useSay } from '../language/use-say.ts';
import type { OutboxState as SavingState } from './outbox.ts';
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
  const [text, short] = useText(state, isHeldUp);
  return (
    <>
      <button type="button" className={`button button-quiet outbox-state outbox-${tone}`} aria-label={say('shell.outbox.open', { text })} onClick={() => { setOpen(true); }}>
        <span className="outbox-long">{text}</span>
        <span className="outbox-short">{short}</span>
      </button>
      <span className="visually-hidden" role="status">
        {tone === 'good' ? '' : text}
      </span>
      <Suspense fallback={null}>{isOpen && <OutboxDialog onClose={() => { setOpen(false); }} />}</Suspense>
    </>
  );
}

/** How saving stands, whole and as short as a telephone has room for. */
function useText({ stuck, waiting, held }: SavingState, isHeldUp: boolean): readonly [text: string, short: string] {
  const say = useSay();
  if (stuck > 0) return [say('shell.outbox.stuck', { count: stuck }), say('shell.outbox.stuck.short', { count: stuck })];
  if (waiting > 0 && isHeldUp) return [say('shell.outbox.waiting', { count: waiting }), say('shell.outbox.waiting.short', { count: waiting })];
  if (held > 0) return [say('shell.outbox.held', { count: held }), say('shell.outbox.waiting.short', { count: held })];
  const calm = say(waiting === 0 ? 'shell.outbox.saved' : 'shell.outbox.saving');
  return [calm, calm];
}
