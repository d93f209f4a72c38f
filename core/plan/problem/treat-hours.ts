import type { Problem } from './types.ts';

/** Times of day of every job, for days with hours of treating and those without. */
export type HoursOfDays = {
  /** [day]: row of the day; 0 for days on which no job has hours of treating. */
  readonly rowOf: Int32Array;
  /** [row * jobs + job]: earliest set-up, latest arrival with waiting, latest end of the last op. ms; infinite for no end */
  readonly openMs: Float64Array;
  readonly closeMs: Float64Array;
  readonly doneMs: Float64Array;
};

/** Lays the hours of all jobs out, a row for every day that is like no other and one for all days without hours of treating. */
export function hoursOfDays({ jobs, dates }: Pick<Problem, 'jobs' | 'dates'>): HoursOfDays {
  const own = dates.flatMap((_, day) => (jobs.some((job) => hasHours(job.treatHours?.[day])) ? [day] : []));
  const rows: readonly number[] = [-1, ...own];
  const fill = (of: (job: Problem['jobs'][number], day: number) => number): Float64Array =>
    Float64Array.from(rows.flatMap((day) => jobs.map((job) => of(job, day))));
  return {
    rowOf: Int32Array.from(dates, (_, day) => own.indexOf(day) + 1),
    openMs: fill((job, day) => Math.max(job.openMs, job.treatHours?.[day]?.openMs ?? 0)),
    closeMs: fill((job) => job.closeMs),
    doneMs: fill((job, day) => job.treatHours?.[day]?.closeMs ?? Number.POSITIVE_INFINITY),
  };
}

function hasHours(hours: unknown): boolean {
  return hours !== undefined && hours !== null;
}
