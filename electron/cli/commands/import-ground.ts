import { ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import type { GroundSource } from '../../../core/formats/index.ts';
import { applyIntake, type IntakePreview, type IntakeTools, previewIntake } from '../../../core/intake/index.ts';
import type { FileMapping } from '../input/index.ts';
import type { Imported } from './import-times.ts';

/** Takes what a file of ground holds into a book, exactly as it is previewed. */
export function importGround(
  book: Book,
  source: GroundSource,
  { mapping, leftOut }: FileMapping,
  fileName: string,
  tools: IntakeTools,
): Result<Imported> {
  const preview = previewIntake(book, source, mapping, fileName, tools);
  const after = done(book, preview);
  if (!after.ok) return after;
  const { found, ...counts } = preview.counts;
  const idsOf = (kind: 'new' | 'changed' | 'same') =>
    preview.properties.filter((each) => each.kind === kind).map((each) => each.after.id);
  return ok({
    book: after.value,
    output: {
      format: 'swardway-import',
      version: 2,
      from: source.formatId,
      bookId: book.id,
      found,
      accepted: found - counts.rejected,
      rejected: counts.rejected,
      counts,
      records: preview.rows.map(({ where, kind, words, propertyIds }) => ({ where, kind, words, propertyIds })),
      added: idsOf('new'),
      changed: idsOf('changed'),
      same: idsOf('same'),
      leftOut,
      properties: after.value.properties.length,
      matrixPlaces: 0,
      issues: [...preview.issues, ...preview.rows.flatMap((each) => each.issues)],
    },
  });
}

/** The book after what was previewed; the book itself where that is nothing. */
function done(book: Book, preview: IntakePreview): Result<Book> {
  const action = applyIntake(book, preview);
  if (!action.ok) return action.error.code === 'nothing-to-do' ? ok(book) : action;
  const applied = applyAction(book, action.value);
  return applied.ok ? ok(applied.value.book) : applied;
}
