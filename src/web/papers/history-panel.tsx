import type { PaperHistory } from '#workshop';
import { useState } from 'react';
import { shownFigure } from '../action/terms/typed-figures.ts';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { sayMaybe } from '../language/say-maybe.ts';
import { FieldsDialog } from './fields-dialog.tsx';
import { historyDraftOf, historyFields, historyFormOf } from './history-form.ts';
import { keepPaper } from './use-papers.ts';

/** What is proven of the history of the instrument, and what is not known. */
export function HistoryPanel({ history }: { readonly history: PaperHistory | undefined }) {
  const say = useSay();
  const locale = useLocale();
  const { id } = usePiano();
  const [isOpen, setOpen] = useState(false);
  const shown = (path: string): string => {
    const value = (history as unknown as Readonly<Record<string, unknown>>)[path];
    if (typeof value === 'boolean') return say(value ? 'papers.truth.yes' : 'papers.truth.no');
    if (typeof value === 'number') return path === 'yearMade' ? String(value) : `${shownFigure(value, locale)} %`;
    return typeof value === 'string' && value !== '' ? value : say('papers.truth.none');
  };
  return (
    <section className="panel" aria-labelledby="papers-history">
      <div className="row row-between">
        <h2 id="papers-history">{say('papers.history')}</h2>
        <button type="button" className="button no-print" onClick={() => { setOpen(true); }}>{say(history === undefined ? 'papers.history.state' : 'papers.history.change')}</button>
      </div>
      {history === undefined ? <p>{say('papers.history.none')}</p> : (
        <dl className="papers-facts">
          {historyFields.map(({ path }) => <div key={path}><dt>{sayMaybe(say, `papers.field.${path}`)}</dt><dd>{shown(path)}</dd></div>)}
        </dl>
      )}
      {isOpen && (
        <FieldsDialog
          title={say('papers.history')} name={`papers.history.${id}`} fields={historyFields} base={() => historyFormOf(history, locale)}
          stated={(form) => historyDraftOf(form, locale)} keep={(draft) => keepPaper(id, draft, history)} onClose={() => { setOpen(false); }}
        />
      )}
    </section>
  );
}
