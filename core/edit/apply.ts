import { err, ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { Action, ApplyResult, SeveralAction } from './action.ts';
import { applyMove } from './move.ts';
import { applyPut } from './put.ts';
import { applyPuts, isPlainPut, LEAST_MANY, runOfPuts } from './put-many.ts';
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

/** All of the edits, or none; the inverse undoes them from the last to the first. Long runs of puts are done together. */
function applySeveral(book: Book, action: SeveralAction): ApplyResult {
  const { label } = action;
  let after = book;
  const inverses: Action[][] = [];
  for (let start = 0; start < action.actions.length; ) {
    const run = runOfPuts(action.actions, start);
    const count = run >= LEAST_MANY ? run : 1;
    const part = action.actions.slice(start, start + count);
    const applied =
      count > 1 ? applyPuts(after, part.filter(isPlainPut), label) : applyAction(after, part[0] as Action);
    if (!applied.ok) return applied;
    after = applied.value.book;
    const { inverse } = applied.value;
    inverses.push(count > 1 && inverse.kind === 'several' ? [...inverse.actions] : [inverse]);
    start += count;
  }
  return ok({ book: after, inverse: { kind: 'several', label, actions: inverses.reverse().flat() }, label });
}
