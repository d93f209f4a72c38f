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
  planRound,
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
  trySavingAgain,
  undo,
  undoDraftStep,
  useBook,
  useDraft,
  useHost,
  usePlans,
  useSelection,
  useView,
  whyNotPlan,
} from '../stores/index.ts';
import { commandsWords, commonWords } from '../texts/index.ts';
import { lookAroundFirst, startTour } from '../tour/index.ts';
import type { Command } from './command.ts';
import { drawCommands } from './drawing.ts';
import { exportCommands } from './exporting.ts';
import { printSheet, whyNotPrint } from './printing.ts';

const always = () => null;
const needsBook = () => (useBook.getState().open === null ? commonWords.noBook : null);

/** Starts work that tells of its own failures by notices. */
const start = (work: () => Promise<unknown>) => () => {
  work().catch(() => undefined);
};

const bookCommands: readonly Command[] = [
  {
    id: 'book.new',
    group: 'Book',
    title: () => commandsWords.registry.closeBook,
    keys: [],
    whyNot: needsBook,
    run: start(closeBook),
  },
  {
    id: 'book.open',
    group: 'Book',
    title: () => commandsWords.registry.openBook,
    keys: ['Mod+O'],
    whyNot: always,
    run: start(openBookFile),
  },
  {
    id: 'book.import',
    group: 'Book',
    title: () => commandsWords.registry.import,
    keys: ['Mod+I'],
    whyNot: needsBook,
    run: start(() => importFile()),
  },
  {
    id: 'book.copy',
    group: 'Book',
    title: () => commandsWords.registry.writeCopy,
    keys: ['Mod+Shift+S'],
    whyNot: needsBook,
    run: start(() => saveCopy('book')),
  },
  {
    id: 'book.json',
    group: 'Book',
    title: () => commandsWords.registry.writeJson,
    keys: [],
    whyNot: needsBook,
    run: start(() => saveCopy('json')),
  },
  {
    id: 'book.backups',
    group: 'Book',
    title: () => commandsWords.registry.backups,
    keys: [],
    whyNot: needsBook,
    run: start(showBackups),
  },
  ...exportCommands,
  {
    id: 'book.retry',
    group: 'Book',
    title: () => commandsWords.registry.retrySave,
    keys: [],
    whyNot: () => (useBook.getState().save.kind === 'failed' ? null : commandsWords.registry.allSaved),
    run: trySavingAgain,
  },
  {
    id: 'paper.print',
    group: 'Book',
    title: () => commandsWords.registry.print,
    keys: ['Mod+P'],
    whyNot: whyNotPrint,
    run: printSheet,
  },
];

const drawing = () => useDraft.getState().draft;

/** While something is drawn, undo and redo are about that alone: what it is drawn on must not go from under it. */
function whyNotStep(way: 'undo' | 'redo', nothing: string): string | null {
  const draft = drawing();
  if (draft !== null) return draft[way].length === 0 ? commandsWords.registry.inOutlineOnly(nothing) : null;
  return useBook.getState().history[way].length === 0 ? nothing : null;
}

const editCommands: readonly Command[] = [
  {
    id: 'edit.undo',
    group: 'Edit',
    title: () => {
      if (drawing() !== null) return commandsWords.registry.undoInOutline;
      const step = useBook.getState().history.undo.at(-1);
      return step === undefined ? commonWords.undo : commandsWords.registry.undoStep(step.label);
    },
    keys: ['Mod+Z'],
    whyNot: () => whyNotStep('undo', commandsWords.registry.nothingToUndo),
    run: () => (drawing() === null ? undo() : undoDraftStep()),
  },
  {
    id: 'edit.redo',
    group: 'Edit',
    title: () => {
      if (drawing() !== null) return commandsWords.registry.redoInOutline;
      const step = useBook.getState().history.redo.at(-1);
      return step === undefined ? commandsWords.registry.redo : commandsWords.registry.redoStep(step.label);
    },
    keys: ['Mod+Y', 'Mod+Shift+Z'],
    whyNot: () => whyNotStep('redo', commandsWords.registry.nothingToRedo),
    run: () => (drawing() === null ? redo() : redoDraftStep()),
  },
  {
    id: 'edit.add-lawn',
    group: 'Edit',
    title: () => commandsWords.registry.addLawn,
    keys: [],
    whyNot: needsBook,
    run: () => addLawn(),
  },
  {
    id: 'edit.places',
    group: 'Edit',
    title: () => commandsWords.registry.findPlaces,
    keys: [],
    whyNot: needsBook,
    run: start(openPlaces),
  },
  {
    id: 'edit.lay-picture',
    group: 'Edit',
    title: () => commandsWords.registry.layPicture,
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
    title: () => commandsWords.registry.removeLawn,
    keys: ['Mod+Delete'],
    whyNot: () => needsBook() ?? (useSelection.getState().propertyId === null ? commonWords.noLawnSelected : null),
    run: () => {
      const { propertyId } = useSelection.getState();
      if (propertyId !== null) removeLawn(propertyId);
    },
  },
];

const ROOM_TITLES: Readonly<Record<Room, string>> = {
  ground: commonWords.rooms.ground,
  shed: commonWords.rooms.shed,
  round: commonWords.rooms.round,
  day: commonWords.rooms.day,
  paper: commonWords.rooms.paper,
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

const needsDay = () => needsBook() ?? (currentDay() === null ? commandsWords.registry.noDay : null);

const planCommands: readonly Command[] = [
  {
    id: 'plan.start',
    group: 'Plan',
    title: () => commandsWords.registry.planRound(currentRound()?.name ?? commandsWords.registry.theRound),
    keys: ['Mod+Enter'],
    whyNot: whyNotPlan,
    run: start(async () => {
      const round = currentRound();
      if (round === null) return;
      goTo('round');
      await planRound(round.id);
    }),
  },
  {
    id: 'plan.cancel',
    group: 'Plan',
    title: () => commandsWords.registry.stopPlanning,
    keys: ['Mod+.'],
    whyNot: () => (usePlans.getState().job === null ? commandsWords.registry.nothingPlanned : null),
    run: start(cancelPlanning),
  },
  {
    id: 'plan.files',
    group: 'Plan',
    title: () => commandsWords.registry.writeDays,
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
    title: () => commandsWords.registry.nextStop,
    keys: ['Alt+ArrowDown'],
    whyNot: needsDay,
    run: () => stepStop(1),
  },
  {
    id: 'day.previous-stop',
    group: 'Plan',
    title: () => commandsWords.registry.previousStop,
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
    title: () => commandsWords.registry.fold(useView.getState().panels[panel].folded, PANEL_WORDS[panel]),
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
    whyNot: () => (useHost.getState().settings.appearance === appearance ? commandsWords.registry.looksSo : null),
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
    title: () => commandsWords.registry.showAll,
    keys: ['Alt+0'],
    whyNot: needsBook,
    run: showAllOnMap,
  },
  {
    id: 'view.selection',
    group: 'View',
    title: () => commandsWords.registry.showSelected,
    keys: ['Alt+9'],
    whyNot: () => (useSelection.getState().propertyId === null ? commonWords.noLawnSelected : null),
    run: showSelectionOnMap,
  },
  {
    id: 'view.table',
    group: 'View',
    title: () =>
      useView.getState().ribbonAsTable ? commandsWords.registry.levelsRibbon : commandsWords.registry.levelsTable,
    keys: [],
    whyNot: needsDay,
    run: () => useView.setState(({ ribbonAsTable }) => ({ ribbonAsTable: !ribbonAsTable })),
  },
  {
    id: 'view.units',
    group: 'View',
    title: () =>
      useHost.getState().settings.units === 'us' ? commandsWords.registry.metricUnits : commandsWords.registry.usUnits,
    keys: [],
    whyNot: always,
    run: start(() => changeSettings({ units: useHost.getState().settings.units === 'us' ? 'metric' : 'us' })),
  },
  appearanceCommand('system', commandsWords.registry.asSystem),
  appearanceCommand('light', commandsWords.registry.light),
  appearanceCommand('dark', commandsWords.registry.dark),
];

const helpCommands: readonly Command[] = [
  {
    id: 'help.palette',
    group: 'Help',
    title: () => commandsWords.registry.find,
    keys: ['Mod+K', 'F1'],
    whyNot: always,
    run: () => openOverlay('palette'),
  },
  {
    id: 'help.tour',
    group: 'Help',
    title: () => commandsWords.registry.takeTour,
    keys: [],
    whyNot: () => (useBook.getState().open === null ? null : needsDay()),
    run: start(async () => {
      if (useBook.getState().open === null) await lookAroundFirst(true);
      else startTour();
    }),
  },
  {
    id: 'help.diagnostics',
    group: 'Help',
    title: () => commandsWords.registry.copyDiagnostics,
    keys: [],
    whyNot: always,
    run: start(copyDiagnostics),
  },
  {
    id: 'help.keys',
    group: 'Help',
    title: () => commandsWords.registry.keys,
    keys: ['?'],
    whyNot: always,
    run: () => openOverlay('keys'),
  },
  {
    id: 'help.letters',
    group: 'Help',
    title: () =>
      useHost.getState().settings.letterKeys
        ? commandsWords.registry.characterKeysOff
        : commandsWords.registry.characterKeysOn,
    keys: [],
    whyNot: always,
    run: start(() => changeSettings({ letterKeys: !useHost.getState().settings.letterKeys })),
  },
  {
    id: 'help.about',
    group: 'Help',
    title: () => commandsWords.registry.about,
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
