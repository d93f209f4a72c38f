import { Plus, X } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Book } from '../../../core/book/index.ts';
import { commonWords } from '../../texts/index.ts';
import { shedWords } from '../../texts/shed/index.ts';
import { Button, Section } from '../../ui/index.ts';
import { Cell, type Column, type Commit, isRight } from './column.tsx';

/** A table inside a record: the tanks of a machine, the products of a mix. */
export type Part<R> = {
  readonly title: string;
  readonly shownFor: (record: R) => boolean;
  readonly draw: (record: R, book: Book, commit: Commit<R>) => ReactNode;
};

type PartOptions<R, P> = {
  readonly title: string;
  /** What one row is called, "tank". */
  readonly one: string;
  readonly rows: (record: R) => readonly P[];
  readonly replace: (record: R, rows: readonly P[]) => R;
  readonly columns: readonly Column<P>[] | ((record: R) => readonly Column<P>[]);
  readonly name: (row: P, book: Book) => string;
  readonly keyOf: (row: P) => string;
  /** Makes a new row, or says why there can be none. */
  readonly create: (record: R, book: Book) => P | string;
  readonly shownFor?: (record: R) => boolean;
};

/** Describes a table inside a record. The rows' type stays inside. */
export function part<R, P>(options: PartOptions<R, P>): Part<R> {
  return {
    title: options.title,
    shownFor: options.shownFor ?? (() => true),
    draw: (record, book, commit) => <PartTable options={options} record={record} book={book} commit={commit} />,
  };
}

type PartTableProps<R, P> = {
  readonly options: PartOptions<R, P>;
  readonly record: R;
  readonly book: Book;
  readonly commit: Commit<R>;
};

function PartTable<R, P>({ options, record, book, commit }: PartTableProps<R, P>) {
  const { title, one, keyOf, name } = options;
  const columns = typeof options.columns === 'function' ? options.columns(record) : options.columns;
  const rows = options.rows(record);
  const fresh = options.create(record, book);
  const replace = (next: readonly P[], label: string) => commit(options.replace(record, next), label);
  return (
    <Section
      title={title}
      aside={
        <Button
          look="quiet"
          label={shedWords.part.addOne(one)}
          tip={shedWords.part.addOne(one)}
          whyNot={typeof fresh === 'string' ? fresh : null}
          onPress={() => typeof fresh !== 'string' && replace([...rows, fresh], shedWords.part.added(one))}
        >
          <Plus size={15} aria-hidden="true" />
        </Button>
      }
    >
      {rows.length === 0 && <p className="quiet small">{shedWords.part.none}</p>}
      {rows.map((row, index) => (
        <div key={keyOf(row)} className="part-row">
          <div className="part-fields">
            {columns
              .filter((column) => column.hiddenFor?.(row) !== true)
              .map((column) => (
                <div key={column.label} className={`part-field${isRight(column) ? ' part-field-right' : ''}`}>
                  <span className="part-label" aria-hidden="true">
                    {column.label}
                  </span>
                  <Cell
                    column={column}
                    record={row}
                    book={book}
                    name={name(row, book)}
                    commit={(next, label) => replace(rows.with(index, next), label)}
                  />
                </div>
              ))}
          </div>
          <Button
            look="quiet"
            label={shedWords.part.removeOf(name(row, book))}
            tip={commonWords.remove}
            onPress={() => replace(rows.toSpliced(index, 1), shedWords.part.removeOf(one))}
          >
            <X size={14} aria-hidden="true" />
          </Button>
        </div>
      ))}
    </Section>
  );
}
