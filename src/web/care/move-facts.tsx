import { dewPointOf, floorLoadOf, restOfWarmingOf, unwrapAt } from '#climate';
import { celsius, hours, percent } from '#units';
import type { CareOf } from '#workshop';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';
import { useMoverName } from './use-movers.ts';

type Move = CareOf<'move'>;

/** What a move asks of the floor, and what the air on arrival says about unwrapping. */
export function MoveFacts({ move }: { readonly move: Move }) {
  const say = useSay();
  const figure = useFigures();
  const mover = useMoverName(move.mover);
  const typed = (value: number): string => figure(value, decimalsFor(value, 1));
  return (
    <>
      <dl className="facts">
        {move.weightKg !== null && <div><dt>{say('care.move.weightKg')}</dt><dd>{typed(move.weightKg)}</dd></div>}
        {mover !== undefined && <div><dt>{say('care.move.mover')}</dt><dd>{mover}</dd></div>}
        {move.storey !== null && <div><dt>{say('care.move.storey')}</dt><dd>{say(`care.storey.${move.storey}`)}</dd></div>}
        {move.steps !== null && <div><dt>{say('care.move.steps')}</dt><dd>{typed(move.steps)}</dd></div>}
        {move.narrowestMm !== null && <div><dt>{say('care.move.narrowestMm')}</dt><dd>{figure(move.narrowestMm, decimalsFor(move.narrowestMm, 0), 'mm')}</dd></div>}
        {move.wrap !== '' && <div><dt>{say('care.move.wrap')}</dt><dd>{move.wrap}</dd></div>}
        <Loads move={move} />
        {move.arrival !== null && <Arrival arrival={move.arrival} />}
      </dl>
      {move.weightKg !== null && <p className="soft small">{say('sheet.move.load.caution')}</p>}
      {move.arrival !== null && <p className="soft small">{say('sheet.move.arrival.how')}</p>}
    </>
  );
}

const LOADS = [['leg', 'meanLegN', 1000], ['heaviest', 'heaviestLegN', 1000], ['spread', 'spreadKPa', 1], ['foot', 'footMPa', 1]] as const;

function Loads({ move: { weightKg, areaM2, footMm, peopleKg, legs, heaviestPct } }: { readonly move: Move }) {
  const say = useSay();
  if (weightKg === null || areaM2 === null) return null;
  const input = { weightKg, peopleKg, legs, heaviestPct, areaM2, footMm: footMm ?? 100 };
  const load = floorLoadOf(input);
  return LOADS.filter(([name]) => name !== 'foot' || footMm !== null).map(([name, output, per]) => (
    <div key={name}><dt>{say(`care.move.fact.${name}`)}</dt><dd><Figure value={load[output] / per} decimals={2} story={() => ({ title: say(`field.${output}`), operation: 'floor-load', output, input })} /></dd></div>
  ));
}

function Arrival({ arrival: { temperatureC, humidityPct, surfaceC, laterC, betweenHours } }: { readonly arrival: NonNullable<Move['arrival']> }) {
  const say = useSay();
  const input = { temperatureC, humidityPct, surfaceC, ...(laterC === null || betweenHours === null ? {} : { laterC, betweenHours }) };
  const air = { temperatureC: celsius(temperatureC), humidityPct: percent(humidityPct) };
  const wait = laterC === null || betweenHours === null ? undefined : restOfWarmingOf({ air, surfaceC: celsius(surfaceC), laterC: celsius(laterC), betweenHours: hours(betweenHours) });
  const isReached = (laterC ?? surfaceC) >= unwrapAt(air);
  const story = (output: 'dewPointC' | 'unwrapC' | 'waitHours') => () => ({ title: say(`field.${output}`), operation: 'unwrap-wait', output, input });
  return (
    <>
      <div><dt>{say('care.move.fact.dew')}</dt><dd><Figure value={dewPointOf(air)} decimals={1} unit="degC" story={story('dewPointC')} /></dd></div>
      <div><dt>{say('care.move.fact.unwrap')}</dt><dd><Figure value={unwrapAt(air)} decimals={1} unit="degC" story={story('unwrapC')} /></dd></div>
      <div><dt>{say('care.move.fact.wait')}</dt><dd>{isReached ? say('care.move.fact.reached') : wait === undefined ? say('care.move.fact.untold') : <Figure value={wait} decimals={0} story={story('waitHours')} />}</dd></div>
    </>
  );
}
