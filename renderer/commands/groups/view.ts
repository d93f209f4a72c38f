import {
  changeSettings,
  currentReading,
  currentWeekBegin,
  foldPanel,
  type Panel,
  showAllOnMap,
  showSelectionOnMap,
  useHost,
  usePasses,
  useView,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, type CommandSpec, commandsOf } from '../command.ts';
import { needsBook, needsLawn, offered } from './conditions.ts';

const words = commandsWords.view;

function fold(panel: Panel, key: string): CommandSpec {
  return {
    title: () => words.fold(useView.getState().panels[panel].folded, words.panels[panel]),
    keys: [key],
    whyNot: needsBook,
    run: () => foldPanel(panel, !useView.getState().panels[panel].folded),
  };
}

function appearance(wanted: 'system' | 'light' | 'dark', title: string): CommandSpec {
  const isOn = () => useHost.getState().settings.appearance === wanted;
  return {
    title,
    whyNot: () => (isOn() ? words.looksLikeAlready : null),
    isOn,
    run: () => changeSettings({ appearance: wanted }),
  };
}

const NO_MAP = words.noMapHere;

/** How the window shows things. */
export const viewCommands: readonly Command[] = commandsOf('view', {
  'view.fold-left': fold('left', 'Mod+B'),
  'view.fold-right': fold('right', 'Mod+Shift+B'),
  'view.fold-bottom': fold('bottom', 'Mod+J'),
  'view.closer': offered('view.closer', words.mapCloser, NO_MAP),
  'view.farther': offered('view.farther', words.mapFarther, NO_MAP),
  'view.north': offered('view.north', words.mapNorth, NO_MAP),
  'view.south': offered('view.south', words.mapSouth, NO_MAP),
  'view.east': offered('view.east', words.mapEast, NO_MAP),
  'view.west': offered('view.west', words.mapWest, NO_MAP),
  'view.all': { title: words.showAllOnMap, keys: ['Alt+0'], whyNot: needsBook, run: showAllOnMap },
  'view.selection': {
    title: words.showSelectedLawnOn,
    keys: ['Alt+9'],
    whyNot: needsLawn,
    run: showSelectionOnMap,
  },
  'view.passes': {
    ...offered('view.passes', words.showPassesOnMap, words.selectZoneGroundOr),
    isOn: () => usePasses.getState().isOn,
  },
  'view.units': {
    title: () => (useHost.getState().settings.units === 'us' ? words.showMetricUnits : words.showUsUnits),
    run: () => changeSettings({ units: useHost.getState().settings.units === 'us' ? 'metric' : 'us' }),
  },
  'view.clock': {
    title: () => (currentReading().clock === '12-hour' ? words.show24Hours : words.show12Hours),
    run: () => changeSettings({ clock: currentReading().clock === '12-hour' ? '24-hour' : '12-hour' }),
  },
  'view.dates': {
    title: () => (currentReading().dates === 'month-first' ? words.dayFirst : words.monthFirst),
    run: () => changeSettings({ dates: currentReading().dates === 'month-first' ? 'day-first' : 'month-first' }),
  },
  'view.weeks': {
    title: () => (currentWeekBegin() === 'sunday' ? words.weeksFromMonday : words.weeksFromSunday),
    run: () => changeSettings({ weekBegin: currentWeekBegin() === 'sunday' ? 'monday' : 'sunday' }),
  },
  'view.news': {
    title: words.keepNews,
    isOn: () => useHost.getState().settings.keepNews,
    run: () => changeSettings({ keepNews: !useHost.getState().settings.keepNews }),
  },
  'view.system': appearance('system', words.lightOrDarkSystem),
  'view.light': appearance('light', words.light),
  'view.dark': appearance('dark', words.dark),
});
