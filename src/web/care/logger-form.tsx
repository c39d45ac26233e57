import type { LoggerPreview, LoggerSource } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { base64Of } from '../readings/import/file-content.ts';
import { FilePick } from '../readings/import/file-pick.tsx';
import { IssueList } from '../shell/issue-list.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Note } from '../ui/note.tsx';
import { useCaring } from './care-queries.ts';
import { LoggerColumns } from './logger-columns.tsx';

type Reading = NonNullable<LoggerSource['reading']>;

const SHOWN = 20;

/** The file of a logger on its way in: picked, shown as it is read, asked about where it does not say, and kept. */
export function LoggerForm({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  const { id } = usePiano();
  const [source, setSource] = useState<LoggerSource>();
  const looking = useMutation({ mutationFn: (wanted: LoggerSource) => call('previewLogger', { params: { id }, body: wanted }) });
  const caring = useCaring();
  const look = (wanted: LoggerSource): void => {
    setSource(wanted);
    caring.reset();
    looking.mutate(wanted);
  };
  const pick = async (file: File): Promise<void> => { look({ fileName: file.name, contentBase64: await base64Of(file) }); };
  const preview = looking.data;
  return (
    <section className="care-form" aria-labelledby="care-logger">
      <h3 id="care-logger">{say('care.logger')}</h3>
      <p className="soft small">{say('care.logger.how')}</p>
      <FilePick onFile={(file) => void pick(file)} />
      {looking.error !== null && <ProblemNote problem={looking.error} />}
      {preview !== undefined && source !== undefined && (
        <>
          <p><strong>{source.fileName}</strong></p>
          <LoggerColumns preview={preview} onTell={(part: Reading) => { look({ ...source, reading: { ...source.reading, ...part } }); }} />
          <Read preview={preview} leaveOut={source.leaveOut ?? false} onLeaveOut={(leaveOut) => { setSource({ ...source, leaveOut }); }} />
        </>
      )}
      {caring.error !== null && <ProblemNote problem={caring.error} />}
      <div className="row">
        {preview !== undefined && source !== undefined && preview.readings > 0 && (
          <button type="button" className="button button-main" disabled={caring.isPending || looking.isPending || (preview.refused > 0 && source.leaveOut !== true)} onClick={() => { caring.mutate({ kind: 'logger', source, onKept: onClose }); }}>
            {say('care.logger.take', { count: preview.readings })}
          </button>
        )}
        <button type="button" className="button" onClick={onClose}>{say('care.cancel')}</button>
      </div>
    </section>
  );
}

function Read({ preview: { readings, from, until, refused, refusedRows, asked }, leaveOut, onLeaveOut }: { readonly preview: LoggerPreview; readonly leaveOut: boolean; readonly onLeaveOut: (leaveOut: boolean) => void }) {
  const say = useSay();
  const locale = useLocale();
  const moment = (at: string | null): string => new Date(`${at ?? ''}:00Z`).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone: 'UTC' });
  return (
    <div role="status">
      {readings > 0 && <p>{say('care.logger.found', { readings, from: moment(from), until: moment(until) })}</p>}
      {readings === 0 && asked.length === 0 && <Note tone="bad"><p>{say('care.logger.unreadable')}</p></Note>}
      {refused > 0 && (
        <Note tone="warn">
          <p>{say('care.logger.refused', { count: refused })}</p>
          <IssueList issues={refusedRows.slice(0, SHOWN) as Parameters<typeof IssueList>[0]['issues']} />
          {refused > SHOWN && <p>{say('care.logger.refused.more', { count: refused - SHOWN })}</p>}
          {readings > 0 && <label className="row"><input type="checkbox" checked={leaveOut} onChange={(event) => { onLeaveOut(event.target.checked); }} /> {say('care.logger.leaveOut')}</label>}
        </Note>
      )}
    </div>
  );
}
