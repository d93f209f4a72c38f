import { currentDay, currentRound, useBook, useOffers, useSelection } from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import type { CommandSpec } from '../command.ts';

const words = commandsWords.conditions;

export function needsBook(): string | null {
  return useBook.getState().open === null ? words.noBookOpen : null;
}

export function needsLawn(): string | null {
  return needsBook() ?? (useSelection.getState().propertyId === null ? words.noLawnSelected : null);
}

export function needsRound(): string | null {
  return needsBook() ?? (currentRound() === null ? words.noRoundYet : null);
}

export function needsDay(): string | null {
  return needsBook() ?? (currentDay() === null ? words.noDayPlannedYet : null);
}

/**
 * A command that a part of the screen does while it is there, because it knows what is typed or shown in it.
 * @param elsewhere what has to be on screen first, said while it is not
 */
export function offered(id: string, title: string, elsewhere: string): CommandSpec {
  const offer = () => useOffers.getState()[id];
  return {
    title: () => offer()?.title ?? title,
    whyNot: () => {
      const now = offer();
      return needsBook() ?? (now === undefined ? elsewhere : now.whyNot);
    },
    run: () => offer()?.run(),
  };
}
