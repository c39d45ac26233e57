import { type AirHours, type CareOf, airOutlookOf } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { type Command, useCommands } from '../commands/registry.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import { AirFacts } from './air-facts.tsx';
import { AirForm } from './air-form.tsx';
import { AirPlot } from './air-plot.tsx';
import { AirSources } from './air-sources.tsx';
import { AlarmList } from './alarm-list.tsx';
import { LoggerForm } from './logger-form.tsx';
import { useCare } from './use-care.ts';

type Open = 'air' | 'logger' | CareOf<'air'> | undefined;

/** The air beside the piano: what was read, plotted and watched, and the two ways more of it comes in. */
export function AirPanel({ air }: { readonly air: AirHours }) {
  const say = useSay();
  const figure = useFigures();
  const { isCurrent } = usePiano();
  const { asked, plan } = useCare();
  const [open, setOpen] = useState<Open>();
  const outlook = useMemo(() => airOutlookOf(air, asked), [air, asked]);
  useAirCommands(isCurrent, setOpen);
  const close = (): void => { setOpen(undefined); };
  return (
    <section className="panel" aria-labelledby="care-air">
      <div className="row row-between">
        <h2 id="care-air">{say('care.air')}</h2>
        {isCurrent && open === undefined && (
          <span className="row no-print">
            <button type="button" className="button" onClick={() => { setOpen('air'); }}>{say('care.air.note')}</button>
            <button type="button" className="button" onClick={() => { setOpen('logger'); }}>{say('care.air.import')}</button>
          </span>
        )}
      </div>
      {open === 'logger' ? <LoggerForm onClose={close} /> : open !== undefined && <AirForm key={open === 'air' ? 'new' : open.id} reading={open === 'air' ? undefined : open} onClose={close} />}
      {outlook === undefined ? <p>{say('care.air.none')}</p> : (
        <>
          <AirFacts air={air} outlook={outlook} asked={asked} />
          <AirPlot air={air} asked={asked} hasTemperature={outlook.temperature !== undefined} />
          <p className="soft small">{say('care.air.band', { low: figure(asked.lowPct, 0), high: figure(asked.highPct, 0), change: figure(asked.dayChangePct, 0), own: String(plan !== undefined) })} {air.temperatureC.includes(null) && say('care.air.assumed')}</p>
          <AlarmList air={air} alarms={outlook.watch.alarms} />
        </>
      )}
      <AirSources onCorrect={setOpen} />
    </section>
  );
}

function useAirCommands(canWrite: boolean, open: (what: Open) => void): void {
  useCommands(useMemo((): readonly Command[] => (canWrite ? [
    { id: 'care.air.note', label: 'care.air.note', group: 'command.group.piano', perform: () => { open('air'); } },
    { id: 'care.air.import', label: 'care.air.import', group: 'command.group.piano', perform: () => { open('logger'); } },
  ] : []), [canWrite, open]));
}
