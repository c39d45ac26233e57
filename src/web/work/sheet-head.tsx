import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';

/** Head of the printed bench sheet: which piano, printed when, and room for who does the work. */
export function SheetHead() {
  const say = useSay();
  const locale = useLocale();
  const { instrument, cycle } = usePiano();
  const { name, maker, serial, year, demo } = instrument;
  const facts = [maker, serial, year === null ? null : String(year), cycle > 1 ? say('work.sheet.stay', { cycle }) : null, demo ? say('shell.demo') : null].filter((fact) => fact !== null && fact !== '');
  return (
    <header className="print-only sheet-head">
      <h1>{say('work.sheet', { piano: name })}</h1>
      <p>{[...facts, say('work.sheet.printed', { day: new Date().toLocaleDateString(locale, { dateStyle: 'medium' }) })].join(' · ')}</p>
      <p className="sheet-by">{say('work.sheet.by')}</p>
    </header>
  );
}
