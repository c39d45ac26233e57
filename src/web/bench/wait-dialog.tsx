import { type BenchTask, type WorkWait, waitReasons } from '#workshop';
import { type SyntheticEvent, useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { localMoment } from '../shop/card-form.ts';
import { nameOf } from '../shop/say-card.ts';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { DayField } from '../ui/day-field.tsx';
import { SelectField } from '../ui/select-field.tsx';

interface WaitDialogProps {
  readonly task: BenchTask;
  readonly book: ShopBook;
  readonly onWait: (wait: WorkWait) => void;
  readonly onClose: () => void;
}

/** Says what jobs wait for: a moment that is to pass, an order that is to come, or neither. */
export function WaitDialog({ task: { wait, piano }, book, onWait, onClose }: WaitDialogProps) {
  const say = useSay();
  const [reason, setReason] = useState<WorkWait['for']>(wait?.for ?? 'parts');
  const [until, setUntil] = useState(wait?.until == null ? '' : localMoment(wait.until));
  const [purchase, setPurchase] = useState(wait?.purchase ?? '');
  const orders = cardsOfKind(book.cards, 'purchase').filter(({ id, status, pianoId, workshopId }) => id === purchase || (workshopId === piano.instrument.workshopId && (status === 'draft' || status === 'ordered') && (pianoId === null || pianoId === piano.instrument.id)));
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    onWait({ for: reason, until: until === '' ? null : new Date(until).toISOString(), purchase: reason !== 'parts' || purchase === '' ? null : purchase });
  };
  return (
    <AppDialog title={say('bench.wait.title')} isOpen onClose={onClose}>
      <form className="card-form" onSubmit={submit}>
        <SelectField label={say('bench.wait.for')} value={reason} options={waitReasons.map((value) => ({ value, label: say(`bench.wait.for.${value}`) }))} onChange={setReason} />
        {reason === 'parts' && (
          <SelectField
            label={say('bench.wait.order')} value={purchase} onChange={setPurchase}
            options={[{ value: '', label: say('bench.wait.noOrder') }, ...orders.map(({ id, person, lines, status }) => ({ value: id, label: [nameOf(person, book, say), lines[0]?.name, say(`parts.status.${status}`)].filter((part) => part !== undefined).join(' · ') }))]}
          />
        )}
        <DayField label={say('bench.wait.until')} hasClock hint={say('bench.wait.untilHint')} value={until} onChange={setUntil} />
        <div className="dialog-foot">
          <button type="button" className="button" onClick={onClose}>{say('shell.cancel')}</button>
          <button type="submit" className="button button-main">{say('bench.wait.do')}</button>
        </div>
      </form>
    </AppDialog>
  );
}
