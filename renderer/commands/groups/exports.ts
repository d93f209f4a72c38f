import { WRITERS } from '../../../core/formats/index.ts';
import { exportGround, useBook } from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsBook } from './conditions.ts';

const words = commandsWords.book;

function whyNotExport(): string | null {
  const { open } = useBook.getState();
  return needsBook() ?? (open?.book.properties.length === 0 ? words.bookHasNoLawns : null);
}

/** One command for every kind of file that ground can be written as. */
export const exportCommands: readonly Command[] = WRITERS.flatMap((writer) =>
  commandsOf('book', {
    [`book.export-${writer.id}`]: {
      title: words.writeLawns(writer.title.charAt(0).toLowerCase(), writer.title.slice(1)),
      whyNot: whyNotExport,
      run: () => exportGround(writer),
    },
  }),
);
