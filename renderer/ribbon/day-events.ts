import type { PlanActivity, PlanDay } from '../../core/plan/result/index.ts';

type RefillActivity = Extract<PlanActivity, { kind: 'refill' }>;
type AtProperty = Pick<RefillActivity, 'propertyId' | 'startSec'>;

/** Something that happens at one moment of a day; the ribbon's cursor steps from one to the next. */
export type DayEvent =
  | { readonly kind: 'shift-starts'; readonly sec: number }
  | { readonly kind: 'leaves'; readonly sec: number }
  | { readonly kind: 'arrives'; readonly sec: number; readonly stopNumber: number; readonly name: string }
  | {
      readonly kind: 'refills';
      readonly sec: number;
      readonly refill: RefillActivity;
      /** Stop at which, or before which, the refill is made; 0 where none follows. */
      readonly stopNumber: number;
    }
  | { readonly kind: 'pauses'; readonly sec: number; readonly untilSec: number }
  | { readonly kind: 'waits'; readonly sec: number; readonly untilSec: number }
  | { readonly kind: 'home'; readonly sec: number };

/** Every event of a day in the order of time. */
export function dayEvents(day: PlanDay): readonly DayEvent[] {
  const events: DayEvent[] = [{ kind: 'shift-starts', sec: day.startSec }];
  const morning = day.activities.find((activity) => activity.kind === 'morning');
  if (morning !== undefined && morning.endSec > day.startSec) events.push({ kind: 'leaves', sec: morning.endSec });
  for (const stop of day.stops) {
    events.push({ kind: 'arrives', sec: stop.arriveSec, stopNumber: stop.number, name: stop.name });
  }
  for (const activity of day.activities) {
    if (activity.kind === 'refill') events.push(refillEvent(day, activity));
    const { startSec: sec, endSec: untilSec } = activity;
    if (activity.kind === 'break') events.push({ kind: 'pauses', sec, untilSec });
    if (activity.kind === 'wait' && untilSec > sec) events.push({ kind: 'waits', sec, untilSec });
  }
  events.push({ kind: 'home', sec: homeSec(day) });
  return events.sort((left, right) => left.sec - right.sec);
}

function refillEvent(day: PlanDay, refill: RefillActivity): DayEvent {
  return { kind: 'refills', sec: refill.startSec, refill, stopNumber: stopNumberOf(day, refill) };
}

/** Number of the stop a refill belongs to: the one under way, else the next one at that property. */
export function stopNumberOf(day: PlanDay, refill: AtProperty): number {
  const here = day.stops.filter((stop) => stop.propertyId === refill.propertyId);
  const stop = here.find((each) => each.leaveSec >= refill.startSec) ?? here[0];
  return stop?.number ?? 0;
}

/** The stop that the rig is at, or on its way to; null on the way home. */
export function stopAt(day: PlanDay, sec: number): PlanDay['stops'][number] | null {
  return day.stops.find((stop) => stop.leaveSec >= sec) ?? null;
}

/** When the rig is back: the end of the last drive, or of the day where it never drove. */
export function homeSec(day: PlanDay): number {
  let home = day.endSec;
  for (const activity of day.activities) if (activity.kind === 'drive') home = activity.endSec;
  return home;
}

/** Index of the last event at or before a moment, or 0. */
export function eventIndexAt(events: readonly DayEvent[], sec: number): number {
  let found = 0;
  events.forEach((event, index) => {
    if (event.sec <= sec) found = index;
  });
  return found;
}
