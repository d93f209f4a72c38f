import { WRITERS } from '../../core/formats/index.ts';
import { exportGround, useBook } from '../stores/index.ts';
import { commandsWords, commonWords } from '../texts/index.ts';
import type { Command } from './command.ts';

function whyNotExport(): string | null {
  const { open } = useBook.getState();
  if (open === null) return commonWords.noBook;
  return open.book.properties.length === 0 ? commandsWords.exporting.noLawns : null;
}

/** One command for every kind of file that ground can be written as. */
export const exportCommands: readonly Command[] = WRITERS.map((writer) => ({
  id: `book.export-${writer.id}`,
  group: 'Book',
  title: () => commandsWords.exporting.writeLawns(writer.title.charAt(0).toLowerCase(), writer.title.slice(1)),
  keys: [],
  whyNot: whyNotExport,
  run: () => {
    exportGround(writer).catch(() => undefined);
  },
}));
