import { fingerprint, fingerprintNumbers } from '../../base/index.ts';
import type { Problem, TreatHours } from './types.ts';

/** Adds the fingerprint of everything else. Issues are words, not figures, and stay out of it. */
export function freeze(parts: Omit<Problem, 'hash'>): Problem {
  const { issues: _, unplaceable: __, travelMs, travelM, jobs, tasks, ...rest } = parts;
  const plain = {
    ...rest,
    travelMs: fingerprintNumbers(travelMs),
    travelM: fingerprintNumbers(travelM),
    tasks: tasks.map(fingerprint),
    jobs: jobs.map(({ closed, treatHours, lastOn: _lastOn, ...job }) =>
      fingerprint({
        ...job,
        dayAllowed: Array.from(job.dayAllowed, (allowed, day) => (closed?.[day]?.isPassing === true ? 1 : allowed)),
        lateCost: Array.from(job.lateCost),
        ...(treatHours === undefined ? {} : { treatHours: treatHours.map(plainHours) }),
      }),
    ),
  };
  return { ...parts, hash: fingerprint(plain) };
}

function plainHours(hours: TreatHours | null): readonly number[] {
  if (hours === null) return [];
  return hours.closeMs === undefined ? [hours.openMs] : [hours.openMs, hours.closeMs];
}
