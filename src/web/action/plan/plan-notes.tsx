import { type KeyNumber, noteNameOf } from '#instrument';
import { explainIssue } from '#text';
import { planFlags } from '#action';
import { usePiano } from '../../api/piano.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import type { Plan } from './use-plan.ts';

/** Keys that cannot be as asked: which, by how much at most, and what would help. */
export function PlanFlags({ plan, onKey }: { readonly plan: Plan; readonly onKey: (key: KeyNumber) => void }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const groups = planFlags.flatMap((name) => {
    const keys = plan.keys.flatMap(({ plan: { key }, flags }) => flags.filter((flag) => flag.name === name).map(({ byG }) => ({ key, byG })));
    const worst = keys.reduce<(typeof keys)[number] | undefined>((most, each) => (most === undefined || each.byG > most.byG ? each : most), undefined);
    return worst === undefined ? [] : [{ name, keys, worst }];
  });
  if (groups.length === 0) return plan.keys.length === 0 ? null : <p className="soft">{say('plan.flags.none')}</p>;
  return (
    <section className="panel" aria-labelledby="plan-flags">
      <h2 id="plan-flags">{say('plan.flags')}</h2>
      <ul className="assumed">
        {groups.map(({ name, keys, worst }) => (
          <li key={name}>
            <strong>{say(`plan.flag.${name}`, { count: keys.length })}</strong> {say(`plan.flag.${name}.help`)}{' '}
            <span className="soft small">{sayRuns(keys.map(({ key }) => key), compass)}</span>{' '}
            {worst.byG > 1e-6 && <button type="button" className="button" onClick={() => { onKey(worst.key); }}>{say('plan.flag.worst', { note: noteNameOf(compass, worst.key), by: figure(worst.byG, 1, 'g') })}</button>}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What could not be planned and why, and what had to be assumed for the rest. */
export function PlanAssumed({ plan: { gathered: { assumed, missing, issues } } }: { readonly plan: Plan }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  return (
    <>
      {issues.length > 0 && <Note tone="warn" role="alert"><p>{say('plan.hammersRefused')} {issues.map((issue) => explainIssue(say, issue, locale)).join(' ')}</p></Note>}
      {missing.map(({ what, keys }) => <Note key={what} tone="warn"><p>{say(`plan.missing.${what}`)} <span className="soft small">{sayRuns(keys, compass)}</span></p></Note>)}
      {assumed.length > 0 && (
        <section className="panel" aria-labelledby="plan-assumed">
          <h2 id="plan-assumed">{say('plan.assumed')}</h2>
          <ul className="assumed">
            {assumed.map(({ what, keys }) => <li key={what}>{say(`plan.assumed.${what}`)} <span className="soft small">{sayRuns(keys, compass)}</span></li>)}
          </ul>
        </section>
      )}
    </>
  );
}
