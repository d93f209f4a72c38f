import { useBook } from './book.ts';
import { fileName, receiveFile } from './files.ts';
import { askHost } from './host.ts';

/** Writes a table (CSV) where the user says; its name begins with that of the book. */
export async function saveTable(what: string, text: string): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  receiveFile(await askHost('file.saveText', { suggestedName: `${fileName(open.book.name)} ${what}.csv`, text }));
}
