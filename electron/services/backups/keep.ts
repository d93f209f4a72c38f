import type { Backup } from '../../../core/contract/index.ts';

/** How many backups of one book are kept: of today, and in all. Of each earlier day it is the newest. */
export const KEPT_OF_TODAY = 3;
export const KEPT_IN_ALL = 10;

/**
 * Which backups may go: of today all but the newest three, of an earlier day all but its newest, and then the oldest until ten are left.
 * One that is dated later than now was made before the clock was set back: its days count like any earlier day, and as the oldest.
 *
 * @param backups newest first
 */
export function superfluous(backups: readonly Backup[], now: Date): readonly Backup[] {
  const today = dayOf(now);
  const counts = new Map<string, number>();
  const isLater = ({ takenAt }: Backup): boolean => new Date(takenAt) > now;
  const inOrder = [...backups.filter((each) => !isLater(each)), ...backups.filter(isLater)];
  const wanted = inOrder.filter((each) => {
    const day = `${dayOf(new Date(each.takenAt))}${isLater(each) ? ' later' : ''}`;
    const seen = (counts.get(day) ?? 0) + 1;
    counts.set(day, seen);
    return seen <= (day === today ? KEPT_OF_TODAY : 1);
  });
  const kept = new Set(wanted.slice(0, KEPT_IN_ALL));
  return backups.filter((each) => !kept.has(each));
}

/** The day by the calendar of this machine, where the user is. */
function dayOf(at: Date): string {
  return `${at.getFullYear()}-${at.getMonth() + 1}-${at.getDate()}`;
}
