import type { Plan } from '../result/index.ts';
import type { Ledger } from './ledger.ts';
import { type Lookup, taskKey } from './lookup.ts';
import { GROUND_SLACK_SQ_FT } from './tolerance.ts';

/** Ground of each task that some treat covers: pieces from one mark to another, ft2, in the order of the plan. */
export type Coverage = {
  readonly pieces: Map<number, { readonly from: number; readonly to: number; readonly where: string }[]>;
};

export function emptyCoverage(): Coverage {
  return { pieces: new Map() };
}

export function cover(coverage: Coverage, task: number, from: number, to: number, where: string): void {
  const pieces = coverage.pieces.get(task) ?? [];
  pieces.push({ from, to, where });
  coverage.pieces.set(task, pieces);
}

/** Every task is covered from its first to its last ft2 exactly once, or not at all and listed as unplaced. */
export function checkCoverage(lookup: Lookup, ledger: Ledger, coverage: Coverage, plan: Plan): void {
  const listed = listedTasks(lookup, ledger, plan);
  lookup.problem.tasks.forEach((task, number) => {
    const where = `${task.propertyId}, ${task.zoneId}, ${task.treatmentId}`;
    const pieces = coverage.pieces.get(number) ?? [];
    if (pieces.length > 0) {
      checkPieces(ledger, pieces, task.areaUnits, where);
      if (listed.has(number)) ledger.add('figure-differs', where, 'listed as unplaced although it is treated');
    } else if (!listed.has(number)) {
      ledger.add('task-missing', where, 'neither treated nor listed as unplaced');
    }
  });
}

function checkPieces(
  ledger: Ledger,
  pieces: readonly { readonly from: number; readonly to: number }[],
  areaUnits: number,
  where: string,
): void {
  const sorted = [...pieces].sort((left, right) => left.from - right.from);
  let reached = 0;
  for (const piece of sorted) {
    if (piece.from > reached + GROUND_SLACK_SQ_FT) {
      ledger.add('ground-not-covered', where, `from ${reached} to ${piece.from} ft² is left out`);
    } else if (piece.from < reached - GROUND_SLACK_SQ_FT) {
      ledger.add(
        'ground-covered-twice',
        where,
        `from ${piece.from} to ${Math.min(reached, piece.to)} ft² is done again`,
      );
    }
    reached = Math.max(reached, piece.to);
  }
  if (reached < areaUnits - GROUND_SLACK_SQ_FT) {
    ledger.add('ground-not-covered', where, `${reached} of ${areaUnits} ft² are treated`);
  }
  if (reached > areaUnits + GROUND_SLACK_SQ_FT) {
    ledger.add('ground-covered-twice', where, `${reached} ft² are treated where there are ${areaUnits}`);
  }
}

function listedTasks(lookup: Lookup, ledger: Ledger, plan: Plan): ReadonlySet<number> {
  const listed = new Set<number>();
  for (const unplaced of plan.unplaced) {
    const task = lookup.taskOf.get(taskKey(unplaced));
    const where = `unplaced: ${unplaced.propertyId}, ${unplaced.zoneId}, ${unplaced.treatmentId}`;
    if (task === undefined) ledger.add('task-unknown', where, 'the problem has no such task');
    else if (listed.has(task)) ledger.add('figure-differs', where, 'listed as unplaced twice');
    else listed.add(task);
  }
  return listed;
}
