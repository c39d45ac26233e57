import { keyCountOf, quantityOf } from '#instrument';
import { unitSign } from '#units';
import { type CSSProperties, memo, useCallback, useId, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { useDesk } from '../desk.tsx';
import { useKept } from '../../kept/kept.ts';
import { CellDialog } from './cell-dialog.tsx';
import { ColumnChooser } from './column-chooser.tsx';
import { columnsOf, usualColumns } from './grid-columns.ts';
import { selectOne } from './grid-move.ts';
import { GridRow } from './grid-row.tsx';
import { GridStatus } from './grid-status.tsx';
import { LivePlots } from './live-plots.tsx';
import { PasteDialog } from './paste-dialog.tsx';
import { useGrid } from './use-grid.ts';
import { useGridEvents } from './use-grid-events.ts';
import './grid.css';

/** Every key a row: typed, pasted and filled as in a spreadsheet, with the plots beside following each figure. */
export const GridView = memo(function GridView() {
  const say = useSay();
  const id = useId();
  const { compass } = usePiano();
  const { sheet, state, session, canWrite } = useDesk();
  const [chosen, choose] = useKept('wrestplank.columns', usualColumns);
  const repeats = session.current?.repeats ?? 1;
  const columns = useMemo(() => columnsOf(chosen, repeats), [chosen, repeats]);
  const grid = useGrid(columns);
  const [menu, setMenu] = useState(false);
  const openMenu = useCallback(() => { setMenu(true); }, []);
  const events = useGridEvents(grid, openMenu);
  const { cursor, words } = grid;
  const statusId = `${id}-status`;
  const { select, size } = grid;
  const goToKey = useCallback((key: number) => { select(selectOne({ row: key - 1, column: cursor.selection().focus.column }, size())); }, [cursor, select, size]);
  return (
    <section className="grid-view" aria-label={say('readings.mode.grid')}>
      <div className="grid-side">
        <div className="row">
          <ColumnChooser chosen={chosen} onChoose={choose} />
          <button type="button" className="button" onClick={openMenu}>{say('readings.grid.menu.open')}</button>
        </div>
        <GridStatus id={statusId} columns={columns} cursor={cursor} words={words} />
        <p className="visually-hidden" role="status">{grid.message}</p>
        <div className="grid-scroll">
          <table
            ref={grid.table}
            role="grid"
            className="grid"
            style={{ minWidth: `${String(5.4 + columns.length * 5.6)}rem`, '--columns': columns.length } as CSSProperties}
            aria-label={say('readings.grid.label', { state: say(`state.${state}`), count: keyCountOf(compass) })}
            aria-describedby={`${id}-keys`}
            aria-rowcount={keyCountOf(compass) + 1}
            aria-colcount={columns.length + 1}
            aria-multiselectable="true"
            {...(canWrite ? {} : { 'aria-readonly': true })}
            {...events}
          >
            <thead>
              <tr role="row" aria-rowindex={1}>
                <th scope="col" role="columnheader" className="grid-corner">{say('readings.grid.key')}</th>
                {columns.map((column) => (
                  <th key={column.id} scope="col" role="columnheader" className={column.kind === 'derived' ? 'is-derived' : undefined} title={column.kind === 'derived' ? say('readings.derived.hint') : words.column(column)}>
                    {words.columnShort(column)} <span className="soft">{column.kind === 'derived' ? 'g' : unitSign[quantityOf(column.quantity).unit]}</span>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {grid.keys.map((key, index) => (
                <GridRow key={key} rowIndex={index} keyNumber={key} columns={columns} sheet={sheet} state={state} cursor={cursor} words={words} statusId={statusId} />
              ))}
            </tbody>
          </table>
        </div>
        <p id={`${id}-keys`} className="soft small grid-keys">{say('readings.grid.keys')}</p>
        {grid.message !== '' && <Note><span aria-hidden="true">{grid.message}</span></Note>}
      </div>
      <LivePlots onKey={goToKey} />
      {grid.paste !== undefined && (
        <PasteDialog plan={grid.paste} context={grid.context} words={words} onPaste={grid.runPaste} onCancel={() => { grid.setPaste(undefined); grid.focusCell(); }} />
      )}
      {menu && <CellDialog grid={grid} onClose={() => { setMenu(false); }} />}
    </section>
  );
});
