import { EXCHANGE_ID, goTo, selectSheet } from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsBook, offered } from './conditions.ts';

const words = commandsWords.paper;

const NO_SHEET = words.chooseSheetPaperRoom;
const NO_RECORDS = words.chooseApplicationRecordsPaper;

/** Sheets, files for other programs, and records that are kept. */
export const paperCommands: readonly Command[] = commandsOf('paper', {
  'paper.print': { ...offered('paper.print', words.printSheet, NO_SHEET), keys: ['Mod+P'] },
  'paper.pdf': offered('paper.pdf', words.saveSheetPdf, NO_SHEET),
  'plan.files': {
    title: words.writeDaysOtherPrograms,
    whyNot: needsBook,
    run: () => {
      selectSheet(EXCHANGE_ID);
      goTo('paper');
    },
  },
  'records.keep': offered('records.keep', words.keepApplicationRecordsDay, NO_RECORDS),
  'records.keep-others': offered('records.keep-others', words.keepRecordsOtherDays, NO_RECORDS),
  'records.table': offered('records.table', words.writeAllRecordsTable, NO_RECORDS),
});
