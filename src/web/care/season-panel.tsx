import { LEAST_OBSERVED, LEAST_SPAN_PCT, seasonFitOf, woodMovementOf } from '#climate';
import { millimetres, percent } from '#units';
import { type AirHours, type SeasonFigure, airOutlookOf, seasonFigures, seasonInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import type { FigureStory } from '../figure/figure-store.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import { type Care, useCare } from './use-care.ts';

/** What the season does to this piano: pitch and bearing over the moisture of its wood, and what board and block would move. */
export function SeasonPanel({ air }: { readonly air: AirHours }) {
  const say = useSay();
  return (
    <section className="panel" aria-labelledby="care-season">
      <h2 id="care-season">{say('care.season')}</h2>
      {air.hour.length === 0 ? <p>{say('care.season.none')}</p> : (
        <>
          <p className="soft small">{say('care.season.how')}</p>
          {seasonFigures.map((figure) => <Season key={figure} air={air} figure={figure} />)}
          <Movement air={air} />
        </>
      )}
    </section>
  );
}

const UNITS = { pitchCt: 'ct', bearingDeg: 'deg' } as const;

function Season({ air, figure: name }: { readonly air: AirHours; readonly figure: SeasonFigure }) {
  const say = useSay();
  const figure = useFigures();
  const { file: { care }, passes } = usePiano();
  const { input, outside } = useMemo(() => seasonInputOf(air, care, passes, name), [air, care, passes, name]);
  const fit = useMemo(() => (input.observed.length < LEAST_OBSERVED ? undefined : seasonFitOf(input.air, input.observed, input.lagDays)), [input]);
  const story = (): FigureStory => ({ title: say(`care.season.${name}`), operation: 'season-regression', output: 'slopePerPct', input: { ...input } });
  const decimals = name === 'pitchCt' ? 1 : 2;
  const half = fit === undefined ? 0 : fit.coverage * fit.slopeUncertainty;
  return (
    <div>
      <h3>{say(`care.season.${name}`)}</h3>
      {fit === undefined ? <p>{say('issue.length.season.few', { count: input.observed.length, least: LEAST_OBSERVED })}</p>
        : fit.moistureSpanPct < LEAST_SPAN_PCT ? <p>{say('issue.range.season.narrow', { span: figure(fit.moistureSpanPct, 2), least: LEAST_SPAN_PCT })}</p> : (
          <p>
            {say('care.season.said', { figure: say(`care.season.${name}`) })} <Figure value={fit.slope} decimals={decimals} unit={UNITS[name]} signed story={story} /> <span className="soft">± {figure(half, decimals)} ({say('care.season.lag', { lag: figure(fit.lagDays, 0), count: input.observed.length, span: figure(fit.moistureSpanPct, 1) })})</span>{' '}
            {Math.abs(fit.slope) <= half && <strong>{say('care.season.nought')}</strong>}
          </p>
        )}
      {outside > 0 && <p className="soft small">{say('care.season.outside', { count: outside })}</p>}
    </div>
  );
}

const WOODS = { board: { species: 'european-spruce', direction: 'radial' }, block: { species: 'sugar-maple', direction: 'tangential' } } as const;

function Movement({ air }: { readonly air: AirHours }) {
  const say = useSay();
  const figure = useFigures();
  const { plan, asked } = useCare();
  const moisture = useMemo(() => airOutlookOf(air, asked)?.moisture, [air, asked]);
  if (moisture === undefined) return null;
  const widths = widthsOf(plan);
  return (
    <div>
      <h3>{say('care.movement')}</h3>
      {widths.length === 0 ? <p>{say('care.movement.unasked')}</p> : (
        <>
          <dl className="facts">
            {widths.map(([name, widthMm]) => {
              const input = { ...WOODS[name], widthMm, fromPct: moisture.least, toPct: moisture.most };
              const moved = woodMovementOf({ ...WOODS[name], widthMm: millimetres(widthMm) }, { fromPct: percent(moisture.least), toPct: percent(moisture.most) });
              return <div key={name}><dt>{say(`care.movement.${name}`, { width: figure(widthMm, 0) })}</dt><dd><Figure value={moved} decimals={1} unit="mm" signed story={() => ({ title: say(`care.movement.${name}`, { width: figure(widthMm, 0) }), operation: 'wood-movement', output: 'changeMm', input })} /></dd></div>;
            })}
          </dl>
          <p className="soft small">{say('care.movement.how', { least: figure(moisture.least, 1), most: figure(moisture.most, 1) })}</p>
        </>
      )}
    </div>
  );
}

function widthsOf(plan: Care['plan']): readonly (readonly ['board' | 'block', number])[] {
  const given = [['board', plan?.boardMm ?? null], ['block', plan?.blockMm ?? null]] as const;
  return given.flatMap(([name, width]) => (width === null ? [] : [[name, width] as const]));
}
