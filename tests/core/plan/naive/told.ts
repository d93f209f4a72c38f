import type { PlanTask } from '../../../../core/plan/result/index.ts';
import { type DayFacts, drawParts, type Fault, isKind, opOf, sum, type Treat } from './day-facts.ts';
import { differing } from './differing.ts';

/** Part 10: sums of ground, worked out from every treat and the figures of its op. ft2 */
export function groundSums(facts: DayFacts) {
  const pieces = facts.day.activities.flatMap((each, index) => {
    if (each.kind !== 'treat') return [];
    const op = opOf(facts, index);
    const part = op === null ? 0 : each.areaSqFt / op.areaUnits;
    const left = part * (op?.ground?.leftUnits ?? 0);
    const covered = op?.ground === undefined ? each.areaSqFt : part * op.ground.coveredUnits;
    return [{ left, covered, treated: each.areaSqFt - left, trimmed: each.handTrim === true ? each.areaSqFt : 0 }];
  });
  return {
    treatedSqFt: sum(pieces.map((each) => each.treated)),
    coveredSqFt: sum(pieces.map((each) => each.covered)),
    handTrimSqFt: sum(pieces.map((each) => each.trimmed)),
    notReachedSqFt: sum(pieces.map((each) => each.left)),
  };
}

const nameOf = ({ propertyId, zoneId, treatmentId, step, method, handTrim }: PlanTask | Treat): string =>
  JSON.stringify([
    [propertyId, zoneId, treatmentId, step, handTrim === true],
    method.kind === 'hand' ? [method.handMethodId] : [method.machineId, method.headId],
  ]);

/** Part 11: what stops tell of their tasks. */
export function toldFaults(facts: DayFacts): readonly Fault[] {
  const { day, visits } = facts;
  return visits.flatMap((visit, number): readonly Fault[] => {
    const stop = day.stops[number];
    if (stop === undefined || stop.propertyId !== visit.propertyId) return [];
    const names = stop.tasks.map(nameOf);
    return stop.tasks.flatMap((task, at): readonly Fault[] => {
      const where = `stop ${number + 1}, ${task.zoneId}`;
      const fault = (words: string): Fault => ({ code: 'figure-differs', where, words });
      const twice = names.indexOf(names[at] ?? '') < at ? [fault('told twice')] : [];
      const own = visit.treats.filter((index) => nameOf(day.activities[index] as Treat) === names[at]);
      if (own.length === 0) return [...twice, fault('told and not done')];
      return [...twice, ...taskFaults(facts, task, own, where)];
    });
  });
}

function taskFaults(facts: DayFacts, task: PlanTask, own: readonly number[], where: string): readonly Fault[] {
  const pieces = own
    .map((index) => facts.day.activities[index])
    .flatMap((each) => (each && isKind('treat')(each) ? [each] : []));
  const drawn = (kind: string): number => {
    const draws = pieces.flatMap((piece) => piece.draws);
    const ids = facts.rig.compartments.filter((each) => each.kind === kind).map((each) => each.id);
    return (
      sum(draws.filter((each) => ids.includes(each.compartmentId)).map((each) => drawParts(facts.rig, each))) / 100
    );
  };
  const areaSqFt = sum(pieces.map((each) => each.areaSqFt));
  return [
    ...differing(where, [
      ['startSec', task.startSec, pieces[0]?.startSec ?? 0, 0.05],
      ['endSec', task.endSec, pieces.at(-1)?.endSec ?? 0, 0.05],
      ['person', task.person, pieces[0]?.person ?? 0, 0],
      ['areaSqFt', task.areaSqFt, areaSqFt, 0.5],
      ['volumeGal', task.volumeGal, drawn('tank'), 0.0105],
      ['weightLb', task.weightLb, drawn('dry'), 0.0105],
    ]),
    ...reckonedFaults(facts, task, own[0] ?? -1, areaSqFt, where),
  ];
}

function reckonedFaults(
  facts: DayFacts,
  { reckoned }: PlanTask,
  first: number,
  areaSqFt: number,
  where: string,
): readonly Fault[] {
  const op = opOf(facts, first);
  if (op === null) return [];
  const wrong: Fault = { code: 'figure-differs', where, words: 'reckoned from something else' };
  const ground = op.ground;
  if (op.method.kind === 'hand') return reckoned === undefined ? [] : [wrong];
  if (ground === undefined) return reckoned?.from === 'passes' ? [wrong] : [];
  if (reckoned?.from !== 'passes') return [wrong];
  const treated = op.areaUnits - ground.leftUnits;
  const rate = treated > 0 ? ground.coveredUnits / treated : 0;
  return differing(where, [
    ['coveredSqFt', reckoned.coveredSqFt, (ground.coveredUnits * areaSqFt) / op.areaUnits, 0.5],
    ['notReachedSqFt', reckoned.notReachedSqFt, (ground.leftUnits * areaSqFt) / op.areaUnits, 0.5],
    ['overlapShare', reckoned.overlapShare, rate > 1 ? rate - 1 : 0, 0.0005],
    ['averageRate', reckoned.averageRate, rate, 0.0005],
    ['worstRate', reckoned.worstRate, ground.worstPasses, 0],
    ['swaths', reckoned.swaths, ground.swaths, 0],
    ['trimPasses', reckoned.trimPasses, ground.trims, 0],
  ]);
}
