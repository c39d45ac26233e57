import type { EventDay } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { useDays, useSay } from '../language/use-say.ts';
import { EventPages } from './event-pages.tsx';
import { Fold } from './fold.tsx';
import { sayWhat } from './say-what.ts';
import { countsOf, eventsIn, sayStayDays, staysOf } from './use-event-days.ts';

/** The log folded by stay and day, each with how many events it holds; the last day of the stay looked at is open. */
export function EventDays({ days }: { readonly days: readonly EventDay[] }) {
  const say = useSay();
  const day = useDays();
  const { cycle: looked } = usePiano();
  const stays = staysOf(days);
  if (stays.length < 2) return <DayList days={days} isFirstOpen />;
  return stays.toReversed().map(({ cycle, from, until }) => {
    const own = days.filter((one) => one.cycle === cycle);
    return (
      <Fold key={cycle} isOpen={cycle === looked} title={<><strong>{say('story.stay', { cycle })}</strong> <span className="soft">{sayStayDays({ from, until }, day)} · {say('story.events.count', { count: eventsIn(own) })}</span></>}>
        <DayList days={own} isFirstOpen={cycle === looked} />
      </Fold>
    );
  });
}

function DayList({ days, isFirstOpen }: { readonly days: readonly EventDay[]; readonly isFirstOpen: boolean }) {
  const say = useSay();
  const tellDay = useDays();
  return days.map(({ cycle, day, first, last, what }, index) => (
    <Fold
      key={`${String(cycle)} ${day} ${String(first)}`} isOpen={isFirstOpen && index === 0}
      title={<><strong>{tellDay(day)}</strong> <span className="soft">{say('story.events.count', { count: last - first + 1 })} · {[...countsOf([{ cycle, day, first, last, what }])].map(([entity, count]) => `${sayWhat(entity, say)} ${String(count)}`).join(', ')}</span></>}
    >
      <EventPages shown={{ first, last }} />
    </Fold>
  ));
}
