import type { ReactNode } from 'react';
import { VirtualList } from '../../ui/index.ts';

/** A column of figures beside the names of a long list. */
export type FigureColumn<Item> = {
  readonly id: string;
  readonly title: string;
  readonly tip?: string;
  readonly show: (item: Item) => ReactNode;
};

type FigureListProps<Item extends { readonly id: string; readonly name: string }> = {
  readonly label: string;
  /** Head of the names. */
  readonly nameTitle: string;
  readonly columns: readonly FigureColumn<Item>[];
  readonly items: readonly Item[];
  readonly selectedId: string | null;
  readonly onSelect: (id: string) => void;
  readonly onOpen: (id: string) => void;
};

const ROW_PX = 32;
const NAME_PX = 170;
const COLUMN_PX = 86;
const GAP_PX = 12;

/** Thousands of names with figures in columns, of which only those in view are drawn. Each figure is spoken with the head of its column. */
export function FigureList<Item extends { readonly id: string; readonly name: string }>(props: FigureListProps<Item>) {
  const { label, nameTitle, columns, items, selectedId, onSelect, onOpen } = props;
  const grid = {
    gridTemplateColumns: `minmax(${NAME_PX}px, 2fr) repeat(${columns.length}, minmax(${COLUMN_PX - GAP_PX}px, 1fr))`,
  };
  return (
    <div className="figure-list">
      <div className="figure-list-body" style={{ minWidth: NAME_PX + COLUMN_PX * columns.length }}>
        <div className="figure-row figure-heads" style={grid} aria-hidden="true">
          <span>{nameTitle}</span>
          {columns.map((column) => (
            <span key={column.id} className="number" title={column.tip ?? column.title}>
              {column.title}
            </span>
          ))}
        </div>
        <VirtualList
          label={label}
          items={items}
          rowPx={ROW_PX}
          selectedId={selectedId}
          onSelect={onSelect}
          onOpen={onOpen}
        >
          {(item) => (
            <div className="figure-row" style={grid}>
              <span className="row-title" title={item.name}>
                {item.name}
              </span>
              {columns.map((column) => (
                <span key={column.id} className="number">
                  <span className="only-spoken">, {column.title} </span>
                  {column.show(item)}
                </span>
              ))}
            </div>
          )}
        </VirtualList>
      </div>
    </div>
  );
}
