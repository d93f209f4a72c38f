import { type Issue, issue } from '../../base/index.ts';
import { namesOf as listed, type Problem } from '../problem/index.ts';
import type { Names } from './names.ts';
import type { Plan } from './types.ts';

/** Lawns that a plan comes to after the last useful day of their window. */
export function plannedLate(problem: Problem, names: Names, days: Plan['days']): readonly Issue[] {
  const lastOn = new Map(problem.jobs.map((job) => [job.propertyId, job.lastOn]));
  const late = days.flatMap(({ date, stops }) =>
    stops.flatMap(({ propertyId }) => (date > (lastOn.get(propertyId) ?? date) ? [names.property(propertyId)] : [])),
  );
  if (late.length === 0) return [];
  const words = `After the last useful day of their window come ${listed([...new Set(late)])}.`;
  return [issue('warning', 'planned-late', 'plan', words)];
}
