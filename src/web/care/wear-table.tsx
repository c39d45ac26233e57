import type { WearRow } from '#workshop';
import { Figure } from '../figure/figure.tsx';
import type { FigureStory } from '../figure/figure-store.ts';
import { useDays, useLocale, useSay } from '../language/use-say.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';

/** What of its life each part has used, and when it may be due. */
export function WearTable({ wear }: { readonly wear: readonly WearRow[] }) {
  const say = useSay();
  const locale = useLocale();
  const day = useDays();
  const month = (iso: string): string => new Date(iso).toLocaleDateString(locale, { month: 'short', year: 'numeric', timeZone: 'UTC' }).replaceAll(' ', '\u00A0');
  const story = ({ life, input }: WearRow, output: string): FigureStory => ({ title: say(`care.part.${life.part}`), operation: 'life-used', output, input: { ...input } });
  return (
    <>
      <ScrollTable label={say('care.wear')} corner={say('sheet.owner.column.part')} columns={[{ key: 'used', head: say('care.wear.column.used') }, { key: 'due', head: say('care.wear.column.due') }]}>
        {wear.map((row) => (
          <tr key={row.life.part}>
            <th scope="row">{say(`care.part.${row.life.part}`)} <span className="soft small">{say('sheet.owner.column.since')} {day(row.since)}</span></th>
            <td><Figure value={row.leastPct} decimals={0} story={() => story(row, 'usedLeastPct')} /> – <Figure value={row.mostPct} decimals={0} unit="pct" story={() => story(row, 'usedMostPct')} />{row.mostPct >= 100 && <span aria-hidden="true"> ⚠</span>}</td>
            <td>{row.dueFrom === undefined || row.dueTo === undefined ? <span className="soft">{say('sheet.owner.due.none')}</span> : say('sheet.owner.due.between', { from: month(row.dueFrom), to: month(row.dueTo) })}</td>
          </tr>
        ))}
      </ScrollTable>
      <p className="soft small">{say('care.wear.how')}</p>
    </>
  );
}
