import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';

/** The drilling sheet of the leads kept as planned, on either paper, and its holes as a table. */
export function DrillingLinks() {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const address = (kind: 'pdf' | 'csv', paper?: 'a4' | 'letter'): string => {
    const query = new URLSearchParams({ sheet: 'drilling', state: 'planned', cycle: String(cycle), locale, ...(paper === undefined ? {} : { paper }) });
    return `/api/pianos/${encodeURIComponent(id)}/sheet.${kind}?${query.toString()}`;
  };
  return (
    <section className="panel no-print" aria-labelledby="leads-sheet">
      <h2 id="leads-sheet">{say('leads.sheet')}</h2>
      <p className="soft small">{say('leads.sheet.about')}</p>
      <div className="row">
        <a className="button" href={address('pdf', 'a4')} target="_blank" rel="noreferrer">{say('leads.sheet.a4')}</a>
        <a className="button" href={address('pdf', 'letter')} target="_blank" rel="noreferrer">{say('leads.sheet.letter')}</a>
        <a className="button" href={address('csv')} download>{say('leads.sheet.csv')}</a>
      </div>
    </section>
  );
}
