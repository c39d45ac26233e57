import { type KeyNumber, keyCountOf, noteNameOf } from '#instrument';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';

interface KeyPanelFrameProps {
  readonly keyNumber: KeyNumber;
  readonly onKey: (key: KeyNumber) => void;
  /** What the panel is dressed as. */
  readonly className?: string;
  readonly children: ReactNode;
}

/** The panel of one key: its name, and the way to the keys beside it. */
export function KeyPanelFrame({ keyNumber, onKey, className = 'key-panel key-findings', children }: KeyPanelFrameProps) {
  const say = useSay();
  const { compass } = usePiano();
  const title = say('action.key', { note: noteNameOf(compass, keyNumber), key: keyNumber });
  return (
    <section className={`panel ${className}`} aria-label={title}>
      <header className="row row-between">
        <h2>{title}</h2>
        <div className="row">
          <button type="button" className="button" disabled={keyNumber === 1} onClick={() => { onKey(keyNumber - 1); }}>{say('action.key.below')}</button>
          <button type="button" className="button" disabled={keyNumber === keyCountOf(compass)} onClick={() => { onKey(keyNumber + 1); }}>{say('action.key.above')}</button>
        </div>
      </header>
      {children}
    </section>
  );
}
