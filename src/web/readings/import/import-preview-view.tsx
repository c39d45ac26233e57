import { quantityNames } from '#instrument';
import type { ImportPreview, ImportSource } from '#workshop';
import { useSay } from '../../language/use-say.ts';
import { useEffect, useRef } from 'react';
import { Note } from '../../ui/note.tsx';
import { hasWeights } from './has-weights.ts';
import { ImportRows } from './import-rows.tsx';
import { type FileSession, SessionPick } from './session-pick.tsx';
import './import.css';

interface ImportPreviewViewProps {
  readonly source: ImportSource;
  readonly preview: ImportPreview;
  readonly busy: boolean;
  readonly fileSession: FileSession;
  readonly onSession: (session: FileSession) => void;
  readonly onChange: (source: ImportSource) => void;
  readonly onRun: (source: ImportSource) => void;
  readonly onAgain: () => void;
}

const DELIMITERS: Readonly<Record<string, string>> = { '\t': 'tab', ',': 'comma', ';': 'semicolon' };

/** What the file would do, before it does: how it was read, what each column holds, the first rows and every refused one, counts. */
export function ImportPreviewView({ source, preview, busy, fileSession, onSession, onChange, onRun, onAgain }: ImportPreviewViewProps) {
  const say = useSay();
  const { encoding, delimiter, sheet, sheets, problems, columns, counts, rows } = preview;
  const writes = counts.create + counts.update;
  const isSessionOpen = fileSession === undefined && hasWeights(preview);
  const view = useRef<HTMLDivElement>(null);
  const toFirstRefused = (): void => { view.current?.querySelector<HTMLElement>('.import-refused .import-problem')?.focus(); };
  // Once for a file, when its preview opens: a column mapped later keeps the focus where it is.
  useEffect(toFirstRefused, []);
  const map = (letter: string, holds: string): void => {
    onChange({ ...source, mapping: { ...Object.fromEntries(columns.map((column) => [column.letter, column.mapsTo])), [letter]: holds === '' ? null : holds } });
  };
  return (
    <div ref={view} className="import-preview" aria-busy={busy}>
      <p className="soft">{say('readings.import.found', { encoding, delimiter: DELIMITERS[delimiter] ?? 'other' })}</p>
      {sheets.length > 1 && (
        <label className="row">
          {say('readings.import.sheet')}
          <select className="select import-select" value={sheet ?? ''} onChange={(event) => { onChange({ fileName: source.fileName, contentBase64: source.contentBase64, cycle: source.cycle, state: source.state, ...(source.locale === undefined ? {} : { locale: source.locale }), sheet: event.target.value }); }}>
            {sheets.map((name) => <option key={name}>{name}</option>)}
          </select>
        </label>
      )}
      {problems.map((problem) => <Note key={problem} tone="bad" role="alert">{problem}</Note>)}
      <h3>{say('readings.import.columns')}</h3>
      <ul className="import-columns">
        {columns.map(({ letter, header, mapsTo, reason }) => (
          <li key={letter}>
            <label>
              <span>{say('readings.import.column', { letter, header })}</span>
              <select className="select import-select" value={mapsTo ?? ''} onChange={(event) => { map(letter, event.target.value); }}>
                <option value="">{say('readings.import.column.out')}</option>
                <option value="key">{say('readings.import.column.key')}</option>
                <option value="note">{say('readings.import.column.note')}</option>
                <option value="remark">{say('readings.import.column.remark')}</option>
                {quantityNames.flatMap((name) => {
                  const words = say(`quantity.${name}.name`);
                  return [1, 2, 3].map((repeat) => <option key={`${name} ${String(repeat)}`} value={repeat === 1 ? name : `${name}#${String(repeat)}`}>{repeat === 1 ? words : say('readings.column.repeat', { quantity: words, repeat })}</option>);
                })}
                {mapsTo !== null && /#([4-9]|10)$/u.test(mapsTo) && <option value={mapsTo}>{mapsTo}</option>}
              </select>
            </label>
            {reason !== null && <p className="small import-reason">▲ {reason}</p>}
          </li>
        ))}
      </ul>
      <h3>{say('readings.import.preview')}</h3>
      <ImportRows rows={rows} headers={columns.map(({ header, letter }) => header || letter)} />
      <div className="row">
        <p role="status"><strong>{say('readings.import.counts', counts)}</strong></p>
        {counts.refused > 0 && <button type="button" className="button" onClick={toFirstRefused}>{say('readings.import.toRefused')}</button>}
      </div>
      {hasWeights(preview) && <SessionPick value={fileSession} onPick={onSession} />}
      <div className="dialog-foot import-foot">
        {isSessionOpen && writes > 0 && <p id="import-asks" className="import-asks">{say('readings.import.session.asks')}</p>}
        <button type="button" className="button" onClick={onAgain}>{say('readings.import.another')}</button>
        <button type="button" className="button button-main" disabled={busy || writes === 0 || problems.length > 0 || isSessionOpen} aria-describedby={isSessionOpen ? 'import-asks' : undefined} onClick={() => { onRun(source); }}>{say('readings.import.run', { count: writes })}</button>
      </div>
    </div>
  );
}
