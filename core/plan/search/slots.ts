import type { JobTable } from './tables.ts';

/** Routes of a problem: one per rig and day, and which jobs each may take. */
export type Slots = {
  readonly count: number;
  readonly days: number;
  readonly rigOf: Int32Array;
  readonly dayOf: Int32Array;
  /** Slots of one kind are as good as each other while they are empty: the same rig, on days that are alike for every job. */
  readonly kindOf: Int32Array;
  /** [job * days + day] */
  readonly dayAllowed: Uint8Array;
  /** [job * days + day], nano-dollars */
  readonly lateCost: Float64Array;
  /** [job]: the slot that it has to stay in, or -1. */
  readonly pinned: Int32Array;
};

/** @param pinned [job]: the slot that it has to stay in, or -1 */
export function layOutSlots(table: JobTable, pinned: Int32Array): Slots {
  const { problem, jobs } = table;
  const days = problem.slots.reduce((most, slot) => Math.max(most, slot.day + 1), 0);
  const dayAllowed = new Uint8Array(jobs * days);
  const lateCost = new Float64Array(jobs * days);
  problem.jobs.forEach((job, j) => {
    for (let day = 0; day < days; day += 1) {
      const late = job.lateCost[day] ?? 0;
      // What has no price cannot be chosen.
      dayAllowed[j * days + day] = Number.isFinite(late) ? (job.dayAllowed[day] ?? 0) : 0;
      lateCost[j * days + day] = Number.isFinite(late) ? late : 0;
    }
  });
  const dayKinds = kindsOfDays(days, jobs, dayAllowed, lateCost, table.rowOf);
  const kinds = new Map<string, number>();
  const held = new Set(pinned);
  const kindOf = Int32Array.from(problem.slots, ({ rig, day }, slot) => {
    // A slot that jobs are pinned to is like no other.
    const key = `${rig} ${dayKinds[day]} ${held.has(slot) ? slot : ''}`;
    const kind = kinds.get(key) ?? kinds.size;
    kinds.set(key, kind);
    return kind;
  });
  return {
    count: problem.slots.length,
    days,
    rigOf: Int32Array.from(problem.slots, (slot) => slot.rig),
    dayOf: Int32Array.from(problem.slots, (slot) => slot.day),
    kindOf,
    dayAllowed,
    lateCost,
    pinned,
  };
}

/** [day]: the first day that is like it for every job. */
function kindsOfDays(
  days: number,
  jobs: number,
  allowed: Uint8Array,
  late: Float64Array,
  rowOf: Int32Array,
): Int32Array {
  const kinds = new Int32Array(days);
  for (let day = 0; day < days; day += 1) {
    let kind = 0;
    while (kind < day && (rowOf[kind] !== rowOf[day] || !alike(kind, day, days, jobs, allowed, late))) kind += 1;
    kinds[day] = kind;
  }
  return kinds;
}

function alike(
  one: number,
  other: number,
  days: number,
  jobs: number,
  allowed: Uint8Array,
  late: Float64Array,
): boolean {
  for (let row = 0; row < jobs * days; row += days) {
    if (allowed[row + one] !== allowed[row + other] || late[row + one] !== late[row + other]) return false;
  }
  return true;
}
