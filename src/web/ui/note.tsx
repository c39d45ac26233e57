import type { ReactNode } from 'react';
import './ui.css';

export type Tone = 'plain' | 'good' | 'warn' | 'bad' | 'accent';

/** A framed remark; its tone is also told by a word or mark inside, never by colour alone. */
export function Note({ tone = 'plain', role, children }: { readonly tone?: Tone; readonly role?: 'alert' | 'status' | 'note'; readonly children: ReactNode }) {
  return (
    <div className={`note note-${tone}`} {...(role === undefined ? {} : { role })}>
      {children}
    </div>
  );
}
