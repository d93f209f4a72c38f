import type { Book } from '../../book/index.ts';
import type { PlanDay } from '../../plan/result/index.ts';
import { SECONDS_PER_MINUTE } from '../../units/index.ts';

/**
 * Whether a day of a plan is the rest of one under way: it begins after its rig's shift. Its morning then has what is aboard already, and
 * what sending the rig out costs was paid before.
 */
export function isRestOfDay(book: Book, day: PlanDay): boolean {
  const rig = book.rigs.find((each) => each.id === day.rigId);
  return rig !== undefined && day.startSec > rig.shiftStartMin * SECONDS_PER_MINUTE;
}
