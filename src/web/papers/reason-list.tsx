import { type FactName, type PaperReason, placeNameOf } from '#law';
import { languageOf } from '#text';
import { useDays, useLocale, useSay } from '../language/use-say.ts';
import { OutcomeSign } from './outcome-sign.tsx';

/** Every reason of an outcome, opened down to the rule, its source, its authority and its days. */
export function ReasonList({ reasons }: { readonly reasons: readonly PaperReason[] }) {
  return <ul className="papers-reasons">{reasons.map((reason) => <Reason key={[reason.kind, reason.place, reason.material, reason.rule?.id].join(' ')} reason={reason} />)}</ul>;
}

function Reason({ reason: { kind, outcome, place, material, rule, missing, wouldBe } }: { readonly reason: PaperReason }) {
  const say = useSay();
  const locale = useLocale();
  const day = useDays();
  const where = placeNameOf(place, say, locale);
  const facts = missing.map((fact: FactName) => say(`field.${fact}`)).join('; ');
  return (
    <li>
      <p><OutcomeSign outcome={outcome} /> <strong>{material === undefined ? where : say('papers.reason.at', { place: where, material: say(`papers.material.${material}`) })}</strong></p>
      {rule !== undefined && <p>{rule.text[languageOf(locale)]}</p>}
      <p>{say(`papers.reason.${kind}`, { facts, day: rule === undefined ? '' : day(rule.reviewBy), place: where })}{wouldBe !== undefined && ` ${say('papers.reason.wouldBe', { outcome: say(`papers.outcome.${wouldBe}`) })}`}</p>
      {rule !== undefined && (
        <p className="soft small">
          {say('papers.reason.source', { source: rule.source, seen: say(`papers.seen.${rule.seen}`) })}. {say('papers.reason.authority', { authority: rule.authority[languageOf(locale)] })}.{' '}
          {say(rule.effectiveUntil === undefined ? 'papers.reason.days' : 'papers.reason.until', { from: day(rule.effectiveFrom), until: day(rule.effectiveUntil ?? rule.effectiveFrom), checked: day(rule.lastChecked), review: day(rule.reviewBy) })}
        </p>
      )}
    </li>
  );
}
