import { climatePlot } from '#plot';
import { type AirHours, BOARD_LAG_DAYS, dailyMoistureOf, dayOfHour } from '#workshop';
import { useMemo } from 'react';
import { useDays, useFigures, useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import { useWidth } from '../leaves/use-width.ts';
import type { Care } from './use-care.ts';

const PANEL_PX = 130;

/** Humidity with its band, the moisture of the wood behind it, and temperature, on one axis of days. */
export function AirPlot({ air, asked: { lowPct, highPct }, hasTemperature }: { readonly air: AirHours; readonly asked: Care['asked']; readonly hasTemperature: boolean }) {
  const say = useSay();
  const locale = useLocale();
  const day = useDays();
  const figure = useFigures();
  const [widthPx, ref] = useWidth(720);
  const moisture = useMemo(() => new Map(dailyMoistureOf(air, BOARD_LAG_DAYS).map(({ dayCount, moisturePct }) => [Math.floor(dayCount), moisturePct])), [air]);
  const said = { lag: BOARD_LAG_DAYS, from: day(dayOfHour(air.hour[0] ?? 0)), until: day(dayOfHour(air.hour.at(-1) ?? 0)), low: figure(lowPct, 0), high: figure(highPct, 0) };
  const scene = climatePlot({
    hours: air.hour, locale, widthPx, panelPx: PANEL_PX, title: say('care.air'), description: say('care.plot.described', said),
    panels: [
      { label: say('care.figure.humidity'), unit: 'pct', values: air.humidityPct, band: { low: lowPct, high: highPct } },
      { label: say('care.figure.moisture'), unit: 'pct', values: air.hour.map((hour) => moisture.get(Math.floor(hour / 24)) ?? null) },
      ...(hasTemperature ? [{ label: say('care.figure.temperature'), unit: 'degC', values: air.temperatureC } as const] : []),
    ],
  });
  return <div ref={ref} className="care-plot"><SceneView scene={scene} /></div>;
}
