import type { Estimate, Quote } from '#workshop';
import { type SyntheticEvent, useId, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { errorAt } from '../terms/error-at.ts';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { CustomerField } from './customer-field.tsx';
import { type QuoteForm as Form, quoteDraftOf, quoteFormOf } from './quote-draft.ts';
import { useQuoting } from './use-worth.ts';

interface QuoteFormProps {
  readonly estimate: Estimate;
  readonly from?: Quote;
  /** A new quote, a draft to be corrected, or a new version of one that was sent. */
  readonly as: 'new' | 'draft' | 'version';
  readonly onClose: () => void;
}

/** What a quote says beside its lines: which way, how long it holds, when what is paid, what is not included. */
export function QuoteForm({ estimate, from, as, onClose }: QuoteFormProps) {
  const say = useSay();
  const locale = useLocale();
  const title = useId();
  const { id, cycle } = usePiano();
  const draft = useDraft<Form>(`worth.quote.${id}.${as}.${from?.id ?? String(cycle)}`, () => quoteFormOf(from, estimate, { say, locale }));
  const { typed: form, change } = draft;
  const [isAsked, setAsked] = useState(false);
  const quoting = useQuoting();
  const replaces = as === 'version' ? (from?.id ?? null) : as === 'draft' ? (from?.replaces ?? null) : null;
  const result = useMemo(() => quoteDraftOf(form, { cycle, replaces, locale }), [form, cycle, replaces, locale]);
  const errorOf = (path: string): string | undefined => errorAt(isAsked && !result.ok ? result.issues : [], path, say, locale);
  const set = (part: Partial<Form>): void => { change((now) => ({ ...now, ...part })); };
  const setStage = (index: number, part: Partial<Form['stages'][number]>): void => { set({ stages: form.stages.map((stage, at) => (at === index ? { ...stage, ...part } : stage)) }); };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (!result.ok) return;
    const onKept = (): void => { draft.drop(); onClose(); };
    quoting.mutate(as === 'draft' && from !== undefined ? { kind: 'change', id: from.id, draft: result.value, onKept } : { kind: 'add', draft: result.value, onKept });
  };
  return (
    <form className="worth-form" onSubmit={submit} noValidate aria-labelledby={title}>
      <h3 id={title}>{say(as === 'draft' ? 'quote.change' : as === 'version' ? 'quote.newVersion' : 'quote.new')}</h3>
      {draft.isTakenUp && <TakenUp />}
      <div className="fields">
        <SelectField label={say('quote.field.alternative')} value={form.alternative} options={estimate.alternatives.map((way) => ({ value: way.id, label: way.words }))} onChange={(alternative) => { set({ alternative }); }} />
        <DayField label={say('quote.field.validUntil')} value={form.validUntil} hint={errorOf('validUntil') ?? ''} onChange={(validUntil) => { set({ validUntil }); }} />
        <CustomerField value={form.customer} error={errorOf('customer')} onChange={(customer) => { set({ customer }); }} />
      </div>
      <fieldset className="worth-ways">
        <legend>{say('quote.field.stages')}</legend>
        {form.stages.map((stage, index) => {
          const number = index + 1;
          return (
            <div className="row" key={index}>
              <Field label={say('quote.stage.words', { number })} value={stage.words} maxLength={120} error={errorOf(`stages[${String(index)}].words`)} onChange={(words) => { setStage(index, { words }); }} />
              <Field label={say('quote.stage.share')} value={stage.share} inputMode="decimal" width="8rem" error={errorOf(`stages[${String(index)}].share`)} onChange={(share) => { setStage(index, { share }); }} />
              <button type="button" className="button button-quiet" onClick={() => { set({ stages: form.stages.filter((_, at) => at !== index) }); }}>{say('quote.stage.drop', { number })}</button>
            </div>
          );
        })}
        {form.stages.length < 12 && <div><button type="button" className="button" onClick={() => { set({ stages: [...form.stages, { words: '', share: '' }] }); }}>{say('quote.stage.add')}</button></div>}
      </fieldset>
      <Field label={say('quote.field.notIncluded')} value={form.notIncluded} lines={4} error={errorOf('notIncluded')} onChange={(notIncluded) => { set({ notIncluded }); }} />
      <Field label={say('quote.field.remark')} value={form.remark} lines={3} maxLength={2000} onChange={(remark) => { set({ remark }); }} />
      {quoting.error !== null && <ProblemNote problem={quoting.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={quoting.isPending}>{say('quote.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
