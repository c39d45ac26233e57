import type { LeadedKey } from '#workshop';
import { useMemo } from 'react';
import { useFigures, useSay } from '../../language/use-say.ts';
import { inertiaChangeOf, meanInertiaOf } from './inertia.ts';
import type { LeadAnswer } from './leads-jobs.ts';

/** A change of less than this share of the hammers is called little. @source OWN: the whole prize of spreading leads is two or three per cent */
const LITTLE_PCT = 5;

/** What the leads do to the inertia over the keyboard, and how small that is beside the hammers. */
export function InertiaWords({ keys, answers }: { readonly keys: readonly LeadedKey[]; readonly answers: readonly LeadAnswer[] }) {
  const say = useSay();
  const figure = useFigures();
  const { beforeG, afterG, hammerG, atHammerG } = useMemo(() => {
    const byKey = new Map(keys.map((leaded) => [leaded.key, leaded]));
    return meanInertiaOf(answers.flatMap((answer) => {
      const leaded = byKey.get(answer.key);
      return leaded === undefined ? [] : [inertiaChangeOf(leaded, answer)];
    }));
  }, [keys, answers]);
  const share = hammerG === undefined ? undefined : (100 * (afterG - beforeG)) / hammerG;
  return (
    <>
      <h3>{say('leads.inertia')}</h3>
      <p>{say('leads.inertia.leads', { before: figure(beforeG, 1, 'g'), after: figure(afterG, 1, 'g'), count: answers.length })}</p>
      {share === undefined || hammerG === undefined || atHammerG === undefined ? <p className="soft small">{say('leads.inertia.noHammer')}</p> : (
        <p>
          {say('leads.inertia.hammer', { hammer: figure(hammerG, 0, 'g'), share: figure(share, 1, 'pct', true), grams: figure(atHammerG, 2, 'g', true) })}
          {Math.abs(share) < LITTLE_PCT && <> <strong>{say('leads.inertia.small')}</strong></>}
        </p>
      )}
    </>
  );
}
