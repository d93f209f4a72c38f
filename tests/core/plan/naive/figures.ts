import { coveredBetween, levelAfter, rinseWater } from './contents.ts';
import type { Fault } from './day-facts.ts';
import { type DayFacts, fillParts, isKind, lengthMs, ms, sum } from './day-facts.ts';
import { differing } from './differing.ts';
import { arrivedMs, nextWork, paidMs } from './times.ts';
import { groundSums, toldFaults } from './told.ts';

/** Sums of one day in the plan's own units; `cost` in nano-dollars. */
export type DaySums = {
  readonly paidSec: number;
  readonly overtimeSec: number;
  readonly driveSec: number;
  readonly treatSec: number;
  readonly refillSec: number;
  readonly distanceM: number;
  readonly treatedSqFt: number;
  readonly coveredSqFt: number;
  readonly handTrimSqFt: number;
  readonly notReachedSqFt: number;
  readonly stops: number;
  readonly refills: number;
  readonly stationRefills: number;
  readonly cost: number;
};

export function sumsOf(facts: DayFacts): DaySums {
  const { rig, problem, dayNumber } = facts;
  const { activities } = facts.day;
  const spent = (kind: 'drive' | 'treat' | 'refill' | 'pour'): number =>
    sum(activities.filter((each) => each.kind === kind).map(lengthMs)) / 1000;
  const metres = sum(
    activities.filter(isKind('drive')).map((each) => distance(facts, each.fromPlaceId, each.toPlaceId)),
  );
  const paid = paidMs(facts);
  const over = Math.max(0, paid - rig.shiftMs);
  const visited = facts.visits.flatMap((visit) =>
    visit.reading === null ? problem.jobs.filter((job) => job.propertyId === visit.propertyId) : [visit.reading.job],
  );
  const late = [...new Set(visited)].map((job) => job.lateCost[dayNumber] ?? 0);
  const refills = activities.filter(isKind('refill'));
  return {
    paidSec: paid / 1000,
    overtimeSec: over / 1000,
    driveSec: spent('drive'),
    treatSec: spent('treat'),
    refillSec: spent('refill') + spent('pour'),
    distanceM: metres,
    ...groundSums(facts),
    stops: facts.visits.length,
    refills: refills.length,
    stationRefills: refills.filter((each) => each.fillPointId !== '').length,
    cost: rig.costPerDay + paid * rig.costPerMs + over * rig.overtimeCostPerMs + metres * rig.costPerM + sum(late),
  };
}

function distance({ problem }: DayFacts, from: string, to: string): number {
  const [row, column] = [problem.placeIds.indexOf(from), problem.placeIds.indexOf(to)];
  if (row < 0 || column < 0) return 0;
  return problem.travelM[row * problem.placeIds.length + column] ?? 0;
}

/** The figures that a day states: sums, stops, distances, progress, loads and what is left over. */
export function figureFaults(facts: DayFacts): readonly Fault[] {
  const { day, rig } = facts;
  const sums = sumsOf(facts);
  const startSec = rig.shiftStartMs / 1000;
  return [
    ...differing('day', [
      ['startSec', day.startSec, startSec, 0.05],
      ['endSec', day.endSec, startSec + sums.paidSec, 0.05],
      ['paidSec', day.paidSec, sums.paidSec, 0.05],
      ['overtimeSec', day.overtimeSec, sums.overtimeSec, 0.05],
      ['driveSec', day.driveSec, sums.driveSec, 0.05],
      ['treatSec', day.treatSec, sums.treatSec, 0.05],
      ['refillSec', day.refillSec, sums.refillSec, 0.05],
      ['distanceM', day.distanceM, sums.distanceM, 0.5],
      ['treatedSqFt', day.treatedSqFt, sums.treatedSqFt, 0.5],
      ['coveredSqFt', day.coveredSqFt, sums.coveredSqFt, 0.5],
      ['handTrimSqFt', day.handTrimSqFt, sums.handTrimSqFt, 0.5],
      ['notReachedSqFt', day.notReachedSqFt, sums.notReachedSqFt, 0.5],
      ['costUsd', day.costUsd, sums.cost / 1e9, 0.0105],
      ['stops', day.stops.length, sums.stops, 0],
    ]),
    ...stopFaults(facts),
    ...toldFaults(facts),
    ...day.activities.flatMap((each, index): readonly Fault[] => {
      const where = `activity ${index + 1}`;
      if (each.kind === 'drive')
        return differing(where, [
          ['distanceM', each.distanceM, distance(facts, each.fromPlaceId, each.toPlaceId), 0.5],
        ]);
      if (each.kind !== 'refill' && each.kind !== 'pour') return [];
      const { op, done } = nextWork(facts, index);
      const inVisit = facts.visits.some((visit) => visit.setUp > index) || op !== null;
      return inVisit && (op !== null || isOnTheWay(facts, index))
        ? differing(where, [['afterSqFt', each.afterSqFt, done, 0.5]])
        : [];
    }),
    ...loadFaults(facts),
    ...leftFaults(facts),
  ];
}

/** Between two visits, with another one still to come. */
function isOnTheWay(facts: DayFacts, index: number): boolean {
  const inside = facts.visits.some((visit) => visit.setUp < index && (visit.packUp < 0 || index < visit.packUp));
  return !inside && facts.visits.some((visit) => visit.setUp > index);
}

function stopFaults(facts: DayFacts): readonly Fault[] {
  const { activities, stops } = facts.day;
  return facts.visits.flatMap((visit, number): readonly Fault[] => {
    const stop = stops[number];
    if (stop === undefined) return [];
    const where = `stop ${number + 1}`;
    if (stop.propertyId !== visit.propertyId)
      return [{ code: 'figure-differs', where, words: `${stop.propertyId}, not ${visit.propertyId}` }];
    const end = activities[visit.packUp < 0 ? visit.setUp : visit.packUp];
    return differing(where, [
      ['number', stop.number, number + 1, 0],
      ['arriveSec', stop.arriveSec, arrivedMs(facts, visit.setUp) / 1000, 0.05],
      ['leaveSec', stop.leaveSec, ms(end?.endSec ?? 0) / 1000, 0.05],
    ]);
  });
}

/** Fills of the compartments that work draws on, with their place among all changes. */
function loadsBegun({ changes, rig }: DayFacts) {
  const bags = rig.compartments.flatMap((each) => (each.pours === undefined ? [] : [each.id]));
  return changes
    .map((change, at) => ({ change, at }))
    .filter(({ change }) => change.kind === 'fill' && !bags.includes(change.compartment));
}

/** Every fill of a compartment as the load that it is. */
function loadFaults(facts: DayFacts): readonly Fault[] {
  const { day, rig } = facts;
  const { changes } = facts;
  const fills = loadsBegun(facts);
  const found = [...differing('day', [['loads', day.loads.length, fills.length, 0]])];
  fills.forEach(({ change, at }, number) => {
    const load = day.loads[number];
    if (load === undefined) return;
    const where = `load ${number + 1}`;
    const activity = day.activities[change.index];
    const from = activity?.kind === 'refill' ? activity.fillPointId : '';
    const named =
      load.compartmentId === change.compartment &&
      load.materialId === change.materialId &&
      load.fillPointId === from &&
      load.fromBags === (activity?.kind === 'pour');
    if (!named) found.push({ code: 'figure-differs', where, words: 'another compartment, material or fill point' });
    else {
      const vessel = rig.compartments.find((each) => each.id === change.compartment);
      const tank = vessel?.kind === 'tank';
      const sump = isInSump(changes, at) ? 0 : (vessel?.sumpParts ?? 0);
      const next = changes.findIndex(
        (each, later) => later > at && each.compartment === change.compartment && each.kind !== 'draw',
      );
      const end = next < 0 ? changes.length : next;
      const until = next < 0 ? day.activities.length : (changes[next]?.index ?? 0);
      const covered = coveredBetween(facts, change.compartment, change.index, until);
      const left = levelAfter(changes, end, change.compartment) / 100;
      found.push(
        ...differing(where, [
          ['amount', tank ? load.volumeGal : load.weightLb, change.parts / 100, 0.0105],
          ['sumpGal', load.sumpGal, sump / 100, 0.0105],
          ['coversSqFt', load.coversSqFt, covered, 0.5],
          ['left', tank ? load.leftGal : load.leftLb, left, 0.0105],
        ]),
      );
    }
  });
  return found;
}

/** Whether the fill before in the same compartment was of the same material, with no rinse since. */
function isInSump(changes: DayFacts['changes'], at: number): boolean {
  const { compartment, materialId } = changes[at] ?? {};
  const before = changes.slice(0, at).findLast((each) => each.compartment === compartment && each.kind !== 'draw');
  return before?.kind === 'fill' && before.materialId === materialId;
}

function leftFaults(facts: DayFacts): readonly Fault[] {
  const { changes } = facts;
  return facts.rig.compartments.flatMap(({ id, kind }) => {
    const stated = facts.day.leftOver
      .filter((each) => each.compartmentId === id)
      .map((each) => (kind === 'tank' ? each.volumeGal : each.weightLb));
    return differing('left over', [[id, sum(stated), levelAfter(changes, changes.length, id) / 100, 0.0105]]);
  });
}

/** Further figures of the page that no verdict is about: rinse water, ways to stops, levels before loads, lines of levels. */
export function furtherFaults(facts: DayFacts): readonly Fault[] {
  const { activities, stops, loads, levels } = facts.day;
  const { changes } = facts;
  const fills = loadsBegun(facts);
  return [
    ...activities.flatMap((each, index) =>
      each.kind === 'refill'
        ? differing(`activity ${index + 1}`, [['rinseGal', each.rinseGal, rinseWater(facts, index) / 100, 0.0001]])
        : [],
    ),
    ...stops.flatMap((stop, number) => {
      const visit = facts.visits[number];
      const drives = activities.slice(facts.visits[number - 1]?.packUp ?? 0, visit?.setUp ?? 0).filter(isKind('drive'));
      return differing(`stop ${number + 1}`, [
        ['driveSec', stop.driveSec, sum(drives.map(lengthMs)) / 1000, 0.001],
        ['distanceM', stop.distanceM, sum(drives.map((each) => each.distanceM)), 0.001],
      ]);
    }),
    ...fills.flatMap(({ change, at }, number) => {
      const load = loads[number];
      if (load === undefined) return [];
      const covered = sum(load.covers.map((each) => each.areaSqFt));
      return differing(`load ${number + 1}`, [
        ['number', load.number, number + 1, 0],
        ['startSec', load.startSec, activities[change.index]?.startSec ?? 0, 0.001],
        ['before', load.beforeGal + load.beforeLb, levelAfter(changes, at, change.compartment) / 100, 0.0001],
        ['covers', covered, load.coversSqFt, 0.001],
      ]);
    }),
    ...levels
      .filter((line) => line.kind === 'tank' || line.kind === 'dry')
      .flatMap((line) => {
        // Two persons empty different compartments at the same time; one of them alone is in order of time.
        const own = changes.filter((each) => each.compartment === line.id);
        return line.points.flatMap(([sec, level]) => {
          const over = own.filter((each) => ms(activities[each.index]?.endSec ?? 0) <= ms(sec)).length;
          const begun = own.filter((each) => ms(activities[each.index]?.startSec ?? 0) < ms(sec)).length;
          const [done, started] = [over, begun].map((count) => levelAfter(own, count, line.id) / 100);
          const right = [done, started].some((each) => Math.abs((each ?? 0) - level) < 0.0001);
          return right || isFillStart(facts, sec, line.id) ? [] : differing(line.id, [['level', level, done ?? 0, 0]]);
        });
      }),
  ];
}

/** A line may stand at 0 where a rinse begins, and at the amount of the morning where the morning begins. */
function isFillStart(facts: DayFacts, sec: number, id: string): boolean {
  return facts.day.activities.some(
    (each) =>
      ms(each.startSec) === ms(sec) &&
      ((each.kind === 'morning' &&
        each.fills.some((fill) => fill.compartmentId === id && fillParts(facts, fill) > 0)) ||
        (each.kind === 'refill' && each.rinsedCompartmentIds.includes(id))),
  );
}
