import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';

interface EmptyReadingsProps {
  readonly onWalk: () => void;
  readonly onImport: () => void;
}

/** What to measure first and why, where nothing was measured yet. */
export function EmptyReadings({ onWalk, onImport }: EmptyReadingsProps) {
  const say = useSay();
  return (
    <Note tone="accent">
      <h3>{say('readings.empty.title')}</h3>
      <p>{say('readings.empty.first')}</p>
      <p>{say('readings.empty.sample')}</p>
      <p className="soft">{say('readings.empty.next')}</p>
      <div className="row">
        <button type="button" className="button button-main" onClick={onWalk}>{say('readings.empty.walk')}</button>
        <button type="button" className="button" onClick={onImport}>{say('readings.empty.import')}</button>
      </div>
    </Note>
  );
}
