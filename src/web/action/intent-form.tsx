import type { TouchAnalysis } from '#action';
import type { TouchIntent } from '#instrument';
import type { Issue } from '#result';
import { explainIssue } from '#text';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { CurveFields } from './curve-fields.tsx';
import { IntentConsequence } from './intent-consequence.tsx';
import { type IntentDraft, draftOf, intentOf } from './intent-draft.ts';

interface IntentFormProps {
  readonly analysis: TouchAnalysis | undefined;
  /** `onKept` is to be called once the intent stands. */
  readonly onState: (intent: TouchIntent, onKept: () => void) => void;
  readonly onCancel?: () => void;
  readonly isBusy: boolean;
}

const choices = ['downWeight', 'balanceWeight', 'curve'] as const;

/** Asks what is to be even and how even, and shows at once what up weight would follow. */
export function IntentForm({ analysis, onState, onCancel, isBusy }: IntentFormProps) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle, compass, intent } = usePiano();
  const { typed: draft, change: turn, drop, isTakenUp } = useDraft<IntentDraft>(`intent.${id}.${String(cycle)}`, () => draftOf(intent, compass, locale));
  const [isAsked, setAsked] = useState(false);
  const result = useMemo(() => intentOf(draft, compass, locale), [draft, compass, locale]);
  const issues: readonly Issue[] = isAsked && !result.ok ? result.issues : [];
  const errorOf = (path: string): string | undefined => {
    const issue = issues.find((one) => one.path === path);
    return issue === undefined ? undefined : explainIssue(say, issue, locale);
  };
  const change = (part: Partial<IntentDraft>): void => { turn((before) => ({ ...before, ...part })); };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (result.ok) onState(result.value, drop);
  };
  return (
    <form className="panel" onSubmit={submit} noValidate>
      {isTakenUp && <TakenUp />}
      <Choice
        label={say('action.intent.question')}
        value={draft.even ?? ''}
        options={choices.map((even) => ({ value: even, label: say(`intent.${even}`) }))}
        onChange={(even) => { if (even !== '') change({ even }); }}
        hint={errorOf('even') ?? (draft.even === null ? say('action.intent.whyAsked') : say(`intent.${draft.even}.consequence`))}
      />
      {draft.even !== null && (
        <>
          <div className="fields">
            {draft.even !== 'curve' && <Field label={say('intent.target')} inputMode="decimal" required value={draft.target} error={errorOf('target')} hint={say('action.intent.target.hint')} onChange={(target) => { change({ target }); }} />}
            <Field label={say('intent.tolerance')} inputMode="decimal" required value={draft.tolerance} error={errorOf('tolerance')} hint={say('action.intent.tolerance.hint')} onChange={(tolerance) => { change({ tolerance }); }} />
            <Field label={say('intent.upWeightMin')} inputMode="decimal" value={draft.upWeightMin} error={errorOf('upWeightMin')} hint={say('action.intent.upWeightMin.hint')} onChange={(upWeightMin) => { change({ upWeightMin }); }} />
          </div>
          {draft.even === 'curve' && <CurveFields anchors={draft.anchors} errorOf={errorOf} onChange={(anchors) => { change({ anchors }); }} />}
          {result.ok && analysis !== undefined && <IntentConsequence intent={result.value} analysis={analysis} />}
        </>
      )}
      <div className="row">
        <button type="submit" className="button button-main" disabled={isBusy}>{say('action.intent.state')}</button>
        {onCancel !== undefined && <button type="button" className="button" onClick={() => { drop(); onCancel(); }}>{say('action.intent.cancel')}</button>}
      </div>
    </form>
  );
}
