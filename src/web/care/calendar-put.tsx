import { type WearRow, careRemindersOf, standingIn } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { usePiano } from '../api/piano.tsx';
import { useDays, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useShopBook } from '../shop/shop-queries.ts';
import { addCard, changeCard } from '../shop/shop-writing.ts';
import type { Care } from './use-care.ts';

/** The dates of the plan as reminders of the shop; what stands in the calendar already is not put there twice. */
export function CalendarPut({ start, wear }: { readonly start: Care['start']; readonly wear: readonly WearRow[] }) {
  const say = useSay();
  const day = useDays();
  const { id, isCurrent } = usePiano();
  const { book } = useShopBook({ kinds: ['reminder'], pianoId: id });
  const lookAt = ({ life }: WearRow): string => say('care.calendar.look', { part: say(`care.part.${life.part}`) });
  const reminders = careRemindersOf(start, wear, id, lookAt);
  const told = reminders.map((one) => ({ one, standing: book === undefined ? undefined : standingIn(book.cards, one) }));
  const missing = told.filter(({ standing }) => standing !== undefined && standing.how !== 'there');
  const putting = useMutation({ mutationFn: async () => { for (const { one, standing } of missing) await (standing?.how === 'differs' ? changeCard(standing.cardId, { kind: 'reminder', firstOn: one.firstOn, until: one.until ?? null }) : addCard(one)); } });
  return (
    <>
      <h3>{say('care.calendar')}</h3>
      <ul>
        {told.map(({ one, standing }) => (
          <li key={`${one.purpose} ${one.firstOn} ${one.details?.words ?? ''}`}>
            {one.purpose === 'tuning' ? say('care.calendar.tuning', { on: day(one.firstOn), months: one.everyMonths ?? 0, until: one.until == null ? 'none' : day(one.until) }) : say('care.calendar.service', { what: one.details?.words ?? '', on: day(one.firstOn) })}
            {standing !== undefined && standing.how !== 'missing' && <span className="soft"> · {say(`care.calendar.${standing.how}`)}</span>}
          </li>
        ))}
      </ul>
      <p className="soft small">{say('care.calendar.how')}</p>
      {putting.error !== null && <ProblemNote problem={putting.error} />}
      {isCurrent && missing.length > 0 && <div><button type="button" className="button no-print" disabled={putting.isPending} onClick={() => { putting.mutate(); }}>{say('care.calendar.put', { count: missing.length })}</button></div>}
    </>
  );
}
