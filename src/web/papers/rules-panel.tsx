import { rulesOn } from '#law';
import type { CardOf, RuleBook, ShopCard } from '#workshop';
import { useState } from 'react';
import { useDays, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { withdrawCard } from '../shop/shop-writing.ts';
import { OwnRuleDialog } from './own-rule-dialog.tsx';
import { isPlainRule } from './own-rule-form.ts';
import { RuleFilePick } from './rule-file-pick.tsx';
import { RuleTold, RulesTold } from './rule-told.tsx';

type OwnRule = CardOf<'ownRule'>;

/** Which rules are in use, which were before, what is to be read anew, and the shop's own. */
export function RulesPanel({ cards, rules, today }: { readonly cards: readonly ShopCard[]; readonly rules: RuleBook; readonly today: string }) {
  const say = useSay();
  const day = useDays();
  const [open, setOpen] = useState<{ readonly card?: OwnRule }>();
  const [problem, setProblem] = useState<unknown>();
  const inUse = rulesOn(today, rules.files, rules.own);
  const stale = inUse.rules.filter(({ reviewBy }) => reviewBy < today);
  const next = inUse.rules.map(({ reviewBy }) => reviewBy).sort()[0];
  const own = cards.filter((card): card is OwnRule => card.kind === 'ownRule');
  const takenOn = (issued: string): string | undefined => cards.find((card) => card.kind === 'ruleFile' && card.file.issued === issued)?.at;
  const withdraw = (card: OwnRule): void => { setProblem(undefined); withdrawCard(card.id).catch(setProblem); };
  return (
    <section className="panel" aria-labelledby="papers-rules">
      <h2 id="papers-rules">{say('papers.rules')}</h2>
      <p>{say('papers.rules.inUse', { count: inUse.rules.length, day: day(inUse.issued) })}</p>
      {stale.length > 0 ? <p className="papers-stale"><span aria-hidden="true">! </span>{say('papers.rules.stale', { count: stale.length, names: stale.map(({ id }) => id).join(', ') })}</p> : next !== undefined && <p className="soft">{say('papers.rules.fresh', { day: day(next) })}</p>}
      <ul>
        {rules.files.map(({ issued, rules: all }) => {
          const at = takenOn(issued);
          return <li key={issued}>{say('papers.rules.file', { day: day(issued), count: all.length, how: at === undefined ? say('papers.rules.shipped') : say('papers.rules.taken', { day: day(at) }) })}<RulesTold title={say('papers.rules.read', { count: all.length, day: day(issued) })} rules={all} /></li>;
        })}
      </ul>
      <RuleFilePick inUse={rules.files.find(({ issued }) => issued === inUse.issued)} />
      <h3>{say('papers.rules.own')}</h3>
      {own.length === 0 && <p>{say('papers.rules.ownNone')}</p>}
      <ul className="papers-own">
        {own.map((card) => (
          <li key={card.id}>
            <RuleTold rule={card.rule} />
            {!isPlainRule(card.rule) && <p>{say('papers.own.notPlain')}</p>}
            <span className="row no-print">
              {isPlainRule(card.rule) && <button type="button" className="button" aria-label={say('papers.materials.edit', { what: card.rule.text.en })} onClick={() => { setOpen({ card }); }}>{say('papers.correct')}</button>}
              <button type="button" className="button button-quiet" aria-label={say('papers.materials.withdraw', { what: card.rule.text.en })} onClick={() => { withdraw(card); }}>{say('papers.withdraw')}</button>
            </span>
          </li>
        ))}
      </ul>
      <div className="no-print"><button type="button" className="button" onClick={() => { setOpen({}); }}>{say('papers.rules.addOwn')}</button></div>
      {problem !== undefined && <ProblemNote problem={problem} />}
      {open !== undefined && <OwnRuleDialog key={open.card?.id ?? 'new'} card={open.card} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}
