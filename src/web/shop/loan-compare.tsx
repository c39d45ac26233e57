import { type CardOf, type LoanCondition, loanParts } from '#workshop';
import { PhotoStrip } from '../belly/observations/photo-strip.tsx';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';

/** The condition of a piano before and after a loan or a move, part by part, with what changed marked by word. */
export function LoanCompare({ loan: { before, after } }: { readonly loan: Pick<CardOf<'loan'>, 'before' | 'after'> }) {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  if (before === null && after === null) return null;
  const sides = [before, after];
  const parts = loanParts.filter((part) => sides.some((side) => pointOf(side, part) !== undefined));
  const told = (side: LoanCondition | null, part: (typeof loanParts)[number]): string => {
    const point = pointOf(side, part);
    return point === undefined ? say('shop.grade.none') : [say(`shop.grade.${point.grade}`), point.words].filter((text) => text !== '').join(': ');
  };
  const day = (side: LoanCondition | null): string => (side === null ? '–' : new Date(side.on).toLocaleDateString(locale, { dateStyle: 'medium', timeZone: 'UTC' }));
  const measure = (value: number | null | undefined, unit: 'Hz' | 'pct'): string => (value === null || value === undefined ? '–' : figure(value, decimalsFor(value, 1), unit));
  return (
    <>
      <ScrollTable isOfWords label={say('shop.condition.compare')} corner={say('shop.condition.part')} columns={[{ key: 'before', head: say('shop.field.before') }, { key: 'after', head: say('shop.field.after') }]}>
        <tr><th scope="row">{say('shop.condition.on')}</th><td>{day(before)}</td><td>{day(after)}</td></tr>
        <tr><th scope="row">{say('shop.condition.a4Hz')}</th><td>{measure(before?.a4Hz, 'Hz')}</td><td>{measure(after?.a4Hz, 'Hz')}</td></tr>
        <tr><th scope="row">{say('shop.condition.humidityPct')}</th><td>{measure(before?.humidityPct, 'pct')}</td><td>{measure(after?.humidityPct, 'pct')}</td></tr>
        {parts.map((part) => {
          const isCompared = pointOf(before, part) !== undefined && pointOf(after, part) !== undefined;
          const isSame = told(before, part) === told(after, part);
          return (
            <tr key={part}>
              <th scope="row">{say(`shop.part.${part}`)}</th>
              <td>{told(before, part)}</td>
              <td>
                {told(after, part)}
                {isCompared && <div>{isSame ? <span className="soft">{say('shop.condition.same')}</span> : <strong><span aria-hidden="true">⚠ </span>{say('shop.condition.changed')}</strong>}</div>}
              </td>
            </tr>
          );
        })}
      </ScrollTable>
      <PhotoStrip photos={sides.flatMap((side) => side?.photos ?? [])} />
    </>
  );
}

function pointOf(side: LoanCondition | null, part: (typeof loanParts)[number]): LoanCondition['points'][number] | undefined {
  return side?.points.find((point) => point.part === part);
}
