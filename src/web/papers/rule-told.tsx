import type { PaperRule } from '#law';
import { type ConditionTold, conditionTold } from '#report';
import { languageOf } from '#text';
import { type ReactNode, useState } from 'react';
import { useDays, useLocale, useSay } from '../language/use-say.ts';
import { OutcomeSign } from './outcome-sign.tsx';

/** A rule whole: what it says, where and of what, when it holds and what follows otherwise, its papers, source, authority and days. */
export function RuleTold({ rule }: { readonly rule: PaperRule }) {
  const say = useSay();
  const locale = useLocale();
  const day = useDays();
  const language = languageOf(locale);
  const facts: readonly (readonly [label: string, told: ReactNode, className?: string])[] = [
    [say('papers.own.jurisdictions'), rule.jurisdictions.map((one) => say(`papers.jurisdiction.${one}`)).join(', ')],
    [say('papers.own.deeds'), rule.deeds.map((one) => say(`papers.deed.${one}`)).join(', ')],
    [say('papers.own.materials'), rule.materials.map((one) => say(`papers.material.${one}`)).join(', ')],
    [say('papers.own.conditions'), rule.when === undefined ? say('papers.when.always') : <Told told={conditionTold(rule.when, { say, locale })} />, 'papers-when'],
    ...(rule.otherwise === undefined ? [] : [[say('papers.own.otherwise'), <OutcomeSign key="otherwise" outcome={rule.otherwise} />] as const]),
    ...(rule.papers.length === 0 ? [] : [[say('papers.shipment.toHave'), rule.papers.map((words) => words[language]).join('\n')] as const]),
  ];
  return (
    <>
      <p><OutcomeSign outcome={rule.outcome} /> {rule.text[language]}</p>
      <dl className="papers-facts">{facts.map(([label, told, className]) => <div key={label} className={className}><dt>{label}</dt><dd>{told}</dd></div>)}</dl>
      <p className="soft small">
        {say('papers.reason.source', { source: rule.source, seen: say(`papers.seen.${rule.seen}`) })}. {say('papers.reason.authority', { authority: rule.authority[language] })}.{' '}
        {say(rule.effectiveUntil === undefined ? 'papers.reason.days' : 'papers.reason.until', { from: day(rule.effectiveFrom), until: day(rule.effectiveUntil ?? rule.effectiveFrom), checked: day(rule.lastChecked), review: day(rule.reviewBy) })}
      </p>
    </>
  );
}

function Told({ told: { text, parts } }: { readonly told: ConditionTold }) {
  return <>{text}{parts.length > 0 && <ul>{parts.map((part, index) => <li key={index}><Told told={part} /></li>)}</ul>}</>;
}

/** Every rule of a list, opened on asking. */
export function RulesTold({ title, rules }: { readonly title: string; readonly rules: readonly PaperRule[] }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={({ currentTarget }) => { setOpen(currentTarget.open); }}>
      <summary>{title}</summary>
      {isOpen && <ul className="papers-own">{rules.map((rule) => <li key={rule.id}><RuleTold rule={rule} /></li>)}</ul>}
    </details>
  );
}
