import { Copy, Plus, Trash2, TriangleAlert } from 'lucide-react';
import type { Book } from '../../../core/book/index.ts';
import type { RecordOf } from '../../../core/edit/index.ts';
import { CommandButton, useOffer } from '../../commands/index.ts';
import {
  addToShelf,
  duplicateOnShelf,
  freshId,
  putRecord,
  removeRecord,
  type Shelf,
  selectShelf,
  showError,
  useSelection,
} from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { shedWords } from '../../texts/shed/index.ts';
import { Button, Empty, Field } from '../../ui/index.ts';
import { Cell, type Commit, isRight } from './column.tsx';
import type { ShelfPlan } from './shelf.ts';

type ShelfProps<Name extends Shelf> = { readonly plan: ShelfPlan<Name>; readonly book: Book };

/** Stores a change of a record; one that is refused is shown. */
function commitTo<Name extends Shelf>(shelf: Name): Commit<RecordOf<Name>> {
  return (next, label) => {
    const done = putRecord(shelf, next, label);
    if (!done.ok) showError(done.error);
    return done;
  };
}

/** The records of one shelf as a table whose cells can be edited. */
export function ShelfTable<Name extends Shelf>({ plan, book }: ShelfProps<Name>) {
  const records = book[plan.shelf] as readonly RecordOf<Name>[];
  const selectedId = useSelection((state) => state.shelfRecordId);
  const fresh = plan.create(book, freshId(records, plan.one.replaceAll(' ', '-')));
  const addWords = shedWords.shelf.add(/^[aeiou]/.test(plan.one) ? shedWords.shelf.an : shedWords.shelf.a, plan.one);
  useOffer('shed.add', {
    title: addWords,
    whyNot: typeof fresh === 'string' ? fresh : null,
    run: () => typeof fresh !== 'string' && addToShelf(plan.shelf, fresh),
  });
  const columns = plan.columns.filter((column) => column.inTable === true);
  const addButton = (
    <CommandButton id="shed.add" look="main">
      <Plus size={15} aria-hidden="true" /> {addWords}
    </CommandButton>
  );
  if (records.length === 0) {
    // A shelf takes its first record at once, but for one that has to name a record of another shelf.
    const toFillPoints = <Button onPress={() => selectShelf('fillPoints')}>{shedWords.shelf.toFillPoints}</Button>;
    return (
      <Empty
        title={shedWords.shelf.noneYet(plan.title.toLowerCase())}
        actions={typeof fresh === 'string' ? toFillPoints : addButton}
      >
        {plan.about} {typeof fresh === 'string' && `${fresh}.`}
      </Empty>
    );
  }
  return (
    <div className="shelf">
      <header className="shelf-head">
        <div>
          <h2>{plan.title}</h2>
          <p className="quiet small">{plan.about}</p>
        </div>
        {addButton}
      </header>
      {plan.caution !== undefined && (
        <p className="shelf-caution">
          <TriangleAlert size={14} aria-hidden="true" /> {plan.caution}
        </p>
      )}
      <div className="table-scroll">
        <table className="table table-edit">
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.label} scope="col" className={isRight(column) ? 'number' : undefined}>
                  {column.label}
                </th>
              ))}
              <th scope="col">
                <span className="only-spoken">{shedWords.shelf.do}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {records.map((record) => (
              <tr
                key={record.id}
                className={record.id === selectedId ? 'row-selected' : undefined}
                data-subject="record"
                onFocus={() => record.id !== selectedId && selectShelf(plan.shelf, record.id)}
                onClick={() => selectShelf(plan.shelf, record.id)}
                onContextMenu={() => selectShelf(plan.shelf, record.id)}
              >
                {columns.map((column) => (
                  <td key={column.label} className={isRight(column) ? 'number' : undefined}>
                    <Cell
                      column={column}
                      record={record}
                      book={book}
                      name={record.name}
                      commit={commitTo(plan.shelf)}
                    />
                  </td>
                ))}
                <td className="row-tools">
                  <Button
                    look="quiet"
                    label={shedWords.shelf.duplicateOf(record.name)}
                    tip={shedWords.shelf.duplicate}
                    onPress={() => duplicateOnShelf(plan.shelf, record)}
                  >
                    <Copy size={14} aria-hidden="true" />
                  </Button>
                  <Button
                    look="quiet"
                    label={shedWords.shelf.removeOf(record.name)}
                    tip={commonWords.remove}
                    onPress={() => removeRecord(plan.shelf, record.id, record.name)}
                  >
                    <Trash2 size={14} aria-hidden="true" />
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}

/** Every member of the selected record. */
export function ShelfDetails<Name extends Shelf>({ plan, book }: ShelfProps<Name>) {
  const records = book[plan.shelf] as readonly RecordOf<Name>[];
  const selectedId = useSelection((state) => state.shelfRecordId);
  const record = records.find((each) => each.id === selectedId) ?? records[0];
  if (record === undefined) return <p className="quiet fields">{shedWords.shelf.nothingYet}</p>;
  const commit = commitTo(plan.shelf);
  return (
    <div className="inspector" key={record.id}>
      <header className="inspector-head">
        <h2>{record.name}</h2>
      </header>
      <div className="fields">
        {plan.columns
          .filter((column) => column.hiddenFor?.(record) !== true && column.kind !== 'shown')
          .map((column) => (
            <Field key={column.label} label={column.label}>
              <Cell column={column} record={record} book={book} name={record.name} commit={commit} />
            </Field>
          ))}
      </div>
      {plan.parts
        .filter((each) => each.shownFor(record))
        .map((each) => (
          <div key={each.title}>{each.draw(record, book, commit)}</div>
        ))}
    </div>
  );
}
