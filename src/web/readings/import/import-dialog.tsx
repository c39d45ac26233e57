import { useEffect, useRef } from 'react';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { AppDialog } from '../../ui/app-dialog.tsx';
import { Note } from '../../ui/note.tsx';
import { useDesk } from '../desk.tsx';
import { FilePick } from './file-pick.tsx';
import { ImportPreviewView } from './import-preview-view.tsx';
import type { Importing } from './use-import.ts';

/** Readings out of a spreadsheet: pick, say what each column holds, look at what would happen, run; undone as a whole. */
export function ImportDialog({ importing, onClose }: { readonly importing: Importing; readonly onClose: () => void }) {
  const say = useSay();
  const { state } = useDesk();
  const { step, trouble, fileSession, setFileSession, pick, change, run, again } = importing;
  const latest = useRef(importing);
  latest.current = importing;
  useEffect(() => {
    const left = latest.current;
    if (left.step.at === 'preview') void left.change(left.step.source);
    return () => {
      if (latest.current.step.at === 'done') latest.current.again();
    };
  }, []);
  return (
    <AppDialog title={say('readings.import.title')} isOpen form="wide" onClose={onClose}>
      <p className="row">{say('readings.import.into', { state: '' })} <StateMark state={state} /></p>
      {trouble !== null && <ProblemNote problem={trouble} />}
      {step.at === 'pick' && <FilePick onFile={(file) => void pick(file)} />}
      {step.at === 'reading' && <p role="status">{say('readings.import.reading', { name: step.name })}</p>}
      {step.at === 'preview' && <ImportPreviewView {...step} fileSession={fileSession} onSession={setFileSession} onChange={(source) => void change(source)} onRun={(source) => void run(source)} onAgain={again} />}
      {step.at === 'done' && (
        <>
          <Note tone={step.answer.seq === null ? 'plain' : 'good'} role="status">
            <p>{say(step.answer.seq === null ? 'readings.import.doneNothing' : 'readings.import.done', { counts: say('readings.import.counts', step.answer.counts) })}</p>
          </Note>
          <div className="dialog-foot">
            <button type="button" className="button" onClick={again}>{say('readings.import.another')}</button>
            <button type="button" className="button button-main" onClick={onClose}>{say('shell.close')}</button>
          </div>
        </>
      )}
    </AppDialog>
  );
}
