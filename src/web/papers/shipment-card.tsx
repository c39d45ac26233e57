import { mayBeBarred, papersAsked, placeNameOf, toFindOf } from '#law';
import { languageOf } from '#text';
import type { JudgedShipment } from '#workshop';
import { OpenFigure } from '../figure/figure.tsx';
import { useDays, useLocale, useSay } from '../language/use-say.ts';
import { OutcomeSign } from './outcome-sign.tsx';
import { PapersInHand } from './papers-in-hand.tsx';
import { outcomeStory } from './papers-stories.ts';
import { ReasonList } from './reason-list.tsx';

interface ShipmentCardProps {
  readonly judged: JudgedShipment;
  /** Name of the person it is with, where there is one. */
  readonly person: string | undefined;
  readonly onCorrect: () => void;
  readonly onWithdraw: () => void;
}

/** One sale, shipment or journey: what the rules of its day come to, why, and what is still to be done. */
export function ShipmentCard({ judged, person, onCorrect, onWithdraw }: ShipmentCardProps) {
  const say = useSay();
  const locale = useLocale();
  const day = useDays();
  const { shipment, outcome, reasons, materials, issued } = judged;
  const { from, to, action, on, status, details } = shipment;
  const title = say(from === to ? 'papers.shipment.titleHome' : 'papers.shipment.title', { action: say(`papers.action.${action}`), from: placeNameOf(from, say, locale), to: placeNameOf(to, say, locale), day: day(on) });
  const about = [say(`shop.status.${status}`), person === undefined ? '' : say('papers.shipment.person', { name: person }), say('papers.shipment.rules', { day: day(issued) })].filter((part) => part !== '').join(' · ');
  return (
    <article className="papers-shipment" aria-label={title}>
      <div className="row row-between">
        <h3>{title}</h3>
        <OutcomeSign outcome={outcome} />
      </div>
      {mayBeBarred(judged) && <p className="papers-stale"><span aria-hidden="true">! </span>{say('papers.outcome.mayBeBarred')}</p>}
      <p className="soft small">{about}</p>
      {details !== null && details.words !== '' && <p className="remark">{details.words}</p>}
      {materials.length === 0 ? <p>{say('papers.shipment.nothing')}</p> : (
        <>
          <h4>{say('papers.shipment.byMaterial')}</h4>
          <ul className="papers-by-material">
            {materials.map((one) => (
              <li key={one.record?.id ?? 'crate'}>
                {one.record === undefined ? say('papers.shipment.crate') : `${say(`papers.material.${one.record.material}`)}, ${one.record.where}`}{': '}
                <OpenFigure story={() => outcomeStory(one, judged, say)}><OutcomeSign outcome={one.outcome} /></OpenFigure>
              </li>
            ))}
          </ul>
        </>
      )}
      <PapersInHand shipment={shipment} asked={papersAsked(reasons)} />
      <Wanted title={say('papers.shipment.toFind')} items={toFindOf(reasons, say)} />
      <Wanted title={say('papers.shipment.toAsk')} items={[...new Set(reasons.flatMap(({ rule }) => (rule === undefined ? [] : [rule.authority[languageOf(locale)]])))]} />
      {reasons.length > 0 && (
        <details>
          <summary>{say('papers.shipment.reasons', { count: reasons.length })}</summary>
          <ReasonList reasons={reasons} />
        </details>
      )}
      <div className="row no-print">
        <button type="button" className="button" aria-label={say('papers.materials.edit', { what: title })} onClick={onCorrect}>{say('papers.correct')}</button>
        <button type="button" className="button button-quiet" aria-label={say('papers.materials.withdraw', { what: title })} onClick={onWithdraw}>{say('papers.withdraw')}</button>
      </div>
    </article>
  );
}

function Wanted({ title, items }: { readonly title: string; readonly items: readonly string[] }) {
  if (items.length === 0) return null;
  return <><h4>{title}</h4><ul>{items.map((item) => <li key={item}>{item}</li>)}</ul></>;
}
