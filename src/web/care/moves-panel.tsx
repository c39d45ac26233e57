import { type CareOf, careOf } from '#workshop';
import { useState } from 'react';
import { useSheetAddress } from '../action/regulation/sheet-links.tsx';
import { usePiano } from '../api/piano.tsx';
import { useDays, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { LoanCompare } from '../shop/loan-compare.tsx';
import { useCaring } from './care-queries.ts';
import { MoveFacts } from './move-facts.tsx';
import { MoveForm } from './move-form.tsx';

/** The moves of a piano, the latest first, with what each asks of floor and air, and the sheet that goes with the latest. */
export function MovesPanel() {
  const say = useSay();
  const { file: { care }, isCurrent } = usePiano();
  const address = useSheetAddress('move', 'finished');
  const [form, open] = useState<CareOf<'move'> | 'new'>();
  const moves = careOf(care, 'move').toSorted((a, b) => b.on.localeCompare(a.on));
  const isSheeted = moves.some(({ status }) => status !== 'cancelled');
  return (
    <section className="panel" aria-labelledby="care-moves">
      <div className="row row-between">
        <h2 id="care-moves">{say('care.moves')}</h2>
        <span className="row no-print">
          {isSheeted && <a className="button" href={address('pdf')} target="_blank" rel="noreferrer">{say('sheet.move.pdf')}</a>}
          {isCurrent && form === undefined && <button type="button" className="button" onClick={() => { open('new'); }}>{say('care.move.add')}</button>}
        </span>
      </div>
      {form !== undefined && isCurrent && <MoveForm key={form === 'new' ? 'new' : form.id} move={form === 'new' ? undefined : form} onClose={() => { open(undefined); }} />}
      {moves.length === 0 ? <p>{say('care.moves.none')}</p> : moves.map((move) => <Move key={move.id} move={move} onChange={isCurrent ? () => { open(move); } : undefined} />)}
    </section>
  );
}

function Move({ move, onChange }: { readonly move: CareOf<'move'>; readonly onChange: (() => void) | undefined }) {
  const say = useSay();
  const day = useDays();
  const caring = useCaring();
  const place = (name: string): string => (name === '' ? say('story.notStated') : name);
  const title = say('care.move.title', { on: day(move.on), from: place(move.fromPlace), to: place(move.toPlace) });
  return (
    <article className="care-move">
      <div className="row row-between">
        <h3>{title} <span className="soft">{say(`care.move.status.${move.status}`)}</span></h3>
        {onChange !== undefined && (
          <span className="row no-print">
            <button type="button" className="button button-quiet" aria-label={say('care.change.of', { what: title })} onClick={onChange}>{say('care.change')}</button>
            <button type="button" className="button button-quiet" aria-label={say('care.withdraw.of', { what: title })} disabled={caring.isPending} onClick={() => { caring.mutate({ kind: 'withdraw', id: move.id }); }}>{say('care.withdraw')}</button>
          </span>
        )}
      </div>
      {caring.error !== null && <ProblemNote problem={caring.error} />}
      <MoveFacts move={move} />
      <LoanCompare loan={move} />
      {move.remark !== '' && <p className="remark">{move.remark}</p>}
    </article>
  );
}
