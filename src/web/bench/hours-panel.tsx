import { type CardOf, hoursOfEntry } from '#workshop';
import { useState } from 'react';
import { useFigures, useSay } from '../language/use-say.ts';
import { useWriter } from '../people/use-writer.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { cardsOfKind } from '../shop/shop-queries.ts';
import { withdrawCard } from '../shop/shop-writing.ts';
import { useCardTelling } from '../shop/use-card-telling.ts';
import type { BenchBook } from './bench-queries.ts';
import { HoursDialog } from './hours-dialog.tsx';
import { HoursAgainst } from './hours-against.tsx';
import { useNewest } from '../ui/use-newest.tsx';
import { useJobNames } from './job-names.ts';

/** Hours of the pianos at the bench: against their estimates, and the last entries one by one, to be corrected. */
export function HoursPanel({ bench }: { readonly bench: BenchBook }) {
  const say = useSay();
  const figure = useFigures();
  const names = useJobNames(bench);
  const writer = useWriter();
  const { day } = useCardTelling(bench.book);
  const [open, setOpen] = useState<CardOf<'hours'> | 'new'>();
  const [problem, setProblem] = useState<unknown>();
  const here = new Set(bench.pianos.map(({ instrument }) => instrument.id));
  const entries = cardsOfKind(bench.book.cards, 'hours').filter(({ pianoId }) => here.has(pianoId));
  const { shown, older } = useNewest(entries);
  const lengthOf = (entry: CardOf<'hours'>): string => {
    const hours = hoursOfEntry(entry);
    return hours === undefined ? say('bench.hours.runs') : `${figure(hours, 2)} h, ${say(entry.hours === null ? 'bench.hours.byClock' : 'bench.hours.typed')}`;
  };
  return (
    <section className="panel" aria-labelledby="bench-hours">
      <div className="row row-between">
        <h2 id="bench-hours">{say('bench.hours')}</h2>
        <button type="button" className="button" disabled={bench.pianos.length === 0} onClick={() => { setOpen('new'); }}>{say('bench.hours.add')}</button>
      </div>
      {problem !== undefined && <ProblemNote problem={problem} />}
      {entries.length === 0 ? <p className="soft">{say('bench.hours.none')}</p> : (
        <>
          <h3>{say('bench.hours.last')}</h3>
          <ul className="shop-cards">
            {shown.map((entry) => {
              const what = `${names.target(entry)}, ${day(entry.on)}`;
              return (
                <li key={entry.id} className="shop-card">
                  <div>
                    <p><strong>{lengthOf(entry)}</strong> · {names.target(entry)}</p>
                    <p className="soft small">{[day(entry.on), entry.who === null ? say('bench.hours.nobody') : writer(entry.who), entry.details?.words ?? ''].filter((part) => part !== '').join(' · ')}</p>
                  </div>
                  <div className="row">
                    <button type="button" className="button" aria-label={say('people.page.edit', { what })} onClick={() => { setOpen(entry); }}>{say('people.page.correct')}</button>
                    <button type="button" className="button button-quiet" aria-label={say('people.page.withdrawOf', { what })} onClick={() => { withdrawCard(entry.id).catch(setProblem); }}>{say('people.page.withdraw')}</button>
                  </div>
                </li>
              );
            })}
          </ul>
          {older}
        </>
      )}
      {bench.pianos.map((piano) => <HoursAgainst key={piano.instrument.id} piano={piano} entries={entries.filter(({ pianoId }) => pianoId === piano.instrument.id)} onProblem={setProblem} />)}
      {open !== undefined && <HoursDialog key={open === 'new' ? 'new' : open.id} bench={bench} entry={open === 'new' ? undefined : open} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}
