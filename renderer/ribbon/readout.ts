import type { PlanDay } from '../../core/plan/result/index.ts';
import type { Formatter } from '../format/index.ts';
import { ribbonWords } from '../texts/index.ts';
import { type DayEvent, dayEvents, eventIndexAt } from './day-events.ts';
import { levelAt } from './level-line.ts';

/** One event in words: "8:26 refill at stop 3 after 3,800 ft²: the tank runs dry". */
export function eventWords(event: DayEvent, words: Formatter): string {
  const clock = words.clock(event.sec);
  switch (event.kind) {
    case 'shift-starts':
      return ribbonWords.readout.shiftStarts(clock);
    case 'leaves':
      return ribbonWords.readout.leavesTheShop(clock);
    case 'arrives':
      return ribbonWords.readout.atStop(clock, event.stopNumber, event.name);
    case 'pauses':
      return ribbonWords.readout.breakUntil(clock, words.clock(event.untilSec));
    case 'waits':
      return ribbonWords.readout.waitsUntil(clock, words.clock(event.untilSec));
    case 'home':
      return ribbonWords.readout.home(clock);
    case 'refills':
      return `${clock} ${refillWords(event, words)}`;
  }
}

function refillWords(event: Extract<DayEvent, { kind: 'refills' }>, words: Formatter): string {
  const { refill, stopNumber } = event;
  const stop = stopNumber === 0 ? '' : ribbonWords.readout.whereInStop(refill.afterSqFt, stopNumber);
  const after = refill.afterSqFt > 0 ? ribbonWords.readout.afterArea(words.area(refill.afterSqFt)) : '';
  const where = refill.fillPointId === '' ? ribbonWords.readout.refillFromRig : ribbonWords.readout.refillAtFillPoint;
  const amounts = refillAmounts(refill, words).join(', ');
  return `${where}${stop}${after}${amounts === '' ? '' : `, ${amounts}`}: ${words.said(refill.reason)}`;
}

/** What a refill moves: water for rinsing, what goes into tanks and hoppers, and what is taken aboard. */
export function refillAmounts(
  { rinsedCompartmentIds, rinseGal, fills, stock }: Extract<DayEvent, { kind: 'refills' }>['refill'],
  words: Formatter,
): readonly string[] {
  return [
    ...(rinsedCompartmentIds.length > 0 ? [ribbonWords.readout.rinseWith(words.volume(rinseGal))] : []),
    ...fills.map((fill) => (fill.volumeGal > 0 ? words.volume(fill.volumeGal) : words.weight(fill.weightLb))),
    ...stock.map((fill) =>
      fill.stock === 'water'
        ? ribbonWords.readout.intoNurseTank(words.volume(fill.volumeGal))
        : ribbonWords.readout.bags(fill.bags),
    ),
  ];
}

/** What every tank, hopper and stock holds at a moment: "Stand-on 12.3 gal". */
export function levelsWords(day: PlanDay, sec: number, words: Formatter): readonly string[] {
  return day.levels.map((line) => `${line.label} ${words.level(levelAt(line, sec), line.unit)}`);
}

/** Everything about one moment, for a screen reader. */
export function momentWords(day: PlanDay, sec: number, words: Formatter): string {
  const events = dayEvents(day);
  const event = events[eventIndexAt(events, sec)];
  const what = event === undefined ? words.clock(sec) : eventWords(event, words);
  const since = event !== undefined && event.sec < sec ? ribbonWords.readout.since(words.clock(sec), what) : what;
  return `${since}. ${levelsWords(day, sec, words).join(', ')}`;
}
