import {
  askOnBoard,
  currentDay,
  dayKeyOf,
  goTo,
  improveShownPlan,
  markStop,
  pinDay,
  pinLawn,
  restOfDay,
  selectedStop,
  selectStop,
  shownPlan,
  showRest,
  stepPlan,
  takeStopOut,
  unmarkStop,
  useBoard,
  useBook,
  usePlans,
  useSelection,
  useView,
  visitOf,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';
import { needsDay, offered } from './conditions.ts';

const words = commandsWords.day;

const needsStop = () => needsDay() ?? (selectedStop() === null ? words.selectStopFirst : null);
const notWhilePlanning = () => (usePlans.getState().job === null ? null : words.planBeingMade);

/** Steps to the next or previous stop of the day. */
function stepStop(by: 1 | -1): void {
  const day = currentDay();
  if (day === null) return;
  const { stopNumber } = useSelection.getState();
  const index = day.stops.findIndex((stop) => stop.number === stopNumber);
  const next = day.stops[index < 0 ? (by === 1 ? 0 : day.stops.length - 1) : index + by];
  if (next !== undefined) selectStop(next.number, next.propertyId);
}

/** The plan that is shown, or that of the round where none of its stops is left to show. */
function whyNotStepPlan(way: 'past' | 'ahead', nothing: string): string | null {
  const name = shownPlan()?.name;
  if (name === undefined) return needsDay() ?? nothing;
  if (useBoard.getState().waiting.length > 0) return words.moveBeingJudged;
  return (useBoard.getState()[way][name]?.length ?? 0) === 0 ? nothing : null;
}

function step(way: 'back' | 'ahead'): void {
  const name = shownPlan()?.name;
  if (name !== undefined) stepPlan(name, way);
}

const isPinned = () => useBoard.getState().pinnedLawns.has(selectedStop()?.stop.propertyId ?? '');

function isDayPinned(): boolean {
  const day = currentDay();
  return day !== null && useBoard.getState().pinnedDays.has(dayKeyOf(day.date, day.rigId));
}

/** What was written down of the selected stop. */
function writtenDown() {
  const found = selectedStop();
  const book = useBook.getState().open?.book;
  return found === null || book === undefined ? undefined : visitOf(book, found.day, found.stop);
}

const whyNotMark = () => needsStop() ?? (writtenDown() === undefined ? null : words.writtenDownAlready);

function mark(outcome: 'done' | 'left out'): void {
  const found = selectedStop();
  if (found !== null) markStop(found.day, found.stop, outcome);
}

/** A planned day: its stops, what is moved by hand, and what was done of it. */
export const dayCommands: readonly Command[] = commandsOf('day', {
  'day.next-stop': { title: words.nextStop, keys: ['Alt+ArrowDown'], whyNot: needsDay, run: () => stepStop(1) },
  'day.previous-stop': { title: words.previousStop, keys: ['Alt+ArrowUp'], whyNot: needsDay, run: () => stepStop(-1) },
  'day.move': {
    title: words.moveStopAnotherPlace,
    whyNot: needsStop,
    run: () => {
      goTo('day');
      askOnBoard('places');
    },
  },
  'day.take-out': { title: words.takeStopOutDay, whyNot: needsStop, run: takeStopOut },
  'day.pin': {
    title: words.pinStopItsRig,
    whyNot: needsStop,
    isOn: isPinned,
    run: () => {
      const found = selectedStop();
      if (found !== null) pinLawn(found.stop.propertyId, !isPinned());
    },
  },
  'day.pin-day': {
    title: words.pinEveryStopDay,
    whyNot: needsDay,
    isOn: isDayPinned,
    run: () => {
      const day = currentDay();
      if (day !== null) pinDay(day.date, day.rigId, !isDayPinned());
    },
  },
  'day.out': {
    title: words.outOfOrder,
    whyNot: needsDay,
    run: () => {
      goTo('day');
      askOnBoard('out');
    },
  },
  'day.improve': {
    title: words.improvePlanHere,
    whyNot: () => needsDay() ?? notWhilePlanning(),
    run: () => improveShownPlan(),
  },
  'day.back': {
    title: words.takeLastChangePlan,
    whyNot: () => whyNotStepPlan('past', words.nothingTakeBackPlan),
    run: () => step('back'),
  },
  'day.ahead': {
    title: words.makeChangePlanAgain,
    whyNot: () => whyNotStepPlan('ahead', words.nothingMakeAgainPlan),
    run: () => step('ahead'),
  },
  'day.done': { title: words.stopDone, whyNot: whyNotMark, run: () => mark('done') },
  'day.left-out': { title: words.stopWasLeftOut, whyNot: whyNotMark, run: () => mark('left out') },
  'day.unmark': {
    title: words.takeBackWhatWritten,
    whyNot: () => needsStop() ?? (writtenDown() === undefined ? words.nothingWrittenDown : null),
    run: () => {
      const [found, visit] = [selectedStop(), writtenDown()];
      if (found !== null && visit !== undefined) unmarkStop(visit, found.stop);
    },
  },
  'day.plan-rest': offered('day.plan-rest', words.planRestDayHere, words.openUnderWayDay),
  'day.show-rest': {
    title: words.showRestDay,
    whyNot: () => needsDay() ?? (restOfDay() === null ? words.restDayWasNot : null),
    isOn: () => useSelection.getState().showsRest && restOfDay() !== null,
    run: () => showRest(!useSelection.getState().showsRest),
  },
  'day.table': {
    title: words.levelsTable,
    whyNot: needsDay,
    isOn: () => useView.getState().ribbonAsTable,
    run: () => useView.setState(({ ribbonAsTable }) => ({ ribbonAsTable: !ribbonAsTable })),
  },
});
