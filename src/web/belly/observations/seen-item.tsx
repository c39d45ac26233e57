import { type Observation, noteNameOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { decimalsFor } from '../../story/say-event.ts';
import type { ReactNode } from 'react';
import { PhotoStrip } from './photo-strip.tsx';
import { Severity } from './severity.tsx';

interface SeenItemProps {
  readonly seen: Observation;
  /** Absent where the stay is only read. */
  readonly onCorrect?: (() => void) | undefined;
  readonly onWithdraw?: (() => void) | undefined;
  /** Further ways on, beside correcting and withdrawing. */
  readonly children?: ReactNode;
}

/** One thing seen: what and where, since when, with its photos. */
export function SeenItem({ seen, onCorrect, onWithdraw, children }: SeenItemProps) {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  const { compass } = usePiano();
  const { part, fault, severity, fromKey, toKey, lengthMm, remark, photos, state, at } = seen;
  const name = `${say(`observation.part.${part}`)}: ${say(`observation.fault.${fault}`)}`;
  const note = (key: number): string => noteNameOf(compass, key);
  const where = fromKey === null && toKey === null ? undefined : fromKey === null || toKey === null || fromKey === toKey ? say('belly.seen.at', { key: note(fromKey ?? toKey ?? 1) }) : say('belly.seen.fromTo', { from: note(fromKey), to: note(toKey) });
  return (
    <li className="panel seen-item">
      <div className="row row-between">
        <h3>{name}</h3>
        <span className="row">{severity !== null && <Severity severity={severity} />}<StateMark state={state} /></span>
      </div>
      <p>
        {[where, lengthMm === null ? undefined : figure(lengthMm, decimalsFor(lengthMm, 1), 'mm')].filter((text) => text !== undefined).join(' · ') || <span className="soft">{say('belly.seen.nowhere')}</span>}
        {' '}<span className="soft small">{new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at))}</span>
      </p>
      {remark !== '' && <p className="seen-remark">{remark}</p>}
      {part === 'plate' && fault === 'crack' && <p><strong><span aria-hidden="true">⚠ </span>{say('belly.caution.plate')}</strong></p>}
      <PhotoStrip photos={photos} />
      {onCorrect !== undefined && (
        <div className="row no-print">
          <button type="button" className="button" aria-label={`${say('belly.seen.correct')}: ${name}`} onClick={onCorrect}>{say('belly.seen.correct')}</button>
          <button type="button" className="button" aria-label={`${say('belly.seen.withdraw')}: ${name}`} onClick={onWithdraw}>{say('belly.seen.withdraw')}</button>
          {children}
        </div>
      )}
    </li>
  );
}
