import type { Issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';

/** One invariant of a book. `find` never throws; what it finds is listed, and the book stays as it is. */
export type Rule = {
  /** Stable name, kebab-case; the code of its issues. */
  readonly code: string;
  readonly find: (book: Book) => readonly Issue[];
};

/** A record as it is named in issues: "rig Rig North". */
export function named(what: string, record: { readonly id: string; readonly name: string }): string {
  return `${what} ${record.name === '' ? record.id : record.name}`;
}
