import { create } from 'zustand';
import { canonicalJson, err, type Issue, ok, type Result } from '../../core/base/index.ts';
import type { Book, Property, TravelMatrix } from '../../core/book/index.ts';
import { findFormat } from '../../core/formats/index.ts';

/** What a file would change in the book; exactly this is done when the user agrees. */
export type ImportPreview =
  | {
      readonly kind: 'ground';
      readonly fileName: string;
      readonly formatTitle: string;
      readonly found: number;
      readonly rejected: number;
      readonly fresh: readonly Property[];
      /** Lawns that the book has under the same id, with other content. */
      readonly changed: readonly Property[];
      readonly same: number;
      readonly parkingAssumed: number;
      readonly issues: readonly Issue[];
    }
  | {
      readonly kind: 'matrix';
      readonly fileName: string;
      readonly formatTitle: string;
      readonly found: number;
      readonly rejected: number;
      readonly matrix: TravelMatrix;
      readonly issues: readonly Issue[];
    };

/** The import that waits for the user's word. */
export const useImport = create<{ readonly preview: ImportPreview | null }>(() => ({ preview: null }));

export function closeImport(): void {
  useImport.setState({ preview: null });
}

/** Reads a file against the open book. Nothing is changed yet. Errors: those of the format. */
export function previewImport(book: Book, fileName: string, text: string | null): Result<ImportPreview> {
  if (text === null) {
    return err('file-not-readable', fileName, 'The file came without its text.', 'Choose a GeoJSON or CSV file.');
  }
  const format = findFormat(fileName, text);
  if (!format.ok) return format;
  const { title: formatTitle } = format.value;
  if (format.value.kind === 'matrix') {
    const read = format.value.read(text, fileName);
    if (!read.ok) return read;
    const { matrix, found, rejected, issues } = read.value;
    return ok({ kind: 'matrix', fileName, formatTitle, found, rejected, matrix, issues });
  }
  const read = format.value.read(text, fileName);
  if (!read.ok) return read;
  const { properties, found, rejected, issues, parkingAssumed } = read.value;
  const parts = sortOut(book, properties);
  return ok({
    kind: 'ground',
    fileName,
    formatTitle,
    found,
    rejected,
    ...parts,
    parkingAssumed: parkingAssumed.length,
    issues,
  });
}

function sortOut(book: Book, properties: readonly Property[]) {
  const known = new Map(book.properties.map((property) => [property.id, property]));
  const fresh: Property[] = [];
  const changed: Property[] = [];
  let same = 0;
  for (const property of properties) {
    const before = known.get(property.id);
    if (before === undefined) fresh.push(property);
    else if (canonicalJson(before) === canonicalJson(property)) same += 1;
    else changed.push(property);
  }
  return { fresh, changed, same };
}
