import { canonicalJson, err, ok, type Result } from '../base/index.ts';
import type { Book, Property } from '../book/index.ts';
import type { Action, SeveralAction } from '../edit/index.ts';
import type { IntakePreview } from './types.ts';

/**
 * The one edit that does exactly what was previewed.
 * Errors: `book-changed` where the properties of the book are others than those that were looked at; `nothing-to-do`.
 */
export function applyIntake(book: Book, preview: IntakePreview): Result<SeveralAction> {
  if (!sameProperties(book.properties, preview.base)) {
    return err(
      'book-changed',
      preview.fileName,
      'The lawns of the book have changed since the file was looked at.',
      'Look at the file once more; nothing was imported.',
    );
  }
  const fresh = preview.properties.filter((each) => each.kind === 'new');
  const changed = preview.properties.filter((each) => each.kind === 'changed');
  const taken = new Set(book.fillPoints.map((each) => each.id));
  const clash = fresh.find((each) => taken.has(each.after.id));
  if (clash !== undefined) {
    const detail = `The id ${clash.after.id} has become that of a fill point meanwhile.`;
    return err('book-changed', preview.fileName, detail, 'Look at the file once more; nothing was imported.');
  }
  if (fresh.length + changed.length === 0) {
    const hint = 'Nothing has to be imported.';
    return err('nothing-to-do', preview.fileName, 'The file changes nothing in the book.', hint);
  }
  const actions = [...fresh, ...changed].map(
    ({ after }): Action => ({ kind: 'put', table: 'properties', record: after }),
  );
  return ok({ kind: 'several', label: labelOf(fresh.length, changed.length, preview.fileName), actions });
}

function labelOf(fresh: number, changed: number, fileName: string): string {
  const lawns = (count: number) => (count === 1 ? '1 lawn' : `${count} lawns`);
  if (changed === 0) return `Add ${lawns(fresh)} from ${fileName}`;
  if (fresh === 0) return `Change ${lawns(changed)} from ${fileName}`;
  return `Add ${lawns(fresh)} and change ${changed} from ${fileName}`;
}

function sameProperties(now: readonly Property[], then: readonly Property[]): boolean {
  if (now === then) return true;
  if (now.length !== then.length) return false;
  return now.every((each, index) => {
    const other = then[index];
    return each === other || canonicalJson(each) === canonicalJson(other);
  });
}
