import { noteNameOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { AppDialog } from '../../ui/app-dialog.tsx';
import type { Words } from '../use-words.ts';
import type { BlockContext } from './grid-block.ts';
import { sayRefusal } from './grid-commands.ts';
import type { PasteNote, PastePlan } from './grid-paste.ts';

interface PasteDialogProps {
  readonly plan: PastePlan;
  readonly context: BlockContext;
  readonly words: Words;
  readonly onPaste: (plan: PastePlan) => void;
  readonly onCancel: () => void;
}

const SHOWN = 8;

/** What a pasted block would do, when something about it raises a question: nothing is written before the answer. */
export function PasteDialog({ plan, context, words, onPaste, onCancel }: PasteDialogProps) {
  const say = useSay();
  const writes = plan.kind === 'block' ? plan.writes : [];
  const over = writes.filter(({ key, quantity, repeat }) => {
    const column = context.columns.find((one) => one.kind === 'figure' && one.quantity === quantity && one.repeat === repeat);
    return column !== undefined && context.standing(key, column) !== undefined;
  }).length;
  return (
    <AppDialog title={say('readings.paste.title')} isOpen onClose={onCancel}>
      {plan.kind === 'nothing' && <p role="alert">{say('readings.paste.nothing')}</p>}
      {plan.kind === 'tooManyRows' && <p role="alert"><strong aria-hidden="true">✕ </strong>{say('readings.paste.tooManyRows', { over: plan.over, last: plan.lastKey })}</p>}
      {plan.kind === 'tooManyColumns' && <p role="alert"><strong aria-hidden="true">✕ </strong>{say('readings.paste.tooManyColumns', { over: plan.over })}</p>}
      {plan.kind === 'block' && (
        <>
          {plan.heading !== null && <p>{say('readings.paste.heading', { words: plan.heading.filter((word) => word !== '').join(', ') })}</p>}
          <Notes head="readings.paste.refused" notes={plan.refused} bounds="possible" words={words} />
          <Notes head="readings.paste.unlikely" notes={plan.unlikely} bounds="plausible" words={words} />
          {plan.empty > 0 && <p>{say('readings.paste.empty', { count: plan.empty })}</p>}
          {over > 0 && <p>{say('readings.paste.over', { count: over })}</p>}
        </>
      )}
      <div className="dialog-foot">
        <button type="button" className="button" onClick={onCancel}>{say(writes.length > 0 ? 'readings.paste.cancel' : 'shell.close')}</button>
        {writes.length > 0 && <button type="button" className="button button-main" onClick={() => { onPaste(plan); }}>{say('readings.paste.run', { count: writes.length })}</button>}
      </div>
    </AppDialog>
  );
}

interface NotesProps {
  readonly head: 'readings.paste.refused' | 'readings.paste.unlikely';
  readonly notes: readonly PasteNote[];
  readonly bounds: 'plausible' | 'possible';
  readonly words: Words;
}

function Notes({ head, notes, bounds, words }: NotesProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  if (notes.length === 0) return null;
  const why = ({ column, issues }: PasteNote): string => {
    if (column.kind === 'derived') return say('readings.paste.derived');
    if (bounds === 'plausible') return say('readings.unlikely', words.range(column.quantity, 'plausible'));
    return issues.map((issue) => sayRefusal(issue, column, { say, locale, words })).join(' ');
  };
  return (
    <div>
      <p><strong aria-hidden="true">{bounds === 'possible' ? '✕ ' : '▲ '}</strong>{say(head, { count: notes.length })}</p>
      <ul>
        {notes.slice(0, SHOWN).map((note) => (
          <li key={`${String(note.key)} ${note.column.id}`}>{say('readings.paste.note', { note: noteNameOf(compass, note.key), column: words.column(note.column), text: note.text, why: why(note) })}</li>
        ))}
        {notes.length > SHOWN && <li>{say('readings.paste.more', { count: notes.length - SHOWN })}</li>}
      </ul>
    </div>
  );
}
