import type { Op } from '../problem/index.ts';
import type { PlanActivity, PlanStop } from '../result/index.ts';
import { reportFigures } from './compare.ts';
import type { DayState, SeenStop } from './day-state.ts';
import { groundOf } from './ground.ts';
import { methodKey, taskKey } from './lookup.ts';
import { AMOUNT_SLACK, GROUND_SLACK_SQ_FT, SHARE_SLACK, SUM_SLACK_SEC } from './tolerance.ts';

type Treat = Extract<PlanActivity, { kind: 'treat' }>;
type Task = PlanStop['tasks'][number];

/** A piece of work at a stop, with the op that it is part of; null where the rig has none for it. */
export type DonePiece = { readonly treat: Treat; readonly op: Op | null };

/** Holds what a stop tells of its tasks against what is done there and against the figures of the problem. */
export function checkTold(state: DayState, stop: PlanStop, seen: SeenStop, where: string): void {
  for (const [index, task] of stop.tasks.entries()) {
    const place = `${where}, ${task.zoneId}, ${task.treatmentId}`;
    if (stop.tasks.slice(0, index).some((other) => isOf(other, task))) {
      state.ledger.add('figure-differs', place, 'is listed twice');
    }
    const pieces = seen.done.filter(({ treat }) => isOf(treat, task));
    const [first] = pieces;
    if (first === undefined) {
      state.ledger.add('figure-differs', place, 'is listed and not done at this stop');
    } else {
      reportFigures(state.ledger, place, [
        { name: 'startSec', stated: task.startSec, found: first.treat.startSec, slack: SUM_SLACK_SEC },
        { name: 'endSec', stated: task.endSec, found: pieces.at(-1)?.treat.endSec ?? 0, slack: SUM_SLACK_SEC },
        { name: 'person', stated: task.person, found: first.treat.person, slack: 0 },
        { name: 'areaSqFt', stated: task.areaSqFt, found: groundOfPieces(pieces), slack: GROUND_SLACK_SQ_FT },
        { name: 'volumeGal', stated: task.volumeGal, found: amountOf(state, pieces, 'tank'), slack: AMOUNT_SLACK },
        { name: 'weightLb', stated: task.weightLb, found: amountOf(state, pieces, 'dry'), slack: AMOUNT_SLACK },
      ]);
      if (first.op !== null) checkReckoned(state, task, first.op, groundOfPieces(pieces), place);
    }
  }
}

/** Whether two of them are the same work by the same method. */
function isOf(one: Treat | Task, task: Task): boolean {
  const sameWork = taskKey(one) === taskKey(task) && (one.handTrim === true) === (task.handTrim === true);
  return sameWork && methodKey(one.method) === methodKey(task.method);
}

function groundOfPieces(pieces: readonly DonePiece[]): number {
  return pieces.reduce((sum, { treat }) => sum + treat.areaSqFt, 0);
}

/** What the pieces draw from tanks, gal, or from what holds dry goods, lb. */
function amountOf({ rig }: DayState, pieces: readonly DonePiece[], kind: 'tank' | 'dry'): number {
  const ids = new Set(rig.compartments.filter((each) => each.kind === kind).map((each) => each.id));
  const draws = pieces.flatMap(({ treat }) => treat.draws).filter((draw) => ids.has(draw.compartmentId));
  return draws.reduce((sum, draw) => sum + (kind === 'tank' ? draw.volumeGal : draw.weightLb), 0);
}

/** Minutes and amounts are reckoned from passes exactly where the problem has their figures, and those are the figures told. */
function checkReckoned({ ledger }: DayState, { reckoned }: Task, op: Op, areaSqFt: number, where: string): void {
  const { ground } = op;
  const due = op.method.kind === 'hand' ? undefined : ground === undefined ? 'field-capacity' : 'passes';
  if (reckoned === undefined ? due === 'passes' : reckoned.from !== due) {
    const words = `reckoned from ${reckoned?.from ?? 'nothing'}, and by the problem from ${due ?? 'the hand method'}`;
    ledger.add('figure-differs', where, words);
  }
  if (reckoned?.from !== 'passes' || ground === undefined) return;
  const { coveredSqFt, notReachedSqFt } = groundOf(op, areaSqFt, false);
  const treatedUnits = op.areaUnits - ground.leftUnits;
  const averageRate = treatedUnits > 0 ? ground.coveredUnits / treatedUnits : 0;
  reportFigures(ledger, where, [
    { name: 'coveredSqFt', stated: reckoned.coveredSqFt, found: coveredSqFt, slack: GROUND_SLACK_SQ_FT },
    { name: 'notReachedSqFt', stated: reckoned.notReachedSqFt, found: notReachedSqFt, slack: GROUND_SLACK_SQ_FT },
    { name: 'overlapShare', stated: reckoned.overlapShare, found: Math.max(0, averageRate - 1), slack: SHARE_SLACK },
    { name: 'averageRate', stated: reckoned.averageRate, found: averageRate, slack: SHARE_SLACK },
    { name: 'worstRate', stated: reckoned.worstRate, found: ground.worstPasses, slack: 0 },
    { name: 'swaths', stated: reckoned.swaths, found: ground.swaths, slack: 0 },
    { name: 'trimPasses', stated: reckoned.trimPasses, found: ground.trims, slack: 0 },
  ]);
}
