import { doneWork } from '../../core/plan/live/index.ts';
import {
  addLawn,
  cancelPlanning,
  changeSettings,
  closeBook,
  copyDiagnostics,
  currentDay,
  currentRound,
  EXCHANGE_ID,
  foldPanel,
  goTo,
  importFile,
  openBookFile,
  openOverlay,
  openPlaces,
  type Panel,
  ROOMS,
  type Room,
  redo,
  redoDraftStep,
  removeLawn,
  saveCopy,
  selectSheet,
  selectStop,
  showAllOnMap,
  showBackups,
  showSelectionOnMap,
  startPicture,
  startPlanning,
  trySavingAgain,
  undo,
  undoDraftStep,
  useBook,
  useDraft,
  useHost,
  usePlans,
  useSelection,
  useView,
} from '../stores/index.ts';
import type { Command } from './command.ts';
import { drawCommands } from './drawing.ts';
import { exportCommands } from './exporting.ts';
import { printSheet, whyNotPrint } from './printing.ts';

const always = () => null;
const needsBook = () => (useBook.getState().open === null ? 'No book is open' : null);

/** Starts work that tells of its own failures by notices. */
const start = (work: () => Promise<unknown>) => () => {
  work().catch(() => undefined);
};

const bookCommands: readonly Command[] = [
  {
    id: 'book.new',
    group: 'Book',
    title: () => 'Start or open a book…',
    keys: [],
    whyNot: needsBook,
    run: start(closeBook),
  },
  {
    id: 'book.open',
    group: 'Book',
    title: () => 'Open a book file…',
    keys: ['Mod+O'],
    whyNot: always,
    run: start(openBookFile),
  },
  {
    id: 'book.import',
    group: 'Book',
    title: () => 'Add lawns or travel times from a file…',
    keys: ['Mod+I'],
    whyNot: needsBook,
    run: start(() => importFile()),
  },
  {
    id: 'book.copy',
    group: 'Book',
    title: () => 'Write a copy of the book',
    keys: ['Mod+Shift+S'],
    whyNot: needsBook,
    run: start(() => saveCopy('book')),
  },
  {
    id: 'book.json',
    group: 'Book',
    title: () => 'Write a copy as JSON',
    keys: [],
    whyNot: needsBook,
    run: start(() => saveCopy('json')),
  },
  {
    id: 'book.backups',
    group: 'Book',
    title: () => 'Backups of this book…',
    keys: [],
    whyNot: needsBook,
    run: start(showBackups),
  },
  ...exportCommands,
  {
    id: 'book.retry',
    group: 'Book',
    title: () => 'Try to save again',
    keys: [],
    whyNot: () => (useBook.getState().save.kind === 'failed' ? null : 'Every edit is saved'),
    run: trySavingAgain,
  },
  {
    id: 'paper.print',
    group: 'Book',
    title: () => 'Print the sheet',
    keys: ['Mod+P'],
    whyNot: whyNotPrint,
    run: printSheet,
  },
];

const drawing = () => useDraft.getState().draft;

/** While something is drawn, undo and redo are about that alone: what it is drawn on must not go from under it. */
function whyNotStep(way: 'undo' | 'redo', nothing: string): string | null {
  const draft = drawing();
  if (draft !== null)
    return draft[way].length === 0 ? `${nothing} in the outline; finish it or set it aside first` : null;
  return useBook.getState().history[way].length === 0 ? nothing : null;
}

const editCommands: readonly Command[] = [
  {
    id: 'edit.undo',
    group: 'Edit',
    title: () => {
      if (drawing() !== null) return 'Undo the last step of the outline';
      const step = useBook.getState().history.undo.at(-1);
      return step === undefined ? 'Undo' : `Undo ${step.label}`;
    },
    keys: ['Mod+Z'],
    whyNot: () => whyNotStep('undo', 'Nothing to take back'),
    run: () => (drawing() === null ? undo() : undoDraftStep()),
  },
  {
    id: 'edit.redo',
    group: 'Edit',
    title: () => {
      if (drawing() !== null) return 'Redo the step of the outline';
      const step = useBook.getState().history.redo.at(-1);
      return step === undefined ? 'Redo' : `Redo ${step.label}`;
    },
    keys: ['Mod+Y', 'Mod+Shift+Z'],
    whyNot: () => whyNotStep('redo', 'Nothing to do again'),
    run: () => (drawing() === null ? redo() : redoDraftStep()),
  },
  { id: 'edit.add-lawn', group: 'Edit', title: () => 'Add a lawn', keys: [], whyNot: needsBook, run: () => addLawn() },
  {
    id: 'edit.places',
    group: 'Edit',
    title: () => 'Find places by address…',
    keys: [],
    whyNot: needsBook,
    run: start(openPlaces),
  },
  {
    id: 'edit.lay-picture',
    group: 'Edit',
    title: () => 'Lay a photo or plan on the map…',
    keys: [],
    whyNot: needsBook,
    run: start(async () => {
      goTo('ground');
      await startPicture();
    }),
  },
  {
    id: 'edit.remove-lawn',
    group: 'Edit',
    title: () => 'Remove the selected lawn',
    keys: ['Mod+Delete'],
    whyNot: () => needsBook() ?? (useSelection.getState().propertyId === null ? 'No lawn is selected' : null),
    run: () => {
      const { propertyId } = useSelection.getState();
      if (propertyId !== null) removeLawn(propertyId);
    },
  },
];

const ROOM_TITLES: Readonly<Record<Room, string>> = {
  ground: 'Ground',
  shed: 'Shed',
  round: 'Round',
  day: 'Day',
  paper: 'Paper',
};

const roomCommands: readonly Command[] = ROOMS.map((room, index) => ({
  id: `go.${room}`,
  group: 'Go to',
  title: () => ROOM_TITLES[room],
  keys: [`Alt+${index + 1}`],
  whyNot: needsBook,
  run: () => goTo(room),
}));

/** Steps to the next or previous stop of the day. */
function stepStop(by: 1 | -1): void {
  const day = currentDay();
  if (day === null) return;
  const { stopNumber } = useSelection.getState();
  const index = day.stops.findIndex((stop) => stop.number === stopNumber);
  const next = day.stops[index < 0 ? (by === 1 ? 0 : day.stops.length - 1) : index + by];
  if (next !== undefined) selectStop(next.number, next.propertyId);
}

const needsDay = () => needsBook() ?? (currentDay() === null ? 'No day is planned yet' : null);

function whyNotPlan(): string | null {
  if (useBook.getState().open === null) return 'No book is open';
  if (usePlans.getState().job !== null) return 'A round is being planned already';
  return currentRound() === null ? 'There is no round to plan; add one first' : null;
}

const planCommands: readonly Command[] = [
  {
    id: 'plan.start',
    group: 'Plan',
    title: () => `Plan ${currentRound()?.name ?? 'the round'}`,
    keys: ['Mod+Enter'],
    whyNot: whyNotPlan,
    run: start(async () => {
      const round = currentRound();
      const { planSeconds, planSeed, planEvenUsd } = useHost.getState().settings;
      const book = useBook.getState().open?.book;
      if (round === null || book === undefined) return;
      goTo('round');
      await startPlanning({
        roundId: round.id,
        seconds: planSeconds,
        seed: planSeed,
        evenUsdPerHour: planEvenUsd,
        done: doneWork(book, round.id),
      });
    }),
  },
  {
    id: 'plan.cancel',
    group: 'Plan',
    title: () => 'Stop planning and keep the best plan',
    keys: ['Mod+.'],
    whyNot: () => (usePlans.getState().job === null ? 'Nothing is being planned' : null),
    run: start(cancelPlanning),
  },
  {
    id: 'plan.files',
    group: 'Plan',
    title: () => 'Write days for other programs: GPX, GeoJSON, KML, iCalendar, CSV, JSON…',
    keys: [],
    whyNot: needsBook,
    run: () => {
      selectSheet(EXCHANGE_ID);
      goTo('paper');
    },
  },
  {
    id: 'day.next-stop',
    group: 'Plan',
    title: () => 'Next stop',
    keys: ['Alt+ArrowDown'],
    whyNot: needsDay,
    run: () => stepStop(1),
  },
  {
    id: 'day.previous-stop',
    group: 'Plan',
    title: () => 'Previous stop',
    keys: ['Alt+ArrowUp'],
    whyNot: needsDay,
    run: () => stepStop(-1),
  },
];

const PANEL_WORDS: Readonly<Record<Panel, string>> = { left: 'list', right: 'details', bottom: 'ribbon' };

function foldCommand(panel: Panel, key: string): Command {
  return {
    id: `view.fold-${panel}`,
    group: 'View',
    title: () => `${useView.getState().panels[panel].folded ? 'Unfold' : 'Fold'} the ${PANEL_WORDS[panel]}`,
    keys: [key],
    whyNot: needsBook,
    run: () => foldPanel(panel, !useView.getState().panels[panel].folded),
  };
}

function appearanceCommand(appearance: 'system' | 'light' | 'dark', title: string): Command {
  return {
    id: `view.${appearance}`,
    group: 'View',
    title: () => title,
    keys: [],
    whyNot: () => (useHost.getState().settings.appearance === appearance ? 'It looks like this already' : null),
    run: start(() => changeSettings({ appearance })),
  };
}

const viewCommands: readonly Command[] = [
  foldCommand('left', 'Mod+B'),
  foldCommand('right', 'Mod+Shift+B'),
  foldCommand('bottom', 'Mod+J'),
  {
    id: 'view.all',
    group: 'View',
    title: () => 'Show all on the map',
    keys: ['Alt+0'],
    whyNot: needsBook,
    run: showAllOnMap,
  },
  {
    id: 'view.selection',
    group: 'View',
    title: () => 'Show the selected lawn on the map',
    keys: ['Alt+9'],
    whyNot: () => (useSelection.getState().propertyId === null ? 'No lawn is selected' : null),
    run: showSelectionOnMap,
  },
  {
    id: 'view.table',
    group: 'View',
    title: () => (useView.getState().ribbonAsTable ? 'Levels as a ribbon' : 'Levels as a table'),
    keys: [],
    whyNot: needsDay,
    run: () => useView.setState(({ ribbonAsTable }) => ({ ribbonAsTable: !ribbonAsTable })),
  },
  {
    id: 'view.units',
    group: 'View',
    title: () => (useHost.getState().settings.units === 'us' ? 'Show metric units' : 'Show US units'),
    keys: [],
    whyNot: always,
    run: start(() => changeSettings({ units: useHost.getState().settings.units === 'us' ? 'metric' : 'us' })),
  },
  appearanceCommand('system', 'Light or dark as the system has it'),
  appearanceCommand('light', 'Light'),
  appearanceCommand('dark', 'Dark'),
];

const helpCommands: readonly Command[] = [
  {
    id: 'help.palette',
    group: 'Help',
    title: () => 'Find a command…',
    keys: ['Mod+K', 'F1'],
    whyNot: always,
    run: () => openOverlay('palette'),
  },
  {
    id: 'help.diagnostics',
    group: 'Help',
    title: () => 'Copy diagnostics',
    keys: [],
    whyNot: always,
    run: start(copyDiagnostics),
  },
  { id: 'help.keys', group: 'Help', title: () => 'Keys', keys: ['?'], whyNot: always, run: () => openOverlay('keys') },
  {
    id: 'help.letters',
    group: 'Help',
    title: () =>
      useHost.getState().settings.letterKeys ? 'Turn single-character keys off' : 'Turn single-character keys on',
    keys: [],
    whyNot: always,
    run: start(() => changeSettings({ letterKeys: !useHost.getState().settings.letterKeys })),
  },
  {
    id: 'help.about',
    group: 'Help',
    title: () => 'About Swardway',
    keys: [],
    whyNot: always,
    run: () => openOverlay('about'),
  },
];

/** Every command of the program, in the order of menu and help. */
export const COMMANDS: readonly Command[] = [
  ...bookCommands,
  ...editCommands,
  ...drawCommands,
  ...roomCommands,
  ...planCommands,
  ...viewCommands,
  ...helpCommands,
];
