import { type Issue, type Result, ok, refuse } from '#result';
import { parseMeasure } from '#units';
import type { ShopCardDraft, StockLevel } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { type SyntheticEvent, useState } from 'react';
import { ApiProblem } from '../api/problem.ts';
import { pianoQuery } from '../api/queries.ts';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { addCard } from '../shop/shop-writing.ts';
import type { ShopBook } from '../shop/shop-queries.ts';
import { decimalsFor } from '../story/say-event.ts';
import { errorAt } from '../terms/error-at.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { dayHere } from '../ui/day-here.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { nameOfJob } from '../work/name-of-job.ts';

export type MoveKind = 'take' | 'put' | 'count';

interface MoveDialogProps {
  readonly level: StockLevel;
  readonly how: MoveKind;
  readonly book: ShopBook;
  /** Piano and job it is taken for, where that is known. */
  readonly known?: { readonly pianoId: string; readonly work: string };
  readonly onClose: () => void;
}

/** Takes something out of stock for a job, puts it in, or sets it to what was counted. */
export function MoveDialog({ level: { stock, level }, how, book, known, onClose }: MoveDialogProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const [typed, setTyped] = useState('');
  const [words, setWords] = useState('');
  const [pianoId, setPianoId] = useState(known?.pianoId ?? '');
  const [work, setWork] = useState(known?.work ?? '');
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [problem, setProblem] = useState<unknown>();
  const { data: file } = useQuery({ ...pianoQuery(pianoId), enabled: pianoId !== '' });
  const jobs = file?.work.filter(({ status }) => status !== 'dropped') ?? [];
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const amount = amountOf(typed, how, level, locale);
    setIssues(amount.ok ? [] : amount.issues);
    if (!amount.ok) return;
    const reason = ({ take: 'used', put: 'bought', count: 'counted' } as const)[how];
    const draft: ShopCardDraft = { kind: 'stockMove', stock: stock.id, on: dayHere(), amount: amount.value, reason, pianoId: pianoId === '' ? null : pianoId, work: work === '' ? null : work, details: { words } };
    setProblem(undefined);
    addCard(draft).then(onClose, (failure: unknown) => {
      if (failure instanceof ApiProblem) setIssues(failure.errors);
      setProblem(failure);
    });
  };
  const pianos = [...book.pianos].map(([value, label]) => ({ value, label }));
  return (
    <AppDialog title={`${say(`parts.move.${how}`)}: ${stock.name}`} isOpen onClose={onClose}>
      <form className="card-form" onSubmit={submit} noValidate>
        <p>{say('parts.move.there', { amount: say('parts.amount', { amount: figure(level, decimalsFor(level, 3)), unit: stock.unit }) })}</p>
        <Field label={say('parts.move.amount', { how, unit: stock.unit })} value={typed} onChange={setTyped} inputMode="decimal" error={errorAt(issues, 'amount', say, locale)} required />
        {how === 'take' && (
          <>
            <SelectField label={say('shop.field.pianoId')} value={pianoId} options={[{ value: '', label: say('shop.field.pianoId.none') }, ...pianos]} onChange={(id) => { setPianoId(id); setWork(''); }} />
            {jobs.length > 0 && <SelectField label={say('parts.move.job')} value={work} options={[{ value: '', label: say('parts.move.noJob') }, ...jobs.map((item) => ({ value: item.id, label: nameOfJob(say, item) }))]} onChange={setWork} />}
          </>
        )}
        <Field label={say('shop.field.details.words')} value={words} onChange={setWords} maxLength={4000} />
        {problem !== undefined && <ProblemNote problem={problem} />}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={onClose}>{say('shell.cancel')}</button>
          <button type="submit" className="button button-main">{say(`parts.move.${how}`)}</button>
        </div>
      </form>
    </AppDialog>
  );
}

/** What changes in stock: taken out below nought, a count the difference to what the book says. */
function amountOf(typed: string, how: MoveKind, level: number, locale: string): Result<number> {
  const parsed = parseMeasure(typed, { unit: '1', path: 'amount', locale });
  if (!parsed.ok) return parsed;
  const { value } = parsed.value;
  if (value < 0 || (value === 0 && how !== 'count')) return refuse({ code: 'range', path: 'amount', given: value, allowed: 'more than 0', params: { above: 0 } });
  if (how === 'count' && value === level) return refuse({ code: 'conflict', path: 'amount', given: value, allowed: 'another figure than the book has', params: { reason: 'sameCount' } });
  return ok(how === 'take' ? -value : how === 'put' ? value : Number((value - level).toPrecision(12)));
}
