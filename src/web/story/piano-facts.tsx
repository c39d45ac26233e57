import { type Instrument, compassOf, keyCountOf, noteNameOf } from '#instrument';
import { useFigures, useSay } from '../language/use-say.ts';
import { decimalsFor } from './say-event.ts';

/** What stands on a piano's card; what was not stated says so. */
export function PianoFacts({ instrument }: { readonly instrument: Instrument }) {
  const say = useSay();
  const figure = useFigures();
  const compass = compassOf(instrument);
  const keys = keyCountOf(compass);
  const { lengthMm, a4Hz, year, maker, serial } = instrument;
  const facts: readonly (readonly [string, string | null])[] = [
    [say('pianos.field.kind'), say(`pianos.kind.${instrument.kind}`)],
    [say('pianos.field.compass'), `${say('pianos.keys', { count: keys })}, ${noteNameOf(compass, 1)} – ${noteNameOf(compass, keys)}`],
    [say('pianos.field.maker'), maker],
    [say('pianos.field.serial'), serial],
    [say('pianos.field.year'), year === null ? null : String(year)],
    [say('pianos.field.lengthMm'), lengthMm === null ? null : figure(lengthMm, decimalsFor(lengthMm, 1), 'mm')],
    [say('pianos.field.a4Hz'), figure(a4Hz, decimalsFor(a4Hz, 1), 'Hz')],
  ];
  return (
    <>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className={value === null ? 'soft' : undefined}>{value ?? say('story.notStated')}</dd>
          </div>
        ))}
      </dl>
      {instrument.remark !== '' && <p className="remark">{instrument.remark}</p>}
    </>
  );
}
