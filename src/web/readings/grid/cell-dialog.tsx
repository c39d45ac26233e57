import { type Outcome, noteNameOf } from '#instrument';
import { useQuery } from '@tanstack/react-query';
import { call } from '../../api/client.ts';
import { usePiano } from '../../api/piano.tsx';
import { useDraft } from '../../kept/draft.ts';
import { useMoments, useSay } from '../../language/use-say.ts';
import { AppDialog } from '../../ui/app-dialog.tsx';
import { Field } from '../../ui/field.tsx';
import { useDesk } from '../desk.tsx';
import type { GridColumn } from './grid-columns.ts';
import type { Grid } from './use-grid.ts';

interface CellDialogProps {
  readonly grid: Grid;
  readonly outcomes: readonly Outcome[];
  readonly onClose: () => void;
}

/** What can be said of a cell besides a figure: why there is none, a remark, what stood there before. */
export function CellDialog({ grid, outcomes, onClose }: CellDialogProps) {
  const say = useSay();
  const { id, compass, cycle } = usePiano();
  const { canWrite, state } = useDesk();
  const { key, column } = grid.cellAt(grid.cursor.selection().focus);
  const standing = column === undefined ? undefined : grid.context.standing(key, column);
  const draft = useDraft(`remark.${id}.${String(cycle)}.${state}.${String(key)}.${column?.id ?? ''}`, () => ({ remark: standing?.remark ?? '' }));
  const { remark } = draft.typed;
  if (column?.kind !== 'figure') return null;
  const { quantity, repeat } = column;
  const place = { key, quantity, repeat };
  const close = (): void => {
    onClose();
    grid.focusCell();
  };
  const keepRemark = (): void => {
    if (standing === undefined) return;
    grid.write([{ ...place, ...(standing.outcome === null ? { typed: standing.typed ?? '' } : { outcome: standing.outcome }), remark: remark.trim() }]);
    draft.drop();
    close();
  };
  const what = say('readings.figure', { quantity: grid.words.column(column), note: noteNameOf(compass, key) });
  return (
    <AppDialog title={what} isOpen onClose={close}>
      {canWrite && (
        <>
          <fieldset className="choice">
            <legend>{say('readings.grid.menu.outcome')}</legend>
            <div className="choice-row">
              {outcomes.map((outcome) => (
                <button key={outcome} type="button" className="button" aria-pressed={standing?.outcome === outcome} onClick={() => { grid.write([{ ...place, outcome }]); close(); }}>
                  {say(`readings.walk.outcome.${outcome}`)}
                </button>
              ))}
            </div>
          </fieldset>
          <Field label={say('readings.grid.menu.remark')} value={remark} onChange={(typed) => { draft.change(() => ({ remark: typed })); }} echo={draft.isTakenUp ? say('shell.draft.takenUp') : undefined} lines={2} maxLength={2000} hint={standing === undefined ? say('readings.grid.menu.empty') : undefined} />
          <div className="dialog-foot">
            <button type="button" className="button" disabled={standing === undefined} onClick={() => { grid.write([{ ...place, clear: true }]); close(); }}>{say('readings.grid.menu.clear')}</button>
            <button type="button" className="button button-main" disabled={standing === undefined || remark.trim() === standing.remark} onClick={keepRemark}>{say('readings.grid.menu.keepRemark')}</button>
          </div>
        </>
      )}
      <CellHistory keyNumber={key} column={column} grid={grid} />
    </AppDialog>
  );
}

function CellHistory({ keyNumber, column, grid }: { readonly keyNumber: number; readonly column: Extract<GridColumn, { kind: 'figure' }>; readonly grid: Grid }) {
  const say = useSay();
  const moment = useMoments();
  const { id, cycle } = usePiano();
  const { state } = useDesk();
  const place = { cycle: String(cycle), state, quantity: column.quantity, index: String(keyNumber) };
  const { data } = useQuery({ queryKey: ['piano', id, 'history', place], queryFn: ({ signal }) => call('readingHistory', { params: { id }, query: place, signal }), staleTime: 0 });
  const earlier = (data?.readings ?? []).filter(({ repeat, standing }) => repeat === column.repeat && !standing);
  return (
    <section>
      <h3>{say('readings.grid.menu.history')}</h3>
      {data !== undefined && earlier.length === 0 && <p className="soft">{say('readings.grid.menu.history.none')}</p>}
      <ul className="cell-history">
        {earlier.map((reading) => (
          <li key={reading.id}>
            <strong>{grid.words.reading(reading)}</strong> <span className="soft">{reading.typed === null ? '' : say('readings.grid.menu.typed', { typed: reading.typed })} {moment(reading.at)} {reading.remark}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
