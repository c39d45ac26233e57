import { woodMoistureOf } from '#materials';
import { LEAST_SPANS, type TuningDrift, tuningDriftOf } from '#tuning';
import { celsius, cents, percent, unitSign } from '#units';
import { type DriftDay, driftDaysOf, suggestedVisitOf } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import type { FigureStory } from '../../figure/figure-store.ts';
import { useDays, useFigures, useSay } from '../../language/use-say.ts';

const moistureOf = ({ temperatureC, humidityPct }: DriftDay): number | undefined =>
  (temperatureC === undefined || humidityPct === undefined ? undefined : woodMoistureOf({ temperatureC: celsius(temperatureC), humidityPct: percent(humidityPct) }));

/** How the pitch drifted since the strings were put on, with the air beside it, and when to come again. */
export function DriftPanel() {
  const say = useSay();
  const { tuning, passes } = usePiano();
  const strungOn = tuning?.strungOn ?? null;
  const days = strungOn === null ? [] : driftDaysOf(passes, strungOn);
  return (
    <section className="panel" aria-labelledby="drift-title">
      <h2 id="drift-title">{say('drift.title')}</h2>
      {strungOn !== null && <p className="soft small">{say('drift.how')}</p>}
      {strungOn === null ? <p>{say('drift.noDay')}</p> : <Drift days={days} strungOn={strungOn} />}
      <p className="soft small">{say('drift.practice')}</p>
    </section>
  );
}

function Drift({ days, strungOn }: { readonly days: readonly DriftDay[]; readonly strungOn: string }) {
  const say = useSay();
  const { tuning } = usePiano();
  const drift = tuningDriftOf(days.map((day) => { const moisturePct = moistureOf(day); return { dayCount: day.dayCount, foundCents: cents(day.foundCents), leftCents: cents(day.leftCents ?? day.foundCents), ...(moisturePct === undefined ? {} : { moisturePct }) }; }));
  const tolerance = tuning?.driftToleranceCt ?? null;
  const story = (title: string, output: string): FigureStory => ({ title, operation: 'tuning-drift', output, input: { visits: days, toleranceCents: tolerance ?? 3 } });
  return (
    <>
      {drift.fit === undefined ? <p>{say('drift.few', { spans: drift.spans, needed: LEAST_SPANS })}</p> : <Fitted drift={drift} story={story} />}
      {drift.fit !== undefined && <p><strong>{say('drift.next')}:</strong> <NextVisit drift={drift} strungOn={strungOn} lastDay={days.at(-1)?.dayCount ?? 0} tolerance={tolerance} /></p>}
      {days.length > 0 && <DriftTable days={days} strungOn={strungOn} />}
    </>
  );
}

function Fitted({ drift: { fit, withoutMoisture }, story }: { readonly drift: TuningDrift; readonly story: (title: string, output: string) => FigureStory }) {
  const say = useSay();
  const figure = useFigures();
  if (fit === undefined) return null;
  const { tenfoldCents, tenfoldUncertaintyCents, moistureCentsPerPct, moistureUncertaintyCentsPerPct, coverage } = fit;
  return (
    <>
      <p>{say('drift.tenfold')} <Figure value={tenfoldCents} decimals={1} unit="ct" signed story={() => story(say('field.tenfoldCents'), 'tenfoldCents')} /> <span className="soft">± {figure(coverage * tenfoldUncertaintyCents, 1)}</span></p>
      {moistureCentsPerPct !== undefined && moistureUncertaintyCentsPerPct !== undefined && <p>{say('drift.moisture')} <Figure value={moistureCentsPerPct} decimals={1} unit="ct" signed story={() => story(say('field.moistureCentsPerPct'), 'moistureCentsPerPct')} /> <span className="soft">± {figure(coverage * moistureUncertaintyCentsPerPct, 1)}</span></p>}
      {withoutMoisture !== undefined && <p>{say('drift.without', { why: withoutMoisture })}</p>}
    </>
  );
}

interface NextVisitProps {
  readonly drift: TuningDrift;
  readonly strungOn: string;
  readonly lastDay: number;
  readonly tolerance: number | null;
}

function NextVisit({ drift, strungOn, lastDay, tolerance }: NextVisitProps) {
  const say = useSay();
  const dayOf = useDays();
  if (tolerance === null) return say('drift.next.notAsked');
  const visit = suggestedVisitOf(drift, strungOn, lastDay, tolerance);
  if (visit === undefined) return say('drift.next.none');
  const said = { day: dayOf(visit.day), earliest: dayOf(visit.earliest) };
  return visit.latest === undefined ? say('drift.next.open', said) : say('drift.next.range', { ...said, latest: dayOf(visit.latest) });
}

function DriftTable({ days, strungOn }: { readonly days: readonly DriftDay[]; readonly strungOn: string }) {
  const say = useSay();
  const figure = useFigures();
  const dayOf = useDays();
  const dayAt = (count: number): string => dayOf(new Date(Date.parse(`${strungOn}T00:00:00Z`) + count * 86_400_000).toISOString());
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap" tabIndex={0} role="region" aria-label={say('drift.visits')}>
      <table className="figures-table">
        <caption className="visually-hidden">{say('drift.visits')}</caption>
        <thead><tr><th scope="col">{say('drift.day')}</th><th scope="col">{say('drift.days')}</th><th scope="col">{say('drift.mean')} ({unitSign.ct})</th><th scope="col">{say('drift.left')} ({unitSign.ct})</th><th scope="col">{say('drift.air')}</th><th scope="col">{say('drift.moist')}</th></tr></thead>
        <tbody>
          {days.map((day) => {
            const moisture = moistureOf(day);
            return (
              <tr key={day.dayCount}>
                <th scope="row">{dayAt(day.dayCount)}</th><td>{day.dayCount}</td><td>{figure(day.foundCents, 1, undefined, true)}</td><td>{figure(day.leftCents ?? day.foundCents, 1, undefined, true)}</td>
                <td>{[day.temperatureC === undefined ? [] : figure(day.temperatureC, 0, 'degC'), day.humidityPct === undefined ? [] : figure(day.humidityPct, 0, 'pct')].flat().join(', ') || <span className="soft">{say('story.notStated')}</span>}</td>
                <td>{moisture === undefined ? <span className="soft">–</span> : figure(moisture, 1, 'pct')}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
