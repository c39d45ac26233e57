import { keyCountOf } from '#instrument';
import { type CSSProperties, memo, useCallback, useId, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { useDesk } from '../desk.tsx';
import { useKept } from '../../kept/kept.ts';
import { CellDialog } from './cell-dialog.tsx';
import { ColumnChooser } from './column-chooser.tsx';
import type { GridLayout } from './grid-layout.ts';
import { selectOne } from './grid-move.ts';
import { GridRow } from './grid-row.tsx';
import { GridSideways } from './grid-sideways.tsx';
import { GridStatus } from './grid-status.tsx';
import { PasteDialog } from './paste-dialog.tsx';
import { useGrid } from './use-grid.ts';
import { useGridEvents } from './use-grid-events.ts';
import './grid.css';

/** Every key a row: typed, pasted and filled as in a spreadsheet, with what follows from each figure beside. */
export const GridView = memo(function GridView({ layout }: { readonly layout: GridLayout }) {
  const say = useSay();
  const id = useId();
  const { compass } = usePiano();
  const { sheet, state, canWrite } = useDesk();
  const { derived, repeats, columnsOf } = layout;
  const [chosen, choose] = useKept(layout.keptAs, layout.usual);
  const columns = useMemo(() => columnsOf(chosen, repeats), [columnsOf, chosen, repeats]);
  const grid = useGrid(columns, derived);
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
          <ColumnChooser quantities={layout.quantities} chosen={chosen} onChoose={choose} />
          <button type="button" className="button" onClick={openMenu}>{say('readings.grid.menu.open')}</button>
          <GridSideways table={grid.table} columns={columns.length} />
        </div>
        <GridStatus id={statusId} columns={columns} cursor={cursor} derived={derived} words={words} />
        <p className="visually-hidden" role="status">{grid.message}</p>
        <div className="grid-scroll">
          <table
            ref={grid.table}
            role="grid"
            className="grid"
            style={{ '--columns': columns.length } as CSSProperties}
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
                  <th key={column.id} scope="col" role="columnheader" className={column.kind === 'derived' ? 'is-derived' : undefined} title={column.kind === 'derived' ? derived.hint : words.column(column)}>
                    {words.columnShort(column)} <span className="soft">{words.unit(column)}</span>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {grid.keys.map((key, index) => (
                <GridRow key={key} rowIndex={index} keyNumber={key} columns={columns} sheet={sheet} state={state} cursor={cursor} derived={derived} words={words} statusId={statusId} />
              ))}
            </tbody>
          </table>
        </div>
        <p id={`${id}-keys`} className="soft small grid-keys">{say('readings.grid.keys')}</p>
        {grid.message !== '' && <Note><span aria-hidden="true">{grid.message}</span></Note>}
      </div>
      {layout.aside(goToKey)}
      {grid.paste !== undefined && (
        <PasteDialog plan={grid.paste} context={grid.context} words={words} onPaste={grid.runPaste} onCancel={() => { grid.setPaste(undefined); grid.focusCell(); }} />
      )}
      {menu && <CellDialog grid={grid} outcomes={layout.outcomes} onClose={() => { setMenu(false); }} />}
    </section>
  );
});
