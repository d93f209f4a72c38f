import type { Book } from '../../../core/book/index.ts';
import type { Plan, UnplacedTask } from '../../../core/plan/result/index.ts';

/** Zones of one lawn that found no place for the same reasons. */
export type UnplacedRow = {
  readonly key: string;
  readonly propertyId: string;
  readonly name: string;
  readonly zones: readonly string[];
  /** One line for each rig. */
  readonly why: readonly string[];
};

/** Lawns without a place in the order of the plan, the tasks of one lawn together where their reasons are the same. */
export function unplacedRows(
  { days, unplaced }: Pick<Plan, 'days' | 'unplaced'>,
  rigs: Book['rigs'],
): readonly UnplacedRow[] {
  // A rig that has no day in the plan is known to the book alone, one that was removed since to the plan alone.
  const rigNames = new Map([
    ...days.map((day) => [day.rigId, day.rigName] as const),
    ...rigs.map((rig) => [rig.id, rig.name] as const),
  ]);
  const rows = new Map<string, UnplacedRow & { readonly zones: string[] }>();
  for (const task of unplaced) {
    const why = whyNot(task, rigNames);
    const key = JSON.stringify([task.propertyId, why]);
    const row = rows.get(key);
    if (row === undefined)
      rows.set(key, { key, propertyId: task.propertyId, name: task.propertyName, zones: [task.zoneName], why });
    else if (!row.zones.includes(task.zoneName)) row.zones.push(task.zoneName);
  }
  return [...rows.values()];
}

/** One line for each rig, named where there are several; rigs of one name that say the same once. */
function whyNot({ reasons }: UnplacedTask, rigNames: ReadonlyMap<string, string>): readonly string[] {
  const lines = reasons.map(({ rigId, words }) =>
    reasons.length > 1 ? `${rigNames.get(rigId) ?? rigId}: ${words}` : words,
  );
  return [...new Set(lines)];
}

/** Rows whose lawn or reason holds the text. */
export function foundRows(rows: readonly UnplacedRow[], query: string): readonly UnplacedRow[] {
  const sought = query.trim().toLowerCase();
  if (sought === '') return rows;
  return rows.filter(({ name, why }) => `${name}\n${why.join('\n')}`.toLowerCase().includes(sought));
}
