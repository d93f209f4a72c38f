import type { GroundWriter } from '../../core/formats/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import { useBook } from './book.ts';
import { fileName, receiveFile } from './files.ts';
import { askHost } from './host.ts';

/** Writes the lawns of the open book as a file of the given kind, where the user says. */
export async function exportGround(writer: GroundWriter): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  const { name, properties } = open.book;
  const text = writer.write(properties, { title: name, measure: measureProperty });
  const suggestedName = `${fileName(name)}.${writer.extension}`;
  receiveFile(await askHost('file.saveText', { suggestedName, text }));
}
