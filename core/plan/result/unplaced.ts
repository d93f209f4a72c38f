import { formatDuration, quantity } from '../../units/index.ts';
import type { Problem } from '../problem/index.ts';
import { placeRefills, type RouteFault, type Solution } from '../refills/index.ts';
import type { Names } from './names.ts';
import { must } from './route.ts';
import type { UnplacedTask } from './types.ts';

type Reason = UnplacedTask['reasons'][number];

/** Everything that is in no day: what no rig can do, and what found no room, each with its reason per rig. */
export function unplacedOf(problem: Problem, solution: Solution, names: Names): readonly UnplacedTask[] {
  const never = problem.unplaceable.map((each) => unplaced(problem, names, each.task, each.reasons));
  const noRoom = solution.unserved.flatMap((index) => {
    const job = must(problem.jobs[index], 'job');
    const reasons = problem.rigs.map((_, rig) => reasonFor(problem, names, index, rig));
    return job.tasks.map((task) => unplaced(problem, names, task, reasons));
  });
  return [...never, ...noRoom];
}

function unplaced(problem: Problem, names: Names, taskIndex: number, reasons: readonly Reason[]): UnplacedTask {
  const { propertyId, zoneId, treatmentId, step } = must(problem.tasks[taskIndex], 'task');
  return {
    propertyId,
    zoneId,
    treatmentId,
    step,
    propertyName: names.property(propertyId),
    zoneName: names.zone(propertyId, zoneId),
    reasons: reasons.map((each) => ({ ...each })),
  };
}

/** Tries the job alone on every day of a rig: the first fault tells why not; where it fits, the days are simply full. */
function reasonFor(problem: Problem, names: Names, jobIndex: number, rig: number): Reason {
  const { rigId } = must(problem.rigs[rig], 'rig');
  const job = must(problem.jobs[jobIndex], 'job');
  const modes = job.modes[rig] ?? [];
  if (modes.length === 0) return { rigId, code: 'out-of-reach', words: 'cannot reach all of this work' };
  let fault: RouteFault | null = null;
  for (const slot of problem.slots.keys()) {
    const { rig: slotRig, day } = must(problem.slots[slot], 'slot');
    if (slotRig !== rig || job.dayAllowed[day] !== 1) continue;
    for (const mode of modes.keys()) {
      const answer = placeRefills(problem, slot, [{ job: jobIndex, mode }]);
      if (answer.kind === 'placed') {
        const alone = formatDuration(quantity(answer.outcome.paidMs / 1000));
        return {
          rigId,
          code: 'no-time-left',
          words: `would make a day of ${alone} alone, but every working day of this rig is full`,
        };
      }
      fault ??= answer.fault;
    }
  }
  return fault === null
    ? { rigId, code: 'day-not-allowed', words: 'none of the working days is allowed' }
    : faultReason(problem, names, rigId, fault);
}

function faultReason(problem: Problem, names: Names, rigId: string, fault: RouteFault): Reason {
  switch (fault.kind) {
    case 'too-long':
      return {
        rigId,
        code: 'too-long-for-a-day',
        words: `alone it overruns a day by ${formatDuration(quantity(fault.overMs / 1000))}`,
      };
    case 'window-missed':
      return { rigId, code: 'window-missed', words: 'cannot be reached in the hours that the customer allows' };
    case 'no-material':
      return {
        rigId,
        code: 'no-material',
        words: `no fill point supplies enough ${names.material(problem.materials[fault.material]?.id ?? '')}`,
      };
    case 'payload':
      return { rigId, code: 'payload', words: 'the payload does not allow carrying enough' };
    case 'station-closed':
      return { rigId, code: 'fill-point-closed', words: 'the fill points are closed when they are needed' };
  }
}
