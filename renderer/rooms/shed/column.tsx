import type { ReactNode } from 'react';
import { err, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { Formatter } from '../../format/index.ts';
import { useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { shedWords } from '../../texts/shed/index.ts';
import { Choice, type ChoiceOption, DraftInput, QuantityInput, type QuantityKind, Tick } from '../../ui/index.ts';

type Base<R> = {
  readonly label: string;
  /** Shown in the table too, not only in the details. */
  readonly inTable?: boolean;
  /** True where this member makes no sense for a record. */
  readonly hiddenFor?: (record: R) => boolean;
};

/** One member of a record that can be seen and edited. */
export type Column<R> = Base<R> &
  (
    | { readonly kind: 'text'; readonly get: (record: R) => string; readonly set: (record: R, text: string) => R }
    | {
        readonly kind: 'figure';
        readonly figure: QuantityKind;
        readonly get: (record: R) => number | null;
        readonly set: (record: R, value: number) => R;
        /** Takes the figure away; absent where there has to be one. */
        readonly unset?: (record: R) => R;
        readonly positive?: boolean;
        readonly most?: number;
      }
    | {
        readonly kind: 'choice';
        readonly options: (book: Book, record: R) => readonly ChoiceOption<string>[];
        readonly get: (record: R) => string;
        readonly set: (record: R, value: string, book: Book) => R;
      }
    | {
        /** Any number of a list. */
        readonly kind: 'several';
        readonly options: (book: Book, record: R) => readonly ChoiceOption<string>[];
        readonly get: (record: R, book: Book) => readonly string[];
        readonly set: (record: R, values: readonly string[], book: Book) => R;
      }
    | {
        /** A day of the calendar; null where none is entered. */
        readonly kind: 'date';
        readonly get: (record: R) => string | null;
        readonly set: (record: R, date: string) => R;
        readonly unset: (record: R) => R;
      }
    | { readonly kind: 'flag'; readonly get: (record: R) => boolean; readonly set: (record: R, on: boolean) => R }
    | {
        readonly kind: 'shown';
        readonly show: (record: R, book: Book, words: Formatter) => ReactNode;
        readonly right?: boolean;
      }
  );

/** Yes, no, or not entered. */
export function yesNoOf<R>(
  label: string,
  get: (record: R) => boolean | undefined,
  set: (record: R, value: boolean | undefined) => R,
): Column<R> {
  const words = (value: boolean | undefined): string =>
    value === undefined ? NOT_ENTERED : value ? shedWords.column.yes : shedWords.column.no;
  return {
    kind: 'choice',
    label,
    options: () => [NOT_ENTERED, shedWords.column.yes, shedWords.column.no].map((value) => ({ value, words: value })),
    get: (record) => words(get(record)),
    set: (record, value) => set(record, value === NOT_ENTERED ? undefined : value === 'yes'),
  };
}

const NOT_ENTERED = shedWords.column.notEntered;

/** The record with a member set, or without it where there is no value. */
export function withMember<R extends object, Key extends keyof R>(record: R, key: Key, value: R[Key] | undefined): R {
  if (value !== undefined) return { ...record, [key]: value };
  const { [key]: _, ...rest } = record;
  return rest as R;
}

export type Commit<R> = (next: R, label: string) => Result<unknown>;

type CellProps<R> = {
  readonly column: Column<R>;
  readonly record: R;
  readonly book: Book;
  readonly name: string;
  readonly commit: Commit<R>;
};

/** The input for one member of one record. `name` says whose it is, for those who hear it. */
export function Cell<R>({ column, record, book, name, commit }: CellProps<R>) {
  const format = useFormat();
  const label = `${column.label}, ${name}`;
  const step = shedWords.column.changed(column.label);
  if (column.hiddenFor?.(record) === true) return <span className="quiet">–</span>;
  switch (column.kind) {
    case 'text':
      return (
        <DraftInput
          label={label}
          text={column.get(record)}
          onCommit={(text) => (text.length > 200 ? tooLong(label) : commit(column.set(record, text), step))}
        />
      );
    case 'figure':
      return (
        <QuantityInput
          kind={column.figure}
          label={label}
          value={column.get(record)}
          optional={column.unset !== undefined}
          positive={column.positive}
          most={column.most}
          onCommit={(value) =>
            commit(value === null ? (column.unset?.(record) ?? record) : column.set(record, value), step)
          }
        />
      );
    case 'choice':
      return (
        <Choice
          label={label}
          value={column.get(record)}
          options={column.options(book, record)}
          onChoose={(value) => {
            commit(column.set(record, value, book), step);
          }}
        />
      );
    case 'several': {
      const chosen = column.get(record, book);
      const options = column.options(book, record);
      if (options.length === 0) return <span className="quiet">{shedWords.column.nothingToChoose}</span>;
      return (
        <fieldset className="several" aria-label={label}>
          {options.map((option) => (
            <Tick
              key={option.value}
              label={option.words}
              checked={chosen.includes(option.value)}
              onChange={(on) => {
                const values = options.map((each) => each.value);
                const next = values.filter((each) => (each === option.value ? on : chosen.includes(each)));
                commit(column.set(record, next, book), step);
              }}
            />
          ))}
        </fieldset>
      );
    }
    case 'date':
      return (
        <input
          type="date"
          className="input"
          aria-label={label}
          value={column.get(record) ?? ''}
          onChange={({ target: { value } }) => {
            commit(value === '' ? column.unset(record) : column.set(record, value), step);
          }}
        />
      );
    case 'flag':
      return (
        <Tick
          label={label}
          shown={false}
          checked={column.get(record)}
          onChange={(on) => {
            commit(column.set(record, on), step);
          }}
        />
      );
    case 'shown':
      return <>{column.show(record, book, format)}</>;
  }
}

function tooLong(where: string): Result<never> {
  return err('quantity-out-of-range', where, shedWords.column.tooLong, commonWords.shortenIt);
}

export function isRight<R>(column: Column<R>): boolean {
  return column.kind === 'figure' || (column.kind === 'shown' && column.right === true);
}

/** A member that holds one of a few words. */
export function words<const Values extends readonly string[]>(values: Values): readonly ChoiceOption<Values[number]>[] {
  return values.map((value: Values[number]) => ({ value, words: value.replaceAll('-', ' ') }));
}

/** A choice among fixed words, checked against the list. */
export function choiceOf<R, Value extends string>(
  label: string,
  values: readonly Value[],
  get: (record: R) => Value,
  set: (record: R, value: Value) => R,
  inTable = true,
): Column<R> {
  return {
    kind: 'choice',
    label,
    inTable,
    options: () => words(values),
    get,
    set: (record, text) => {
      const value = values.find((each) => each === text);
      return value === undefined ? record : set(record, value);
    },
  };
}
