import { type Mode, type Problem, type ProblemRig, visitMs } from '../problem/index.ts';

/**
 * The jobs of a problem laid out flat for the search. A visit is one number, its code: job * `width` + mode.
 * Times in ms and money in nano-dollars, as in the problem.
 */
export type JobTable = {
  readonly problem: Problem;
  readonly jobs: number;
  /** Most modes of any job on any rig. */
  readonly width: number;
  readonly places: number;
  readonly placeOf: Int32Array;
  readonly openMs: Float64Array;
  readonly closeMs: Float64Array;
  /** Ground of the job over all its tasks, for sorting. ft2 */
  readonly area: Float64Array;
  /** [rig * jobs * width + code]: time of the visit with its share of the refills; -1 where there is no such mode. */
  readonly visitMs: Float64Array;
  /** [same]: first and last material of a tank in the visit, -1 for none. */
  readonly firstMix: Int32Array;
  readonly lastMix: Int32Array;
  /** [job * jobs + k]: the other jobs from near to far. */
  readonly near: Int32Array;
};

export function layOutJobs(problem: Problem): JobTable {
  const jobs = problem.jobs.length;
  const width = problem.jobs.reduce((most, job) => Math.max(most, ...job.modes.map((each) => each.length)), 1);
  const size = problem.rigs.length * jobs * width;
  const table = {
    problem,
    jobs,
    width,
    places: problem.placeIds.length,
    placeOf: Int32Array.from(problem.jobs, (job) => job.place),
    openMs: Float64Array.from(problem.jobs, (job) => job.openMs),
    closeMs: Float64Array.from(problem.jobs, (job) => job.closeMs),
    area: Float64Array.from(problem.jobs, (job) => areaOf(problem, job.tasks)),
    visitMs: new Float64Array(size).fill(-1),
    firstMix: new Int32Array(size).fill(-1),
    lastMix: new Int32Array(size).fill(-1),
    near: nearest(problem),
  };
  problem.rigs.forEach((rig, r) => {
    const shares = refillShares(problem, rig);
    problem.jobs.forEach((job, j) => {
      (job.modes[r] ?? []).forEach((mode, m) => {
        const at = (r * jobs + j) * width + m;
        table.visitMs[at] = visitTime(mode, shares);
        const mixes = mixesOf(rig, mode);
        table.firstMix[at] = mixes[0] ?? -1;
        table.lastMix[at] = mixes.at(-1) ?? -1;
      });
    });
  });
  return table;
}

function areaOf(problem: Problem, tasks: readonly number[]): number {
  return tasks.reduce((sum, task) => sum + (problem.tasks[task]?.areaUnits ?? 0), 0);
}

function mixesOf(rig: ProblemRig, mode: Mode): readonly number[] {
  return mode.ops.flatMap((op) =>
    op.draws.flatMap((draw) => (rig.compartments[draw.compartment]?.kind === 'tank' ? [op.material] : [])),
  );
}

/** Time of a visit without travel: work, and the time that its use of each compartment will cost in refills. */
function visitTime(mode: Mode, shares: Float64Array): number {
  let ms = visitMs(mode);
  for (const op of mode.ops) {
    for (const draw of op.draws) ms += draw.parts * (shares[draw.compartment] ?? 0);
  }
  return ms;
}

/** What one part out of each compartment costs in refill time: the flow, and a share of the fixed time of a fill. ms */
function refillShares(problem: Problem, rig: ProblemRig): Float64Array {
  const trip = cheapestTrip(problem, rig);
  return Float64Array.from(rig.compartments, (each) => {
    const capacity = Math.max(1, each.capacityParts);
    const carried = each.kind === 'tank' ? rig.nurseParts : rig.bagPlaces * 5000;
    return each.fillMsPerPart + rig.refillMs / capacity + trip / Math.max(capacity, carried);
  });
}

/** Fixed time of the quickest fill point, without the way to it. */
function cheapestTrip(problem: Problem, rig: ProblemRig): number {
  const visits = problem.stations.filter((each) => each.msPerPart.some((ms) => ms >= 0)).map((each) => each.visitMs);
  return visits.length === 0 ? rig.refillMs : Math.min(...visits);
}

function nearest(problem: Problem): Int32Array {
  const count = problem.jobs.length;
  const places = problem.placeIds.length;
  const near = new Int32Array(count * count);
  const order = Array.from({ length: count }, (_, job) => job);
  for (let job = 0; job < count; job += 1) {
    const from = (problem.jobs[job]?.place ?? 0) * places;
    const far = Float64Array.from(problem.jobs, (other) => problem.travelMs[from + other.place] ?? 0);
    far[job] = -1;
    const sorted = order.slice().sort((left, right) => (far[left] as number) - (far[right] as number) || left - right);
    near.set(sorted, job * count);
  }
  return near;
}
