import type { TuningStretch } from '#instrument';
import { LEAST_PASSES, learntDropsOf, raisePlanOf } from '#tuning';
import { cents } from '#units';
import { raiseInputOf, standingOfPasses } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { useShopPasses } from './use-passes.ts';

/** What a raise loses in this shop, stretch by stretch, and where to set what still stands flat. */
export function LearntRaise() {
  const say = useSay();
  const { passes } = usePiano();
  const shop = useShopPasses();
  if (shop === undefined) return null;
  const input = raiseInputOf(shop, standingOfPasses(passes));
  const learnt = learntDropsOf(input.passes.map((one) => ({ section: one.section, fromCents: cents(one.fromCents), setCents: cents(one.setCents), settledCents: cents(one.settledCents) })));
  const known = learnt.filter(({ drop }) => drop !== undefined);
  const few = learnt.filter(({ drop, passes: count, section }) => drop === undefined && (count > 0 || input.standing.some((one) => one.section === section)));
  if (known.length === 0 && few.length === 0) return null;
  return (
    <>
      <h3>{say('pass.learnt')}</h3>
      <p className="soft small">{say('pass.learnt.how')}</p>
      {known.length > 0 && <LearntTable known={known} input={input} />}
      {few.map(({ section, passes: count }) => <p key={section}>{say('pass.learnt.none', { stretch: say(`pass.stretch.${section}`), count, needed: LEAST_PASSES })}</p>)}
    </>
  );
}

interface LearntTableProps {
  readonly known: ReturnType<typeof learntDropsOf>;
  readonly input: ReturnType<typeof raiseInputOf>;
}

function LearntTable({ known, input }: LearntTableProps) {
  const say = useSay();
  const figure = useFigures();
  const sections = learntDropsOf([]).map(({ section }) => section);
  const isStanding = input.standing.length > 0;
  const story = (what: string, section: TuningStretch, output: string) => () => ({ title: `${what}, ${say(`pass.stretch.${section}`)}`, operation: 'pitch-raise', input, output });
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('pass.learnt')}</caption>
        <thead><tr><th scope="col">{say('pass.field.stretch')}</th><th scope="col">{say('pass.learnt.passes')}</th><th scope="col">{say('pass.learnt.share')}</th>{isStanding && <><th scope="col">{say('pass.learnt.stands')}</th><th scope="col">{say('pass.learnt.set')}</th><th scope="col">{say('pass.learnt.settles')}</th></>}</tr></thead>
        <tbody>
          {known.map((learnt) => {
            const { section, passes, drop } = learnt;
            if (drop === undefined) return null;
            const standing = input.standing.findIndex((one) => one.section === section);
            const from = input.standing[standing];
            const plan = from === undefined ? undefined : raisePlanOf(learnt, from.fromCents, from.targetCents);
            const place = input.standing.slice(0, standing).filter((one) => known.some((other) => other.section === one.section && raisePlanOf(other, one.fromCents) !== undefined)).length;
            return (
              <tr key={section}>
                <th scope="row">{say(`pass.stretch.${section}`)}</th><td>{passes}</td>
                <td><Figure value={100 * drop.share} decimals={0} unit="pct" story={story(say('pass.learnt.share'), section, `sections[${String(sections.indexOf(section))}].dropShare`)} /><span className="soft"> ± {figure(100 * drop.coverage * drop.shareUncertainty, 0)}</span></td>
                {isStanding && <><td>{from === undefined ? <span className="soft">–</span> : figure(from.fromCents, 1, 'ct', true)}</td>
                <td>{plan === undefined ? <span className="soft">–</span> : <Figure value={plan.setCents} decimals={1} unit="ct" signed story={story(say('pass.learnt.set'), section, `plans[${String(place)}].setCents`)} />}</td>
                <td>{plan === undefined ? <span className="soft">–</span> : `± ${figure(plan.settlesWithinCents, 1, 'ct')}`}</td></>}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
