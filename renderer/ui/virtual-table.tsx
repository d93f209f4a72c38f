import type { ReactNode } from 'react';
import { useRowsInView } from './use-rows-in-view.ts';

type VirtualTableProps<Row extends { readonly id: string }> = {
  readonly label: string;
  /** Heads of the columns. */
  readonly columns: readonly { readonly id: string; readonly title: string }[];
  readonly rows: readonly Row[];
  readonly rowPx: number;
  readonly selectedId: string | null;
  /** Its cells; the first one is the head of the row. */
  readonly children: (row: Row) => ReactNode;
};

/** A table of thousands of rows of one height, of which only those in view are drawn. Its heads stay where it is scrolled. */
export function VirtualTable<Row extends { readonly id: string }>(props: VirtualTableProps<Row>) {
  const { label, columns, rows, rowPx, selectedId, children } = props;
  const { box, onScroll, range } = useRowsInView<HTMLElement>(rows.length, rowPx);
  const { first, end } = range;
  return (
    <section
      ref={box}
      className="virtual-table"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be reached and scrolled from the keyboard.
      tabIndex={0}
      aria-label={label}
      onScroll={onScroll}
    >
      <table aria-rowcount={rows.length + 1}>
        <caption className="only-spoken">{label}</caption>
        <thead>
          <tr aria-rowindex={1}>
            {columns.map(({ id, title }) => (
              <th key={id} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <Spacer heightPx={first * rowPx} width={columns.length} />
          {rows.slice(first, end).map((row, offset) => (
            <tr
              key={row.id}
              aria-rowindex={first + offset + 2}
              className={row.id === selectedId ? 'virtual-selected' : undefined}
              style={{ height: rowPx }}
            >
              {children(row)}
            </tr>
          ))}
          <Spacer heightPx={(rows.length - end) * rowPx} width={columns.length} />
        </tbody>
      </table>
    </section>
  );
}

/** Stands for rows that are not drawn. */
function Spacer({ heightPx, width }: { readonly heightPx: number; readonly width: number }) {
  if (heightPx <= 0) return null;
  return (
    <tr>
      <td colSpan={width} style={{ height: heightPx, padding: 0 }} />
    </tr>
  );
}
