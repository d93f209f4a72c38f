import type { Book } from '../../../core/book/index.ts';
import { treatableGround } from '../../../core/measure/index.ts';
import { directionOptions, passHeadOf, passPicture } from '../../../core/passes/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { type DayPasses, passesWanted } from '../../../core/reports/index.ts';

/** The passes that the maps of a day show, as far as the book says how the heads are driven and has outlines to lay them on. */
export function layPasses(book: Book, day: PlanDay): readonly DayPasses[] {
  return passesWanted(day).flatMap((wanted): readonly DayPasses[] => {
    const property = book.properties.find((each) => each.id === wanted.propertyId);
    const zone = property?.zones.find((each) => each.id === wanted.zoneId);
    const machine = book.machines.find((each) => each.id === wanted.machineId);
    const head = machine?.heads.find((each) => each.id === wanted.headId);
    const passHead = head === undefined ? null : passHeadOf(head);
    if (property === undefined || zone === undefined || head === undefined || passHead === null) return [];
    const ground = treatableGround(property, zone.id);
    const options = directionOptions(zone, head.passes ?? null);
    const laid = passPicture(ground, passHead, options, zone.slopeDeg, `${property.id}, ${zone.id}, ${head.name}`);
    return laid.ok && laid.value !== null ? [{ ...wanted, picture: laid.value }] : [];
  });
}
