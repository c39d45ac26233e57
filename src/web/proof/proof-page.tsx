import { states } from '#instrument';
import { type ProofMaterial, buildProof, hasAnythingToProve, proofInputOf } from '#proof';
import { type WorkedSound, workedSoundsOf } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { type Piano, usePiano } from '../api/piano.tsx';
import { peopleQuery } from '../api/queries.ts';
import type { ReadingBook } from '../api/reading-book.ts';
import { useReadingBook } from '../api/use-readings.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { ReportView } from '../report/report-view.tsx';
import { WhenReadings } from '../shell/when-readings.tsx';
import { analysesQuery, recordingsQuery } from '../tone/tone-queries.ts';
import { Choice } from '../ui/choice.tsx';
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
  const sounds = useSounds(piano.id);
  const material = useMemo(() => materialOf(piano, book, { people, locale, say, sounds: sounds ?? [] }), [piano, book, people, locale, say, sounds]);
  const input = useMemo(() => proofInputOf(material), [material]);
  const report = useMemo(() => buildProof(input), [input]);
  const tellerOf = useMemo(() => proofTellers({ piano, book, locale, touch: (state) => (state === 'planned' ? null : input[state]) }), [piano, book, locale, input]);
  if (sounds === undefined) return <p role="status">{say('shell.loading')}</p>;
  if (!hasAnythingToProve(material)) return <NothingToProve />;
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

/** The recordings of a piano with what was worked out of them; undefined while they are on their way, none where they cannot be had. */
function useSounds(id: string): readonly WorkedSound[] | undefined {
  const [recordings, analyses] = [useQuery(recordingsQuery(id)), useQuery(analysesQuery(id))];
  const isPending = recordings.isPending || analyses.isPending;
  return useMemo(() => (isPending ? undefined : workedSoundsOf(recordings.data ?? [], analyses.data ?? [])), [analyses.data, isPending, recordings.data]);
}

/** Everything the proof is read from, as the PDF reads it. */
function materialOf({ instrument, cycle, sessions, intent, scale, action, tuning, work, rooms, file }: Piano, book: ReadingBook, rest: Pick<ProofMaterial, 'people' | 'locale' | 'say' | 'sounds'>): ProofMaterial {
  const readings = states.flatMap((state) => [...book[state].values()]);
  return { ...rest, instrument, cycle, sessions, intent, terms: scale, action, tuningTerms: tuning, work, rooms, readings, head: file.head, printedAt: new Date().toISOString().slice(0, 10) };
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
