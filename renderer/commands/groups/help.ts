import { changeSettings, copyDiagnostics, openOverlay, showNews, useBook, useHost } from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { lookAroundFirst, startTour } from '../../tour/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsDay } from './conditions.ts';

const words = commandsWords.help;

/** Finding one's way about the program. */
export const helpCommands: readonly Command[] = commandsOf('help', {
  'help.palette': { title: words.findCommand, keys: ['Mod+K', 'F1'], run: () => openOverlay('palette') },
  'help.tour': {
    title: words.takeTour,
    whyNot: () => (useBook.getState().open === null ? null : needsDay()),
    run: async () => {
      if (useBook.getState().open === null) await lookAroundFirst(true);
      else startTour();
    },
  },
  'help.keys': { title: words.keys, keys: ['?'], run: () => openOverlay('keys') },
  'help.letters': {
    title: () => (useHost.getState().settings.letterKeys ? words.characterKeysOff : words.characterKeysOn),
    // Nothing on the screen changes by it, so it is said.
    run: async () => {
      const letterKeys = !useHost.getState().settings.letterKeys;
      await changeSettings({ letterKeys });
      showNews(letterKeys ? words.characterKeysAreOn : words.characterKeysAreOff);
    },
  },
  'help.diagnostics': { title: words.copyDiagnostics, run: copyDiagnostics },
  'help.about': { title: words.aboutSwardway, run: () => openOverlay('about') },
});
