import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { useDesk } from '../desk.tsx';

/** The readings of the state as a file; what was taken out reads back in the same. */
export function ExportLinks() {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const { state } = useDesk();
  return (
    <span className="row export-links">
      {say('readings.export')}
      {(['csv', 'tsv', 'xlsx'] as const).map((format) => (
        <a key={format} className="button button-quiet" download href={`/api/pianos/${encodeURIComponent(id)}/export?${new URLSearchParams({ format, cycle: String(cycle), state, locale }).toString()}`}>
          {format.toUpperCase()}
        </a>
      ))}
    </span>
  );
}
