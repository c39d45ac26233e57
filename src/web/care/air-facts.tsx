import { type AirHours, type AirOutlook, BOARD_LAG_DAYS, airReadOf, dayOfHour, watchedOf } from '#workshop';
import { Figure } from '../figure/figure.tsx';
import type { FigureStory } from '../figure/figure-store.ts';
import { useDays, useSay } from '../language/use-say.ts';
import type { Care } from './use-care.ts';

interface AirFactsProps {
  readonly air: AirHours;
  readonly outlook: AirOutlook;
  readonly asked: Care['asked'];
}

type SpanName = `${'least' | 'mean' | 'most'}${'HumidityPct' | 'TemperatureC'}` | 'usualLowHumidityPct' | 'usualHighHumidityPct' | 'driestMoisturePct' | 'dampestMoisturePct';

/** How an end or the middle of the log was made: all its hours, counted from the first. */
function spanStory(title: string, air: AirHours, output: SpanName): FigureStory {
  const [first = 0] = air.hour;
  return { title, operation: 'climate-span', output, input: { log: airReadOf(air).map(({ temperatureC, humidityPct }, index) => ({ hourCount: (air.hour[index] ?? first) - first, temperatureC, humidityPct })), lagDays: BOARD_LAG_DAYS } };
}

/** The log at a glance: its span, its middle and ends, how it stood to the band. */
export function AirFacts({ air, outlook: { fromHour, toHour, humidity, usual: [low, high], temperature, moisture, watch }, asked: { lowPct, highPct, dayChangePct } }: AirFactsProps) {
  const say = useSay();
  const day = useDays();
  const of = (name: SpanName, value: number, unit?: 'pct' | 'degC') => <Figure value={value} decimals={1} {...(unit === undefined ? {} : { unit })} story={() => spanStory(say(`field.${name}`), air, name)} />;
  const story = (name: 'insideSharePct' | 'longestHours'): FigureStory => ({ title: say(`field.${name}`), operation: 'climate-watch', output: name, input: { log: watchedOf(air), lowPct, highPct, dayChangePct } });
  const inside = (100 * (watch.hours - watch.dryHours - watch.dampHours)) / watch.hours;
  const longest = Math.max(0, ...watch.alarms.filter(({ what }) => what !== 'fast').map(({ fromHourCount, toHourCount }) => toHourCount - fromHourCount + 1));
  return (
    <dl className="facts">
      <div><dt>{say('care.air.fact.span')}</dt><dd>{say('care.air.span', { from: day(dayOfHour(fromHour)), until: day(dayOfHour(toHour)) })}</dd></div>
      <div><dt>{say('care.air.fact.hours')}</dt><dd>{watch.hours}</dd></div>
      <div><dt>{say('care.air.fact.humidity')}</dt><dd>{of('leastHumidityPct', humidity.least)} · {of('meanHumidityPct', humidity.mean)} · {of('mostHumidityPct', humidity.most, 'pct')}</dd></div>
      <div><dt>{say('care.air.fact.usual')}</dt><dd>{of('usualLowHumidityPct', low)} – {of('usualHighHumidityPct', high, 'pct')}</dd></div>
      {temperature !== undefined && <div><dt>{say('care.air.fact.temperature')}</dt><dd>{of('leastTemperatureC', temperature.least)} · {of('meanTemperatureC', temperature.mean)} · {of('mostTemperatureC', temperature.most, 'degC')}</dd></div>}
      <div><dt>{say('care.air.fact.moisture')}</dt><dd>{of('driestMoisturePct', moisture.least)} – {of('dampestMoisturePct', moisture.most, 'pct')}</dd></div>
      <div><dt>{say('care.air.fact.inside')}</dt><dd><Figure value={inside} decimals={1} unit="pct" story={() => story('insideSharePct')} /></dd></div>
      <div><dt>{say('care.air.fact.longest')}</dt><dd><Figure value={longest} decimals={0} story={() => story('longestHours')} /></dd></div>
    </dl>
  );
}
