import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { toast } from '../toast/toasts.ts';
import type { Contact } from './shop-queries.ts';
import { forgetPerson } from './shop-writing.ts';

/** Who a person is and how they are reached; corrected, handed out, or forgotten here. */
export function ContactFacts({ contact, onCorrect }: { readonly contact: Contact; readonly onCorrect: () => void }) {
  const say = useSay();
  const navigate = useNavigate();
  const [isAsked, setAsked] = useState(false);
  const [problem, setProblem] = useState<unknown>();
  const { id, details, roles, workshopId } = contact;
  const name = details?.name ?? say('shop.erased');
  const forget = (): void => {
    setProblem(undefined);
    forgetPerson(id).then(() => {
      toast(say('people.page.forgotten'));
      void navigate({ to: '/people', search: {} });
    }, (failure: unknown) => { setProblem(failure); setAsked(false); });
  };
  const facts = (['organisation', 'phone', 'email', 'address'] as const).filter((field) => (details?.[field] ?? '') !== '');
  return (
    <section className="panel" aria-labelledby="contact-name">
      <div className="row row-between">
        <h2 id="contact-name">{name} {workshopId === 'demo' && <span className="demo-tag">{say('shell.demo')}</span>}</h2>
        <span className="soft">{roles.map((one) => say(`shop.role.${one}`)).join(' · ')}</span>
      </div>
      <dl className="facts">
        {facts.map((field) => (
          <div key={field}>
            <dt>{say(`shop.field.details.${field}`)}</dt>
            <dd className="contact-fact">{details?.[field]}</dd>
          </div>
        ))}
      </dl>
      {details !== null && details.remark !== '' && <p className="remark">{details.remark}</p>}
      {problem !== undefined && <ProblemNote problem={problem} />}
      {isAsked && <p role="alert">{say('people.page.forget.hint', { name })}</p>}
      <div className="row no-print">
        {isAsked ? (
          <>
            <button type="button" className="button" onClick={() => { setAsked(false); }}>{say('shell.cancel')}</button>
            <button type="button" className="button button-bad" onClick={forget}>{say('people.page.forget.do', { name })}</button>
          </>
        ) : (
          <>
            <button type="button" className="button" onClick={onCorrect}>{say('people.page.correct')}</button>
            <a className="button" href={`/api/shop/people/${encodeURIComponent(id)}/export`} download={`person-${id.slice(0, 8)}.json`}>{say('people.page.export')}</a>
            <button type="button" className="button button-bad" onClick={() => { setAsked(true); }}>{say('people.page.forget')}</button>
          </>
        )}
      </div>
    </section>
  );
}
