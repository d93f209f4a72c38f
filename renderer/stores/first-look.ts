import { showBook, useBook } from './book.ts';
import { currentRound } from './current.ts';
import { askHost } from './host.ts';
import { midLawnRefill } from './mid-lawn.ts';
import { planningEnds, usePlans } from './plans.ts';
import { planRound } from './rounds.ts';
import { moveCursor, selectDay, selectStop } from './selection.ts';
import { goTo, showView, useView } from './view.ts';

/** A first look is not kept waiting: so long is searched for its plan, seconds. The plan is a whole one, and can be made again. */
const FIRST_LOOK_SEC = 2;

/**
 * Opens an invented book where it shows the most: a planned day, at a refill in the middle of a lawn. Its first round is planned where
 * it has no plan yet. False where the book did not open or nothing could be planned; that is told by a notice.
 */
export async function lookAtSample(sampleId: string): Promise<boolean> {
  const opened = await askHost('book.openSample', { sampleId });
  if (opened === null) return false;
  showBook(opened);
  return lookAtDay();
}

/** Shows the day of the round that is looked at, planned where it is not, at its refill in the middle of a lawn. */
async function lookAtDay(): Promise<boolean> {
  const round = currentRound();
  goTo(round === null ? 'ground' : 'day');
  if (round === null) return false;
  showView('day', 'levels');
  const session = useBook.getState().open?.session;
  if (usePlans.getState().plans[round.id] === undefined) {
    await planRound(round.id, { seconds: FIRST_LOOK_SEC });
    await planningEnds();
  }
  if (useBook.getState().open?.session !== session) return false;
  if (usePlans.getState().plans[round.id] === undefined) return false;
  // Who has gone elsewhere in the meantime is not fetched back.
  if (useView.getState().room === 'day') pointAtRefill(round.id);
  return true;
}

/** Selects the stop and the moment of a refill in the middle of a lawn, where the plan of a round has one. */
function pointAtRefill(roundId: string): void {
  const known = usePlans.getState().plans[roundId];
  const found = known === undefined ? null : midLawnRefill(known.plan);
  if (found === null) return;
  selectDay(found.day.date, found.day.rigId);
  selectStop(found.stop.number, found.stop.propertyId);
  moveCursor(found.refill.startSec);
}
