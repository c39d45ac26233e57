import type { Alarm } from '#climate';
import type { AirHours } from '#workshop';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';

const LISTED = 12;
const HOUR_MS = 3_600_000;

/** The stretches outside the band, the longest of them where there are many, in the order of time. */
export function AlarmList({ air, alarms }: { readonly air: AirHours; readonly alarms: readonly Alarm[] }) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const first = air.hour[0] ?? 0;
  if (alarms.length === 0) return <p>{say('care.alarms.none')}</p>;
  const lengthOf = ({ fromHourCount, toHourCount }: Alarm): number => toHourCount - fromHourCount + 1;
  const listed = new Set(alarms.toSorted((a, b) => lengthOf(b) - lengthOf(a)).slice(0, LISTED));
  const moment = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone: 'UTC' });
  return (
    <>
      <h3>{say('care.alarms')}</h3>
      <ScrollTable label={say('care.alarms')} corner={say('care.alarm.column.what')} columns={(['from', 'hours', 'worst'] as const).map((key) => ({ key, head: say(`care.alarm.column.${key}`) }))}>
        {alarms.filter((alarm) => listed.has(alarm)).map((alarm) => (
          <tr key={`${alarm.what} ${String(alarm.fromHourCount)}`}>
            <th scope="row">{say(`care.alarm.${alarm.what}`)}</th>
            <td>{moment.format((first + alarm.fromHourCount) * HOUR_MS)}</td>
            <td>{lengthOf(alarm)}</td>
            <td>{figure(alarm.worstPct, 1, 'pct')}</td>
          </tr>
        ))}
      </ScrollTable>
      {alarms.length > LISTED && <p className="soft small">{say('care.alarms.more', { count: alarms.length - LISTED })}</p>}
    </>
  );
}
