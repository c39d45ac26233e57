import type { ReactNode } from 'react';

interface ScrollTableProps {
  /** What the region is called, since it is reached by keyboard. */
  readonly label: string;
  /** Over the heads of the rows. */
  readonly corner: ReactNode;
  readonly columns: readonly { readonly key: string | number; readonly head: ReactNode }[];
  /** Cells hold words rather than figures. */
  readonly isOfWords?: boolean;
  /** The rows. */
  readonly children: ReactNode;
}

/** A table of figures that scrolls sideways by itself where it is too wide. */
export function ScrollTable({ label, corner, columns, isOfWords = false, children }: ScrollTableProps) {
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap" tabIndex={0} role="region" aria-label={label}>
      <table className={isOfWords ? 'figures-table words-table' : 'figures-table'}>
        <thead>
          <tr>
            <th scope="col">{corner}</th>
            {columns.map(({ key, head }) => <th key={key} scope="col">{head}</th>)}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}
