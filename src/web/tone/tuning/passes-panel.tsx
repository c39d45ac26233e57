import type { TuningPass } from '#instrument';
import { unitSign } from '#units';
import { inOrder, settledPassesOf } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useDays, useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { LearntRaise } from './learnt-raise.tsx';
import { PassForm } from './pass-form.tsx';
import { usePassing } from './use-passes.ts';

/** The passes over the strings of this stay, the form to note one, and what the shop has learnt from all of its own. */
export function PassesPanel({ isNoting, onNote }: { readonly isNoting: boolean; readonly onNote: (isNoting: boolean) => void }) {
  const say = useSay();
  const { passes, isCurrent } = usePiano();
  const [corrected, correct] = useState<TuningPass>();
  return (
    <section className="panel" aria-labelledby="pass-title">
      <div className="row row-between">
        <h2 id="pass-title">{say('pass.title')}</h2>
        {isCurrent && !isNoting && <button type="button" className="button no-print" onClick={() => { correct(undefined); onNote(true); }}>{say('pass.add')}</button>}
      </div>
      <p className="soft small">{say('pass.how')}</p>
      <Note tone="warn"><p>{say('pass.caution')}</p></Note>
      {(isNoting || corrected !== undefined) && <PassForm key={corrected?.id ?? 'new'} pass={corrected} onClose={() => { correct(undefined); onNote(false); }} />}
      {passes.length === 0 ? <p>{say('pass.none')}</p> : <PassTable onCorrect={(pass) => { onNote(false); correct(pass); }} />}
      <LearntRaise />
    </section>
  );
}

function PassTable({ onCorrect }: { readonly onCorrect: (pass: TuningPass) => void }) {
  const say = useSay();
  const figure = useFigures();
  const dayOf = useDays();
  const { passes, isCurrent } = usePiano();
  const passing = usePassing();
  const settled = useMemo(() => new Map(settledPassesOf(passes).map((one) => [one.pass.id, one])), [passes]);
  const cents = (value: number | null | undefined) => (value == null ? <span className="soft">–</span> : figure(value, 1, undefined, true));
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('pass.title')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('pass.field.day')}</th><th scope="col">{say('pass.field.stretch')}</th>
            <th scope="col">{say('pass.field.foundCt')} ({unitSign.ct})</th><th scope="col">{say('pass.field.leftCt')} ({unitSign.ct})</th><th scope="col">{say('pass.settled')} ({unitSign.ct})</th>
            {isCurrent && <th scope="col" className="no-print"><span className="visually-hidden">{say('pass.change')}</span></th>}
          </tr>
        </thead>
        <tbody>
          {inOrder(passes).map((pass) => {
            const after = settled.get(pass.id);
            const what = `${say(`pass.stretch.${pass.stretch}`)}, ${dayOf(pass.day)}`;
            return (
              <tr key={pass.id}>
                <th scope="row">{dayOf(pass.day)}{pass.time !== null && <span className="soft"> {pass.time}</span>}{pass.remark !== '' && <div className="soft small">{pass.remark}</div>}</th>
                <td>{say(`pass.stretch.${pass.stretch}`)}</td>
                <td>{cents(pass.foundCt)}</td><td>{cents(pass.leftCt)}</td>
                <td>{cents(after?.settledCt)}{after?.afterHours !== undefined && <span className="soft small"> {say('pass.after', { hours: figure(after.afterHours, Number.isInteger(after.afterHours) ? 0 : 1) })}</span>}</td>
                {isCurrent && (
                  <td className="no-print">
                    <span className="row pass-doings">
                      <button type="button" className="button button-quiet" aria-label={say('pass.change.of', { what })} onClick={() => { onCorrect(pass); }}>{say('pass.change')}</button>
                      <button type="button" className="button button-quiet" aria-label={say('pass.withdraw.of', { what })} disabled={passing.isPending} onClick={() => { passing.mutate({ kind: 'withdraw', id: pass.id }); }}>{say('pass.withdraw')}</button>
                    </span>
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
