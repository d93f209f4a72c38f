import type { Book, Visit } from '../../core/book/index.ts';
import { visitAsPlanned } from '../../core/plan/live/index.ts';
import type { PlanDay, PlanStop } from '../../core/plan/result/index.ts';
import { todayHere } from '../format/index.ts';
import { underWayWords } from '../texts/day/index.ts';
import { useBook } from './book.ts';
import { currentRound } from './current.ts';
import { freshId, putRecord, removeRecord } from './edits.ts';
import { showError } from './notices.ts';

/** What was written down of a rig's day. */
export function visitsOf(book: Book, day: PlanDay): readonly Visit[] {
  return book.visits.filter((each) => each.on === day.date && each.rigId === day.rigId);
}

/** What was written down of one stop of a day, or undefined. */
export function visitOf(book: Book, day: PlanDay, stop: PlanStop): Visit | undefined {
  return visitsOf(book, day).find((each) => each.propertyId === stop.propertyId);
}

/** Writes down that a stop is done as it was planned, today by the clock on the wall, or that it was left out. */
export function markStop(day: PlanDay, stop: PlanStop, outcome: 'done' | 'left out'): void {
  const book = useBook.getState().open?.book;
  const round = currentRound();
  if (book === undefined || round === null) return;
  const fresh = visitAsPlanned(book, freshId(book.visits, 'visit'), round.id, day, stop);
  const visit: Visit =
    outcome === 'done'
      ? { ...fresh, ...timesNow(book, day, stop) }
      : { ...fresh, outcome: { kind: 'skipped', reason: '' } };
  const label = outcome === 'done' ? underWayWords.view.markDone(stop.name) : underWayWords.view.leaveOut(stop.name);
  const done = putRecord('visits', visit, label);
  if (!done.ok) showError(done.error);
}

/** Takes back what was written down of a stop. */
export function unmarkStop(visit: Visit, stop: PlanStop): void {
  removeRecord('visits', visit.id, underWayWords.view.visitTo(stop.name));
}

/** Today the clock on the wall; of another day what was planned. */
function timesNow(book: Book, day: PlanDay, stop: PlanStop): Pick<Visit, 'arriveMin' | 'leaveMin'> {
  const planned = { arriveMin: wholeMinute(stop.arriveSec), leaveMin: wholeMinute(stop.leaveSec) };
  if (day.date !== todayHere()) return planned;
  const before = visitsOf(book, day).flatMap((each) => (each.leaveMin === undefined ? [] : [each.leaveMin]));
  const leaveMin = minuteHere();
  return { arriveMin: Math.min(leaveMin, Math.max(planned.arriveMin, ...before)), leaveMin };
}

function wholeMinute(sec: number): number {
  return Math.round(sec / 60);
}

/** Minutes after midnight by the clock on the wall. */
export function minuteHere(): number {
  const now = new Date();
  return now.getHours() * 60 + now.getMinutes();
}
