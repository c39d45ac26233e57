import { explainIssue } from '#text';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useDraft } from '../../kept/draft.ts';
import { TakenUp } from '../../kept/taken-up.tsx';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useStateTerms } from '../../strings/use-state-terms.ts';
import { toast } from '../../toast/toasts.ts';
import { Field } from '../../ui/field.tsx';
import { type PushLine, emptyPushDraft, emptyPushLine, pushInputOf, pushOf } from './push-draft.ts';

/** Known loads on the bridge and how far it went down: the stiffness of the board, to be put into the terms. */
export function PushTestForm() {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  const { id, cycle, scale } = usePiano();
  const draft = useDraft(`push.${id}.${String(cycle)}`, () => emptyPushDraft);
  const { lines } = draft.typed;
  const result = useMemo(() => pushOf(draft.typed, locale), [draft.typed, locale]);
  const stating = useStateTerms();
  const change = (index: number, part: Partial<PushLine>): void => { draft.change((now) => ({ lines: now.lines.map((line, at) => (at === index ? { ...line, ...part } : line)) })); };
  const errorOf = (path: string): string | undefined => {
    const issue = result?.ok === false ? result.issues.find((one) => one.path === path && one.code !== 'required') : undefined;
    return issue === undefined ? undefined : explainIssue(say, issue, locale);
  };
  const whole = result?.ok === false ? result.issues.filter(({ path }) => path === 'readings' || path === 'readings[0].forceN') : [];
  const put = (): void => {
    if (result?.ok !== true) return;
    const { stiffnessNPerMm, stiffnessUncertaintyNPerMm } = result.value;
    stating.mutate({
      terms: { ...(scale ?? {}), boardStiffnessNPerMm: stiffnessNPerMm, boardStiffnessUncertaintyNPerMm: stiffnessUncertaintyNPerMm === undefined || stiffnessUncertaintyNPerMm <= 0 ? null : stiffnessUncertaintyNPerMm },
      onKept: () => { draft.change(() => emptyPushDraft); toast(say('belly.push.put')); },
    });
  };
  return (
    <section className="panel" aria-labelledby="push-title">
      <h2 id="push-title">{say('belly.push.title')}</h2>
      <p>{say('operation.push-test.help')}</p>
      {draft.isTakenUp && <TakenUp />}
      <ul className="push-lines">
        {lines.map((line, index) => (
          <li key={index}>
            <Field label={say('belly.push.force', { number: index + 1 })} inputMode="decimal" value={line.force} error={errorOf(`readings[${String(index)}].forceN`)} onChange={(force) => { change(index, { force }); }} />
            <Field label={say('belly.push.deflection', { number: index + 1 })} inputMode="decimal" value={line.deflection} error={errorOf(`readings[${String(index)}].deflectionMm`)} onChange={(deflection) => { change(index, { deflection }); }} />
          </li>
        ))}
      </ul>
      <div className="row">
        <button type="button" className="button" onClick={() => { draft.change((now) => ({ lines: [...now.lines, emptyPushLine] })); }}>{say('belly.push.more')}</button>
      </div>
      <div aria-live="polite">
        {whole.map((issue) => <p key={issue.code} className="field-error">✕ {explainIssue(say, issue, locale)}</p>)}
        {result?.ok === true && (
          <p>
            {say('belly.push.result')} <Figure value={result.value.stiffnessNPerMm} decimals={0} story={() => ({ title: say('belly.push.title'), operation: 'push-test', output: 'stiffnessNPerMm', input: pushInputOf(draft.typed, locale) })} />
            {result.value.stiffnessUncertaintyNPerMm !== undefined && <span className="soft"> ± {figure(2 * result.value.stiffnessUncertaintyNPerMm, 0)} (k = 2)</span>}
            {result.value.stiffnessUncertaintyNPerMm === undefined && <span className="soft"> · {say('belly.push.single')}</span>}
          </p>
        )}
      </div>
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      <div className="row">
        <button type="button" className="button button-main" disabled={result?.ok !== true || stating.isPending} onClick={put}>{say('belly.push.use')}</button>
      </div>
    </section>
  );
}
