import {
  closeBook,
  importFile,
  openBookFile,
  saveCopy,
  showBackups,
  trySavingAgain,
  useBook,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsBook } from './conditions.ts';
import { exportCommands } from './exports.ts';

const words = commandsWords.book;

/** The working file: opening it, adding to it, copying it. */
export const bookCommands: readonly Command[] = [
  ...commandsOf('book', {
    'book.new': { title: words.startOrOpenBook, whyNot: needsBook, run: closeBook },
    'book.open': { title: words.openBookFile, keys: ['Mod+O'], run: openBookFile },
    'book.import': {
      title: words.addLawnsOrTravel,
      keys: ['Mod+I'],
      whyNot: needsBook,
      run: () => importFile(),
    },
    'book.copy': {
      title: words.writeCopyBook,
      keys: ['Mod+Shift+S'],
      whyNot: needsBook,
      run: () => saveCopy('book'),
    },
    'book.json': { title: words.writeCopyJson, whyNot: needsBook, run: () => saveCopy('json') },
    'book.backups': { title: words.backupsBook, whyNot: needsBook, run: showBackups },
  }),
  ...exportCommands,
  ...commandsOf('book', {
    'book.retry': {
      title: words.trySaveAgain,
      whyNot: () => (useBook.getState().save.kind === 'failed' ? null : words.everyEditSaved),
      run: trySavingAgain,
    },
  }),
];
