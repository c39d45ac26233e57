import { octaveBands } from '#room';
import type { CardOf } from '#workshop';
import { useState } from 'react';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { FieldsDialog } from '../papers/fields-dialog.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { cardChangeOf } from '../shop/card-form.ts';
import { addCard, changeCard, withdrawCard } from '../shop/shop-writing.ts';
import { standardDraftOf, standardFields, standardFormOf } from './standard-form.ts';
import { useStandards } from './use-standards.ts';

type Standard = CardOf<'standard'>;

/** Targets of reverberation the shop owns: those of a standard it bought, or its own. Each room may take one over. */
export function StandardsPanel() {
  const say = useSay();
  const { standards, error, refetch } = useStandards();
  const [open, setOpen] = useState<{ readonly card?: Standard }>();
  const [problem, setProblem] = useState<unknown>();
  const withdraw = (card: Standard): void => { setProblem(undefined); withdrawCard(card.id).catch(setProblem); };
  return (
    <section className="panel" aria-labelledby="room-standards">
      <div className="row row-between">
        <h3 id="room-standards">{say('standard.title')}</h3>
        <button type="button" className="button no-print" onClick={() => { setOpen({}); }}>{say('standard.add')}</button>
      </div>
      <p className="soft small">{say('standard.about')}</p>
      {error !== null && <ProblemNote problem={error} onRetry={refetch} />}
      {standards?.length === 0 && <p>{say('standard.none')}</p>}
      <ul className="room-standards">{standards?.map((card) => <StandardItem key={card.id} card={card} onCorrect={() => { setOpen({ card }); }} onWithdraw={() => { withdraw(card); }} />)}</ul>
      {problem !== undefined && <ProblemNote problem={problem} />}
      {open !== undefined && <StandardDialog key={open.card?.id ?? 'new'} card={open.card} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}

function StandardItem({ card: { target }, onCorrect, onWithdraw }: { readonly card: Standard; readonly onCorrect: () => void; readonly onWithdraw: () => void }) {
  const say = useSay();
  const figure = useFigures();
  const { name, time, lower, upper, volumes, source } = target;
  const formula = 'fixedS' in time ? say('standard.fixed', { time: figure(time.fixedS, 2, 's') }) : say('standard.formula', { slope: figure(time.slopeS, 2), offset: figure(time.offsetS, 2), sign: time.offsetS < 0 ? 'minus' : 'plus', size: figure(Math.abs(time.offsetS), 2) });
  const allowed = octaveBands.map((band, index) => `${String(band)} Hz ${figure(lower[index] ?? 1, 2)}–${figure(upper[index] ?? 1, 2)}`).join('; ');
  return (
    <li>
      <p><strong>{name}</strong>: {formula}{volumes !== null && ` ${say('standard.volumes', { from: figure(volumes.fromM3, 0), to: figure(volumes.toM3, 0) })}`}</p>
      <p className="soft small">{say('standard.allowed', { shares: allowed })} {source === '' ? say('standard.noSource') : source}</p>
      <span className="row no-print">
        <button type="button" className="button" aria-label={say('standard.edit', { what: name })} onClick={onCorrect}>{say('papers.correct')}</button>
        <button type="button" className="button button-quiet" aria-label={say('standard.withdraw', { what: name })} onClick={onWithdraw}>{say('papers.withdraw')}</button>
      </span>
    </li>
  );
}

function StandardDialog({ card, onClose }: { readonly card: Standard | undefined; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  return (
    <FieldsDialog
      title={say('shop.kind.standard')} name={`room.standard.${card?.id ?? 'new'}`} fields={standardFields} base={() => standardFormOf(card?.target, locale)}
      stated={(form) => standardDraftOf(form, locale)} keep={(draft) => (card === undefined ? addCard(draft) : changeCard(card.id, cardChangeOf(card, draft)))} onClose={onClose}
    />
  );
}
