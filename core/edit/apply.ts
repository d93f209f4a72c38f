import { err, ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { Action, ApplyResult, SeveralAction } from './action.ts';
import { applyMove } from './move.ts';
import { applyPut } from './put.ts';
import { applyRemove } from './remove.ts';
import { applySet } from './set.ts';
import { TABLES } from './tables.ts';

/**
 * Applies an edit to a book. The book itself is never changed; what the edit does not touch is shared with the new one.
 *
 * @returns the new book with the inverse edit and a label; else 'book-invalid' where the schema of the book is broken,
 * 'reference-missing' for a record that is not there, 'request-invalid' for an edit of unknown kind
 */
export function applyAction(book: Book, action: Action): ApplyResult {
  if ('table' in action && !TABLES.includes(action.table)) {
    return err(
      'request-invalid',
      String(action.table),
      'The book has no such table.',
      'Report this as a fault of the program.',
    );
  }
  switch (action.kind) {
    case 'put':
      return applyPut(book, action);
    case 'remove':
      return applyRemove(book, action);
    case 'move':
      return applyMove(book, action);
    case 'set':
      return applySet(book, action);
    case 'several':
      return applySeveral(book, action);
    default:
      return err(
        'request-invalid',
        'edit',
        'The edit is of an unknown kind.',
        'Report this as a fault of the program.',
      );
  }
}

/** All of the edits, or none; the inverse undoes them from the last to the first. */
function applySeveral(book: Book, action: SeveralAction): ApplyResult {
  let after = book;
  const inverses: Action[] = [];
  for (const each of action.actions) {
    const applied = applyAction(after, each);
    if (!applied.ok) return applied;
    after = applied.value.book;
    inverses.unshift(applied.value.inverse);
  }
  const { label } = action;
  return ok({ book: after, inverse: { kind: 'several', label, actions: inverses }, label });
}
