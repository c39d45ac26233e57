import type { Reading } from '#instrument';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { pianoQuery } from '../api/queries.ts';
import { sayMaybe, useDays, useFigures, useMoments, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';

/** Where a figure came from: what was typed, when and by whom, and how the session weighed; `name` where readings of several quantities stand together. */
export function Provenance({ reading, name }: { readonly reading: Reading; readonly name?: string | undefined }) {
  const say = useSay();
  const figure = useFigures();
  const moment = useMoments();
  const dayOf = useDays();
  const { typed, at, by, basis, outcome, remark } = reading;
  const session = useSessionOf(reading);
  const step = session?.stepG ?? null;
  const rule = session?.rule ?? null;
  const told = [
    ...(name === undefined ? [] : [name]),
    say('shell.figure.typed', { typed: typed ?? (outcome === null ? '–' : say(`outcome.${outcome}`)), at: moment(at), basis: sayMaybe(say, `basis.${basis}`) }),
    ...(by === '' ? [] : [say('shell.figure.by', { by })]),
    ...(session === undefined ? [say('shell.figure.noSession')] : [
      session.weighedOn === null ? say('shell.figure.session', { day: moment(session.startedAt) }) : say('shell.figure.weighedOn', { day: dayOf(session.weighedOn) }),
      step === null ? say('shell.figure.stepNotStated') : say('shell.figure.step', { step: figure(step, decimalsFor(step, 2), 'g') }),
      rule === null ? say('shell.figure.ruleNotStated') : say('story.session.choice', { area: 'rule', value: rule }),
    ]),
    ...(remark === '' ? [] : [remark]),
  ];
  return <div className="soft small">{told.join(' · ')}</div>;
}

/** The session a reading was taken in, of the piano whose page is open. */
function useSessionOf({ sessionId }: Reading) {
  const { pianoId } = useParams({ strict: false });
  const { data } = useQuery({ ...pianoQuery(pianoId ?? ''), enabled: pianoId !== undefined && sessionId !== null });
  return data?.sessions.find(({ id }) => id === sessionId);
}
