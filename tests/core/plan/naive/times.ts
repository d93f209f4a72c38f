import type { PlanActivity } from '../../../../core/plan/result/index.ts';
import { rinsedMaterials } from './contents.ts';
import {
  type DayFacts,
  type Fault,
  fillParts,
  isKind,
  lengthMs,
  ms,
  opOf,
  placeBefore,
  type Refill,
  stationOf,
  stockNumber,
  stockOfFill,
  stockParts,
  sum,
  TIME,
  type Treat,
  taskNumber,
  type VisitSpan,
  visitAt,
} from './day-facts.ts';
import { marks, servedMs } from './visits.ts';

/** Faults of order, place and time of a day: parts 3 to 7 of the page. */
export function timeFaults(facts: DayFacts): readonly Fault[] {
  const { activities } = facts.day;
  const impossible = (where: string, words: string): Fault => ({ code: 'time-not-possible', where, words });
  const faults = activities.flatMap((activity, index): Fault[] => {
    const due = Math.max(...personsOf(activity).map((person) => freeMs(facts, person, index)));
    const where = `activity ${index + 1}`;
    const spent = lengthMs(activity);
    const needed = neededMs(facts, index);
    return [
      ...(Math.abs(ms(activity.startSec) - due) > TIME ? [impossible(where, 'a gap before it')] : []),
      ...(spent < -TIME ? [impossible(where, 'ends before it starts')] : []),
      ...(spent < needed - TIME ? [impossible(where, `takes ${spent} ms, needs ${needed}`)] : []),
      ...(isAtItsPlace(facts, index) ? [] : [impossible(where, 'the rig is elsewhere')]),
    ];
  });
  const kinds = activities.map((each) => each.kind);
  if (kinds[0] !== 'morning' || kinds.lastIndexOf('morning') > 0) faults.push(impossible('day', 'morning work'));
  if (kinds.indexOf('evening') !== kinds.length - 1) faults.push(impossible('day', 'evening work'));
  return [
    ...faults,
    ...facts.visits.flatMap((visit) => [...visitFaults(facts, visit), ...workFaults(facts, visit)]),
    ...strayFaults(facts),
    ...headFaults(facts),
    ...lengthFaults(facts),
  ];
}

/** Who takes part in an activity. */
function personsOf(activity: PlanActivity): readonly (1 | 2)[] {
  if (activity.kind === 'treat') return [activity.person];
  return activity.kind === 'swap-head' || activity.kind === 'pour' ? [1] : [1, 2];
}

/** When a person has done all that comes before an activity. */
function freeMs(facts: DayFacts, person: 1 | 2, index: number): number {
  const last = facts.day.activities.slice(0, index).findLast((each) => personsOf(each).includes(person));
  return last === undefined ? facts.rig.shiftStartMs : ms(last.endSec);
}

/** Treats by a person to whom the work does not belong, and work on a zone before what comes first there. */
function workFaults(facts: DayFacts, visit: VisitSpan): readonly Fault[] {
  const { problem, day } = facts;
  return visit.treats.flatMap((at): Fault[] => {
    const treat = day.activities[at] as Treat;
    const op = opOf(facts, at);
    const rank = (each: Treat): number => problem.tasks[taskNumber(problem, each)]?.rank ?? 0;
    const where = `activity ${at + 1}`;
    const late = visit.treats
      .map((other) => day.activities[other] as Treat)
      .filter((other) => other.zoneId === treat.zoneId && rank(other) < rank(treat))
      .some((other) => ms(other.endSec) > ms(treat.startSec) + TIME);
    return [
      ...(op !== null && op.second !== (treat.person === 2)
        ? [{ code: 'time-not-possible' as const, where, words: `not work of person ${treat.person}` }]
        : []),
      ...(late ? [{ code: 'out-of-order' as const, where, words: 'something else comes first there' }] : []),
    ];
  });
}

/** Least time that an activity takes. */
function neededMs(facts: DayFacts, index: number): number {
  const { rig, problem } = facts;
  const activity = facts.day.activities[index] as PlanActivity;
  switch (activity.kind) {
    case 'morning':
      return rig.morningMs;
    case 'evening':
      return rig.eveningMs;
    case 'drive': {
      const [from, to] = [activity.fromPlaceId, activity.toPlaceId].map((id) => problem.placeIds.indexOf(id));
      return problem.travelMs[(from ?? -1) * problem.placeIds.length + (to ?? -1)] ?? 0;
    }
    case 'set-up':
      return facts.visits.find((each) => each.setUp === index)?.reading?.mode.beforeMs ?? 0;
    case 'pack-up':
      return facts.visits.find((each) => each.packUp === index)?.reading?.mode.afterMs ?? 0;
    case 'treat': {
      const op = opOf(facts, index);
      return op === null ? 0 : servedMs(op, activity);
    }
    case 'refill':
      return refillMs(facts, activity, index);
    case 'pour': {
      const bags = rig.compartments.find((each) => each.id === activity.fromCompartmentId);
      return sum(activity.fills.map((fill) => Math.max(0, fillParts(facts, fill)))) * (bags?.pours?.msPerPart ?? 0);
    }
    default:
      return 0;
  }
}

function refillMs(facts: DayFacts, refill: Refill, index: number): number {
  const { rig, problem } = facts;
  const station = stationOf(facts, refill);
  const price = (stock: number): number => Math.max(0, station?.msPerPart[stock] ?? 0);
  const into = refill.fills.map((fill) => {
    const own = rig.compartments.find((each) => each.id === fill.compartmentId)?.fillMsPerPart ?? 0;
    return Math.max(0, fillParts(facts, fill)) * (own + price(stockOfFill(facts, fill)));
  });
  const taken = refill.stock.map((fill) => Math.max(0, stockParts(fill)) * price(stockNumber(problem, fill)));
  const rinses = rinsedMaterials(facts, index).map(
    (id) => problem.materials.find((each) => each.id === id)?.rinseMs ?? 0,
  );
  const { op, done } = nextWork(facts, index);
  const inside = op !== null && done > 0 && done < op.areaUnits ? rig.midZoneMs : 0;
  const moving = sum([...into, ...rinses]);
  if (refill.fillPointId === '') return rig.refillMs + inside + moving;
  if (station === undefined) return 0;
  const reload = visitAt(facts, index) === null ? 0 : (op?.reloadMs ?? 0);
  return station.visitMs + inside + reload + moving + sum(taken);
}

/** The next op of the visit in progress, and how much of it that visit has done. */
export function nextWork(facts: DayFacts, index: number) {
  const visit = visitAt(facts, index);
  const next = visit?.treats.find((at) => at > index) ?? -1;
  const op = opOf(facts, next);
  const last = visit?.treats.findLast((at) => at < index && op !== null && opOf(facts, at) === op);
  const piece = last === undefined ? undefined : facts.day.activities[last];
  return { op, done: piece?.kind === 'treat' ? marks(piece)[1] : 0 };
}

function isAtItsPlace(facts: DayFacts, index: number): boolean {
  const { problem, rig } = facts;
  const activity = facts.day.activities[index] as PlanActivity;
  const here = placeBefore(facts, index);
  switch (activity.kind) {
    case 'drive':
      return problem.placeIds.indexOf(activity.fromPlaceId) === here && problem.placeIds.includes(activity.toPlaceId);
    case 'evening':
      return here === (problem.stations[rig.end]?.place ?? -1);
    case 'refill':
      return activity.fillPointId === '' || (stationOf(facts, activity)?.place ?? here) === here;
    case 'pour': {
      const visit = visitAt(facts, index);
      return problem.jobs.some((job) => job.propertyId === visit?.propertyId && job.place === here);
    }
    case 'set-up':
    case 'treat':
    case 'pack-up':
      return problem.jobs.some((job) => job.propertyId === activity.propertyId && job.place === here);
    default:
      return true;
  }
}

/** Window, day, order and break of one visit. */
function visitFaults(facts: DayFacts, visit: VisitSpan): readonly Fault[] {
  const { problem, rig, dayNumber, day } = facts;
  const where = `visit to ${visit.propertyId}`;
  const jobs = problem.jobs.filter((each) => each.propertyId === visit.propertyId);
  const job = visit.reading?.job ?? jobs[0];
  if (job === undefined) return [{ code: 'task-unknown', where, words: 'no job is there' }];
  const faults: Fault[] = [];
  const waited = day.activities
    .slice(arrivalIndex(facts, visit.setUp), visit.setUp)
    .filter(isKind('wait'))
    .map(lengthMs);
  const ready = arrivedMs(facts, visit.setUp) + sum(waited);
  const begins = ms((day.activities[visit.setUp] as PlanActivity).startSec);
  if (begins < job.openMs - TIME || ready > job.closeMs + TIME)
    faults.push({ code: 'window-missed', where, words: `ready at ${ready}` });
  const treats = visit.treats.map((at) => ms((day.activities[at] as PlanActivity).endSec));
  for (const each of visit.reading === null ? jobs : [job]) {
    const hours = each.treatHours?.[dayNumber];
    if (hours !== undefined && hours !== null && begins < hours.openMs - TIME)
      faults.push({ code: 'weather-closed', where, words: `set up at ${begins}` });
    if (hours?.closeMs !== undefined && Math.max(0, ...treats) > hours.closeMs + TIME)
      faults.push({ code: 'weather-closed', where, words: `treated until ${Math.max(...treats)}` });
  }
  const visited = visit.reading === null ? jobs : [job];
  if (dayNumber >= 0 && visited.some((each) => each.dayAllowed[dayNumber] !== 1))
    faults.push({ code: 'day-not-allowed', where, words: 'not on this day' });
  const known = visit.treats.every((at) => opOf(facts, at) !== null);
  if (visit.reading === null && known) faults.push({ code: 'time-not-possible', where, words: 'in no such order' });
  if (visit.packUp < 0) faults.push({ code: 'time-not-possible', where, words: 'never packed up' });
  const packed = day.activities[visit.packUp];
  if (packed?.kind === 'pack-up' && packed.propertyId !== visit.propertyId)
    faults.push({ code: 'time-not-possible', where, words: 'packed up elsewhere' });
  if (breakOwed(facts, visit) && rig.breakMs > 0)
    faults.push({ code: 'time-not-possible', where, words: 'no break is taken' });
  return faults;
}

/** The first visit that is reached at or after the break's time, where no break that counts has been taken. */
function breakOwed(facts: DayFacts, visit: VisitSpan): boolean {
  const { rig, day } = facts;
  const due = (each: VisitSpan): boolean => arrivedMs(facts, each.setUp) >= rig.breakAfterMs - TIME;
  if (rig.breakAfterMs < 0 || facts.visits.find(due) !== visit) return false;
  const taken = day.activities
    .slice(0, visit.setUp)
    .filter(isKind('break'))
    .filter((each) => lengthMs(each) >= rig.breakMs - TIME && ms(each.startSec) >= rig.breakAfterMs - TIME);
  return taken.length === 0;
}

/** The activity after which the rig was there: the last drive or pack-up, or the morning. */
function arrivalIndex(facts: DayFacts, setUp: number): number {
  return facts.day.activities
    .slice(0, setUp)
    .findLastIndex((each) => each.kind === 'drive' || each.kind === 'pack-up' || each.kind === 'morning');
}

export function arrivedMs(facts: DayFacts, setUp: number): number {
  const arrival = facts.day.activities[arrivalIndex(facts, setUp)];
  return arrival === undefined ? facts.rig.shiftStartMs : ms(arrival.endSec);
}

/** Treats and pack-ups outside a visit, and work on ground of another property. */
function strayFaults(facts: DayFacts): readonly Fault[] {
  return facts.day.activities.flatMap((activity, index): Fault[] => {
    const where = `activity ${index + 1}`;
    if (activity.kind === 'pack-up' && !facts.visits.some((each) => each.packUp === index))
      return [{ code: 'time-not-possible', where, words: 'packs up without having set up' }];
    if (activity.kind !== 'treat') return [];
    const visit = facts.visits.find((each) => each.treats.includes(index));
    if (visit === undefined || visit.propertyId !== activity.propertyId)
      return [{ code: 'time-not-possible', where, words: 'treats without having set up there' }];
    return [];
  });
}

/** Every change of head takes the swap time of the op that needs it. */
function headFaults(facts: DayFacts): readonly Fault[] {
  const { activities } = facts.day;
  const treats = activities.map((each, index) => (each.kind === 'treat' ? index : -1)).filter((index) => index >= 0);
  return treats.flatMap((index, nth): Fault[] => {
    const op = opOf(facts, index);
    if (op === null || op.machine < 0 || op.head < 0 || op.method.kind !== 'machine') return [];
    const earlier = treats.slice(0, nth).map((at) => opOf(facts, at));
    const fitted = earlier.findLast((each) => each?.machine === op.machine && each.head >= 0)?.head;
    if (fitted === undefined || fitted === op.head) return [];
    const { machineId, headId } = op.method;
    const swaps = activities
      .slice((treats[nth - 1] ?? -1) + 1, index)
      .filter(isKind('swap-head'))
      .filter((each) => each.machineId === machineId && each.headId === headId);
    if (sum(swaps.map(lengthMs)) >= op.swapMs - TIME) return [];
    return [{ code: 'time-not-possible', where: `activity ${index + 1}`, words: 'the head takes longer to swap' }];
  });
}

function lengthFaults(facts: DayFacts): readonly Fault[] {
  const { rig } = facts;
  if (paidMs(facts) <= rig.shiftMs + rig.overtimeMs + TIME) return [];
  return [{ code: 'day-too-long', where: 'day', words: `${paidMs(facts)} ms paid` }];
}

export function paidMs(facts: DayFacts): number {
  return Math.max(0, ...facts.day.activities.map((each) => ms(each.endSec) - facts.rig.shiftStartMs));
}
