import type { TouchAnalysis } from '#action';
import type { ProofInput } from '#proof';
import { useSyncExternalStore } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { outbox } from '../outbox/the-outbox.ts';
import { Note } from '../ui/note.tsx';

const statements = ['stepNotStated', 'ruleNotStated', 'dampersNotStated'] as const;
const facts = ['maker', 'serial', 'year', 'lengthMm'] as const;

/** What a proof would still lack if it were printed now: states, keys, statements of the weighing, facts of the card. */
export function ProofMissing({ input: { found, finished, intent, instrument } }: { readonly input: ProofInput }) {
  const say = useSay();
  const waiting = useWaiting();
  const unstated = statements.filter((caveat) => [found, finished].some((touch) => touch?.caveats.includes(caveat)));
  const blank = facts.filter((fact) => instrument[fact] === null || instrument[fact] === '');
  const lines = [
    ...(waiting > 0 ? [say('proof.missing.waiting', { count: waiting })] : []),
    ...(found === null ? [say('proof.missing.found')] : keysMissing(found).map((count) => say('proof.missing.keys', { count, keys: found.summary.keys, state: say('state.found') }))),
    ...(finished === null ? [say('proof.page.notFinished')] : keysMissing(finished).map((count) => say('proof.missing.keys', { count, keys: finished.summary.keys, state: say('state.finished') }))),
    ...(intent === null ? [say('proof.page.noIntent')] : []),
    ...unstated.map((caveat) => say(`caveat.${caveat}`)),
    ...(blank.length > 0 ? [say('proof.missing.facts', { facts: blank.map((fact) => say(`proof.fact.${fact === 'lengthMm' ? 'length' : fact}`)).join(', ') })] : []),
  ];
  if (lines.length === 0) return null;
  return (
    <Note tone={waiting > 0 || found === null || finished === null ? 'warn' : 'plain'}>
      <h2 className="note-title">{say('proof.missing')}</h2>
      <ul>
        {lines.map((line) => <li key={line}>{line}</li>)}
      </ul>
    </Note>
  );
}

/** How many keys a state has no weighing of, not even one that gave no number; none are left out. */
function keysMissing({ keys }: TouchAnalysis): readonly number[] {
  const count = keys.filter(({ figures }) => figures.outcome === undefined && (figures.downWeightG === undefined || figures.upWeightG === undefined)).length;
  return count === 0 ? [] : [count];
}

/** Figures typed here that the program has not taken yet: they stand on screen and not in the PDF. */
function useWaiting(): number {
  const { id } = usePiano();
  const { parcels } = useSyncExternalStore(outbox.subscribe, outbox.state);
  return parcels.filter(({ pianoId }) => pianoId === id).reduce((sum, { entries }) => sum + entries.length, 0);
}
