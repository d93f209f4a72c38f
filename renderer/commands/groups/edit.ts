import {
  addLawn,
  addZone,
  goTo,
  openPlaces,
  redo,
  redoDraftStep,
  removeLawn,
  startPicture,
  undo,
  undoDraftStep,
  useBook,
  useDraft,
  useSelection,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsBook, needsLawn } from './conditions.ts';

const words = commandsWords.edit;

const drawing = () => useDraft.getState().draft;

/** While something is drawn, undo and redo are about that alone: what it is drawn on must not go from under it. */
function whyNotStep(way: 'undo' | 'redo', nothing: string): string | null {
  const draft = drawing();
  if (draft !== null) return draft[way].length === 0 ? words.inOutlineOnly(nothing) : null;
  return useBook.getState().history[way].length === 0 ? nothing : null;
}

function stepTitle(way: 'undo' | 'redo', verb: string, inOutline: string): string {
  if (drawing() !== null) return inOutline;
  const step = useBook.getState().history[way].at(-1);
  return step === undefined ? verb : words.step(verb, step.label);
}

/** Changes of the book that are not drawn. */
export const editCommands: readonly Command[] = commandsOf('edit', {
  'edit.undo': {
    title: () => stepTitle('undo', words.undo, words.undoLastStepOutline),
    keys: ['Mod+Z'],
    whyNot: () => whyNotStep('undo', words.nothingTakeBack),
    run: () => (drawing() === null ? undo() : undoDraftStep()),
  },
  'edit.redo': {
    title: () => stepTitle('redo', words.redo, words.redoStepOutline),
    keys: ['Mod+Y', 'Mod+Shift+Z'],
    whyNot: () => whyNotStep('redo', words.nothingDoAgain),
    run: () => (drawing() === null ? redo() : redoDraftStep()),
  },
  'edit.add-lawn': { title: words.addLawn, whyNot: needsBook, run: () => addLawn() },
  'edit.add-zone': { title: words.addZoneByIts, whyNot: needsLawn, run: addZone },
  'edit.places': { title: words.findPlaces, whyNot: needsBook, run: openPlaces },
  'edit.lay-picture': {
    title: words.layPhotoOrPlan,
    whyNot: needsBook,
    run: async () => {
      goTo('ground');
      await startPicture();
    },
  },
  'edit.remove-lawn': {
    title: words.removeSelectedLawn,
    keys: ['Mod+Delete'],
    whyNot: needsLawn,
    run: () => {
      const { propertyId } = useSelection.getState();
      if (propertyId !== null) removeLawn(propertyId);
    },
  },
});
