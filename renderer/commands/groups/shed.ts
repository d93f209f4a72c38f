import {
  duplicateOnShelf,
  forgetRoads,
  importRoads,
  learnRoads,
  removeRecord,
  SHED_SHELVES,
  type Shelf,
  useBook,
  useRoads,
  useSelection,
  useView,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsBook, offered } from './conditions.ts';

const words = commandsWords.shed;

/** The record of the shelf that is open; null where a shelf is not open or empty. */
function chosenRecord() {
  const { shelf, shelfRecordId } = useSelection.getState();
  const table = SHED_SHELVES.find((each) => each === shelf) as Shelf | undefined;
  const book = useBook.getState().open?.book;
  if (table === undefined || book === undefined || useView.getState().room !== 'shed') return null;
  const record = book[table].find((each) => each.id === shelfRecordId);
  return record === undefined ? null : { table, record };
}

const named = (verb: string) => () => {
  const chosen = chosenRecord();
  return words.named(verb, chosen === null ? words.selectedRecord : chosen.record.name);
};

const needsRecord = () => needsBook() ?? (chosenRecord() === null ? words.selectRowTableShed : null);

const needsRoads = () =>
  needsBook() ??
  (useRoads.getState().importing !== null
    ? words.extractBeingImported
    : useRoads.getState().status?.roads == null && useBook.getState().open?.book.roads?.extract === undefined
      ? words.noRoadsLieBeside
      : null);

/** What lawns are treated with, and the roads to them. */
export const shedCommands: readonly Command[] = commandsOf('shed', {
  'shed.add': offered('shed.add', words.addOpenShelf, words.openShelfShedFirst),
  'shed.duplicate': {
    title: named(words.duplicate),
    whyNot: needsRecord,
    run: () => {
      const chosen = chosenRecord();
      if (chosen !== null) duplicateOnShelf(chosen.table, chosen.record);
    },
  },
  'shed.remove': {
    title: named(words.remove),
    whyNot: needsRecord,
    run: () => {
      const chosen = chosenRecord();
      if (chosen !== null) removeRecord(chosen.table, chosen.record.id, chosen.record.name);
    },
  },
  'shed.roads-import': {
    title: words.importExtract,
    whyNot: () => needsBook() ?? (useRoads.getState().importing === null ? null : words.extractBeingImported),
    run: importRoads,
  },
  'shed.roads-learn': {
    title: words.learnDrivingSpeedsVisits,
    whyNot: needsRoads,
    run: learnRoads,
  },
  'shed.roads-forget': { title: words.removeRoadsBesideBook, whyNot: needsRoads, run: forgetRoads },
});
