import type { State } from '#instrument';
import type { SheetName } from '#sheets';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';

/** Address of a bench sheet of this piano, as PDF or as CSV. */
export function useSheetAddress(sheet: SheetName, state: State): (kind: 'pdf' | 'csv') => string {
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const paper = /-(?:US|CA|MX)$/u.test(locale) ? 'letter' : 'a4';
  return (kind) => {
    const query = new URLSearchParams({ sheet, state, cycle: String(cycle), locale, ...(kind === 'pdf' ? { paper } : {}) });
    return `/api/pianos/${encodeURIComponent(id)}/sheet.${kind}?${query.toString()}`;
  };
}

/** The sheet for the bench of what is shown. What is laid on a key asks for its paper: `DrillingLinks`. */
export function SheetLinks({ sheet, state }: { readonly sheet: Exclude<SheetName, 'drilling'>; readonly state: State }) {
  const say = useSay();
  const address = useSheetAddress(sheet, state);
  return (
    <section className="panel no-print" aria-labelledby="sheet-links">
      <h2 id="sheet-links">{say('sheet.links')}</h2>
      <p className="soft small">{say(`sheet.${sheet}.about`, { state: say(`state.${state}`) })}</p>
      <div className="row">
        <a className="button button-main" href={address('pdf')} target="_blank" rel="noreferrer">{say(`sheet.${sheet}.pdf`)}</a>
        <a className="button" href={address('csv')} download>{say(`sheet.${sheet}.csv`)}</a>
      </div>
    </section>
  );
}
