import { useSyncExternalStore } from 'react';
import { useSay } from '../language/use-say.ts';
import { outbox } from './the-outbox.ts';
import './outbox.css';

/** How saving stands, always in view. */
export function OutboxState() {
  const say = useSay();
  const state = useSyncExternalStore(outbox.subscribe, outbox.state);
  const tone = state.stuck > 0 ? 'bad' : state.waiting > 0 && !state.sending ? 'warn' : 'good';
  const text =
    state.stuck > 0 ? say('shell.outbox.stuck', { count: state.stuck })
    : state.waiting === 0 ? say('shell.outbox.saved')
    : state.unreachable ? say('shell.outbox.waiting', { count: state.waiting })
    : say('shell.outbox.saving');
  return (
    <span className={`outbox-state outbox-${tone}`} role="status">
      {text}
    </span>
  );
}
