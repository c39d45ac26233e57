import type { TouchAnalysis } from '#action';
import { type Reading, type State, quantityOf, states } from '#instrument';
import { type ProofInput, buildProof, hasAnythingToProve } from '#proof';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { type Piano, usePiano } from '../api/piano.tsx';
import { peopleQuery } from '../api/queries.ts';
import type { ReadingBook } from '../api/reading-book.ts';
import { useReadingBook } from '../api/use-readings.ts';
import { touchOf } from '../api/use-touch.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { ReportView } from '../report/report-view.tsx';
import { WhenReadings } from '../shell/when-readings.tsx';
import { Choice } from '../ui/choice.tsx';
import { bellyOf } from '../belly/state-belly.ts';
import { scaleOf } from '../strings/state-scale.ts';
import { proofTellers } from './proof-tellers.ts';
import { ProofMissing } from './proof-missing.tsx';
import './proof.css';

type Paper = 'a4' | 'letter';

/** The proof on screen as it will be printed, and the PDF of it. */
export function ProofPage() {
  return <WhenReadings><Proof /></WhenReadings>;
}

function Proof() {
  const say = useSay();
  const locale = useLocale();
  const piano = usePiano();
  const book = useReadingBook();
  const { data: people } = useQuery(peopleQuery);
  const [paper, setPaper] = useState<Paper>(() => (/-(?:US|CA|MX)$/u.test(locale) ? 'letter' : 'a4'));
  const input = useMemo(() => inputOf(piano, book, { people, locale, say }), [piano, book, people, locale, say]);
  const report = useMemo(() => buildProof(input), [input]);
  const tellerOf = useMemo(() => proofTellers({ piano, book, locale, touch: (state) => (state === 'planned' ? null : input[state]) }), [piano, book, locale, input]);
  if (!hasAnythingToProve([...book.found.values(), ...book.planned.values(), ...book.finished.values()])) return <NothingToProve />;
  const address = `/api/pianos/${encodeURIComponent(piano.id)}/proof.pdf?${new URLSearchParams({ paper, locale, cycle: String(piano.cycle) }).toString()}`;
  return (
    <div className="page proof-page">
      <div className="row proof-bar no-print">
        <Choice<Paper> label={say('proof.paper')} value={paper} options={[{ value: 'a4', label: say('proof.paper.a4') }, { value: 'letter', label: say('proof.paper.letter') }]} onChange={setPaper} />
        <a className="button button-main" href={address} target="_blank" rel="noreferrer">{say('proof.open')}</a>
      </div>
      <ProofMissing input={input} />
      <ReportView report={report} tellerOf={tellerOf} />
    </div>
  );
}

function inputOf(piano: Piano, book: ReadingBook, { people, locale, say }: Pick<ProofInput, 'people' | 'locale' | 'say'>): ProofInput {
  const analysis = (state: Exclude<State, 'planned'>): TouchAnalysis | null => (hasKeys(book[state]) ? touchOf(piano, state, book[state]) : null);
  return {
    instrument: piano.instrument,
    cycle: piano.cycle,
    sessions: piano.sessions,
    intent: piano.intent,
    found: analysis('found'),
    finished: analysis('finished'),
    scales: states.filter((state) => hasStrings(book[state])).map((state) => scaleOf(piano, state, { book, locale })),
    bellies: (['found', 'finished'] as const).filter((state) => hasBearing(book[state])).map((state) => {
      const { analysis: bearing, gathered: { assumed, input: { asked } } } = bellyOf(piano, state, { book, locale });
      return { state, analysis: bearing, asked, assumed };
    }),
    readings: [...book.found.values(), ...book.finished.values()],
    head: piano.file.head,
    people,
    printedAt: new Date().toISOString().slice(0, 10),
    locale,
    say,
  };
}

function hasKeys(readings: ReadonlyMap<string, Reading>): boolean {
  return [...readings.values()].some(({ quantity, scope }) => scope === 'key' && quantityOf(quantity).part === 'touch');
}

function hasStrings(readings: ReadonlyMap<string, Reading>): boolean {
  return [...readings.values()].some(({ quantity }) => quantityOf(quantity).part === 'strings');
}

function hasBearing(readings: ReadonlyMap<string, Reading>): boolean {
  return [...readings.values()].some(({ quantity, scope }) => scope === 'key' && quantityOf(quantity).part === 'belly');
}

function NothingToProve() {
  const say = useSay();
  const { id } = usePiano();
  return (
    <div className="page proof-page">
      <section className="panel">
        <h2>{say('proof.empty.title')}</h2>
        <p>{say('proof.empty.text')}</p>
        <p>
          <Link className="button button-main" to="/pianos/$pianoId/readings" params={{ pianoId: id }} search={(search) => search}>{say('action.empty.go')}</Link>
        </p>
      </section>
    </div>
  );
}
