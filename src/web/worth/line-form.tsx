import type { LearntHours } from '#estimate';
import type { Estimate, EstimateLine } from '#workshop';
import { type SyntheticEvent, useId, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { errorAt } from '../terms/error-at.ts';
import { CheckGroup } from '../ui/check-group.tsx';
import { Field } from '../ui/field.tsx';
import { type LineForm as Form, type LineKind, estimateWithLine, lineFormOf } from './line-draft.ts';
import { MoneyField } from './money-field.tsx';
import { shownFigure } from './typed-money.ts';
import { useStateEstimate } from './use-worth.ts';

interface LineFormProps {
  readonly estimate: Estimate;
  readonly kind: LineKind;
  /** Absent for a new one. */
  readonly line?: EstimateLine | undefined;
  readonly learnt: readonly LearntHours[];
  readonly onClose: () => void;
}

type Ask = { readonly name: Exclude<keyof Form, 'ways' | 'words'>; readonly hint?: string; readonly isText?: true };

/** One line of the estimate: kept, or corrected. Half-filled it stays on the device. */
export function LineForm({ estimate, kind, line, learnt, onClose }: LineFormProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const title = useId();
  const { id, cycle } = usePiano();
  const draft = useDraft<Form>(`worth.line.${id}.${String(cycle)}.${line?.id ?? `new.${kind}`}`, () => lineFormOf(line, estimate, locale));
  const { typed: form, change } = draft;
  const [isAsked, setAsked] = useState(false);
  const stating = useStateEstimate();
  const result = useMemo(() => estimateWithLine(estimate, kind, form, { standing: line, locale }), [estimate, kind, form, line, locale]);
  const errorOf = (path: string): string | undefined => errorAt(isAsked && !result.ok ? result.issues : [], path, say, locale);
  const set = (part: Partial<Form>): void => { change((now) => ({ ...now, ...part })); };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (result.ok) stating.mutate({ estimate: result.value, onKept: () => { draft.drop(); onClose(); } });
  };
  const known = learnt.find(({ operation }) => operation === form.operation.trim());
  const likely = Number(form.likely.replace(',', '.'));
  const learntPoints = known === undefined ? undefined : likely > 0 ? [likely * known.lowFactor, likely * known.factor, likely * known.highFactor] as const : [known.hours.low, known.hours.likely, known.hours.high] as const;
  const hintOfLikely = learntPoints === undefined ? undefined : say('worth.learnt.line', { hours: learntPoints.map((hours) => figure(hours, 1)).join(' – ') });
  const takeLearnt = (): void => {
    const [low = '', middle = '', high = ''] = (learntPoints ?? []).map((hours) => shownFigure(Math.round(hours * 10) / 10, locale));
    set({ low, likely: middle, high });
  };

  const asked: readonly Ask[] = kind === 'labour'
    ? [{ name: 'operation', hint: say('worth.line.operationHint'), isText: true }, { name: 'low' }, { name: 'likely', ...(hintOfLikely === undefined ? {} : { hint: hintOfLikely }) }, { name: 'high' }, { name: 'chancePct', hint: say('worth.line.chanceHint') }, { name: 'rateMinor' }, { name: 'actualH' }]
    : [{ name: 'priceMinor' }, ...(kind === 'part' ? [{ name: 'quantity' } as const] : []), { name: 'leadDays' }, { name: 'supplier', isText: true }];
  return (
    <form className="worth-form" onSubmit={submit} noValidate aria-labelledby={title}>
      <h3 id={title}>{say(`worth.line.kind.${kind}`)}</h3>
      {draft.isTakenUp && <TakenUp />}
      <Field label={say('worth.line.words')} value={form.words} maxLength={300} error={isAsked && form.words.trim() === '' ? say('worth.line.wordsNeeded') : undefined} onChange={(words) => { set({ words }); }} />
      <div className="fields">
        {asked.map(({ name, hint, isText }) => {
          const shared = { label: say(`worth.line.${name}`, { currency: estimate.currency }), value: form[name], error: errorOf(name), hint, onChange: (typed: string): void => { set({ [name]: typed }); } };
          return name.endsWith('Minor') ? <MoneyField key={name} {...shared} currency={estimate.currency} /> : <Field key={name} {...shared} inputMode={isText === true ? 'text' : 'decimal'} />;
        })}
      </div>
      {kind === 'labour' && learntPoints !== undefined && form.low === '' && form.likely === '' && form.high === '' && <div><button type="button" className="button" onClick={takeLearnt}>{say('worth.learnt.take')}</button></div>}
      <CheckGroup
        label={say('worth.line.ways')} options={estimate.alternatives.map((way) => ({ value: way.id, label: way.words }))} chosen={form.ways}
        error={isAsked && form.ways.length === 0 ? say('worth.line.waysNone') : undefined} onChange={(ways) => { set({ ways }); }}
      />
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={stating.isPending}>{say('worth.line.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
