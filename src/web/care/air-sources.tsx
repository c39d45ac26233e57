import { type CareOf, careOf } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { decimalsFor } from '../story/say-event.ts';
import { useCaring } from './care-queries.ts';

/** Where the log of the air comes from: files of loggers and readings by hand, each to be withdrawn, and what was read by hand to be corrected. */
export function AirSources({ onCorrect }: { readonly onCorrect: (reading: CareOf<'air'>) => void }) {
  const say = useSay();
  const tell = useTelling();
  const { file: { care }, isCurrent } = usePiano();
  const caring = useCaring();
  const sources = [...careOf(care, 'logger'), ...careOf(care, 'air').toSorted((a, b) => b.at.localeCompare(a.at))];
  if (sources.length === 0) return null;
  return (
    <details className="care-sources">
      <summary>{say('care.sources')} ({sources.length})</summary>
      {caring.error !== null && <ProblemNote problem={caring.error} />}
      <ul>
        {sources.map((source) => (
          <li key={source.id} className="row row-between">
            <span>{tell(source)}{source.remark !== '' && <span className="soft"> {source.remark}</span>}</span>
            {isCurrent && (
              <span className="row no-print">
                {source.kind === 'air' && <button type="button" className="button button-quiet" aria-label={say('care.change.of', { what: tell(source) })} onClick={() => { onCorrect(source); }}>{say('care.change')}</button>}
                <button type="button" className="button button-quiet" aria-label={say('care.withdraw.of', { what: tell(source) })} disabled={caring.isPending} onClick={() => { caring.mutate({ kind: 'withdraw', id: source.id }); }}>{say('care.withdraw')}</button>
              </span>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

function useTelling(): (source: CareOf<'air'> | CareOf<'logger'>) => string {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const moment = (at: string): string => new Date(`${at}:00Z`).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone: 'UTC' });
  const typed = (value: number, decimals: number, unit?: 'pct' | 'degC', signed = false): string => figure(value, decimalsFor(value, decimals), unit, signed);
  return (source) => {
    if (source.kind === 'logger') return say('care.source.logger', { file: source.fileName, readings: source.readings, from: moment(source.from), until: moment(source.until), leftOut: source.leftOut });
    const { at, temperatureC, humidityPct, pitchCt, bearingDeg, moisturePct } = source;
    const parts = [
      ...(temperatureC === null ? [] : [typed(temperatureC, 1, 'degC')]), typed(humidityPct, 1, 'pct'), ...(pitchCt === null ? [] : [say('care.source.pitch', { value: typed(pitchCt, 1, undefined, true) })]),
      ...(bearingDeg === null ? [] : [say('care.source.bearing', { value: typed(bearingDeg, 2) })]), ...(moisturePct === null ? [] : [say('care.source.moisture', { value: typed(moisturePct, 1) })]),
    ];
    return say('care.source.air', { at: moment(at), what: parts.join(', ') });
  };
}
