import {
  addNewRound,
  addNextDay,
  cancelPlanning,
  copyRoundToNextYear,
  currentRound,
  goTo,
  goToView,
  importTemperatures,
  importWeather,
  planCurrentRound,
  removeRecord,
  useBook,
  usePlans,
  whyNoRound,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsBook, needsRound, offered } from './conditions.ts';

const words = commandsWords.round;

function whyNotPlan(): string | null {
  const noBook = needsBook();
  if (noBook !== null) return noBook;
  if (usePlans.getState().job !== null) return words.roundBeingPlannedAlready;
  return currentRound() === null ? words.noRoundToPlan : null;
}

function whyNotAdd(): string | null {
  const book = useBook.getState().open?.book;
  return book === undefined ? needsBook() : whyNoRound(book);
}

/** What is to be applied where and by when. */
export const roundCommands: readonly Command[] = commandsOf('round', {
  'plan.start': {
    title: () => words.plan(currentRound()?.name ?? words.round),
    keys: ['Mod+Enter'],
    whyNot: whyNotPlan,
    run: async () => {
      goToView('round', 'plan');
      await planCurrentRound();
    },
  },
  'plan.cancel': {
    title: words.stopPlanningKeepBest,
    keys: ['Mod+.'],
    whyNot: () => {
      const { job } = usePlans.getState();
      if (job === null) return words.nothingBeingPlanned;
      return job.cancelling ? words.endingAlready : null;
    },
    run: cancelPlanning,
  },
  'round.add': {
    title: words.addRound,
    whyNot: whyNotAdd,
    run: () => {
      addNewRound();
      goTo('round');
    },
  },
  'round.copy': { title: words.copyRoundAnotherYear, whyNot: needsRound, run: copyRoundToNextYear },
  'round.add-day': { title: words.addNextWorkingDay, whyNot: needsRound, run: addNextDay },
  'round.remove': {
    title: () => words.remove(currentRound()?.name ?? words.round),
    whyNot: needsRound,
    run: () => {
      const round = currentRound();
      if (round !== null) removeRecord('rounds', round.id, round.name);
    },
  },
  'round.weather': { title: words.addWeatherByHour, whyNot: needsRound, run: importWeather },
  'round.temperatures': { title: words.addTemperaturesFile, whyNot: needsBook, run: importTemperatures },
  'round.plan-fleets': offered('round.plan-fleets', words.planByBothFleets, words.openFleetsRoundRoom),
});
