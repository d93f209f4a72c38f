import { type HoursOfDays, hoursOfDays, type Mode, type Problem, type ProblemRig, visitMs } from '../problem/index.ts';

/**
 * The jobs of a problem laid out flat for the search. A visit is one number, its code: job * `width` + mode.
 * Times in ms and money in nano-dollars, as in the problem.
 */
export type JobTable = HoursOfDays & {
  readonly problem: Problem;
  readonly jobs: number;
  /** Most modes of any job on any rig. */
  readonly width: number;
  readonly places: number;
  readonly placeOf: Int32Array;
  /** Ground of the job over all its tasks, for sorting. ft2 */
  readonly area: Float64Array;
  readonly rigs: readonly RigTable[];
};

/** The ways in which one rig does the jobs. Indices: code, op, draw, compartment c, stock s, station k. */
export type RigTable = {
  readonly rig: ProblemRig;
  readonly homePlace: number;
  /** [job]: how many modes. */
  readonly modes: Int32Array;
  /** [code], [codes]: first op. */
  readonly opStart: Int32Array;
  readonly beforeMs: Float64Array;
  readonly afterMs: Float64Array;
  /** [code]: time of the visit without refills. */
  readonly workMs: Float64Array;
  /** [code]: time of the visit with its share of the refills; -1 where there is no such mode. */
  readonly visitMs: Float64Array;
  /** [job]: the least of them; infinite where the rig cannot do the job. */
  readonly leastVisitMs: Float64Array;
  /** [code]: first and last material of a tank in the visit, -1 for none. */
  readonly firstMix: Int32Array;
  readonly lastMix: Int32Array;
  readonly material: Int32Array;
  /** Stock of the material; 0 where nothing is applied. */
  readonly stock: Int32Array;
  readonly serviceMs: Float64Array;
  /** 1 where a second person does the op. */
  readonly second: Uint8Array;
  /** -1 where no head is needed. */
  readonly machine: Int32Array;
  readonly head: Int32Array;
  readonly swapMs: Float64Array;
  readonly reloadMs: Float64Array;
  /** [op], [ops]: first draw. */
  readonly drawStart: Int32Array;
  readonly drawCompartment: Int32Array;
  readonly drawParts: Float64Array;
  readonly machines: number;
};

export function layOutJobs(problem: Problem): JobTable {
  const width = problem.jobs.reduce(
    (most, job) => job.modes.reduce((more, modes) => Math.max(more, modes.length), most),
    1,
  );
  return {
    problem,
    jobs: problem.jobs.length,
    width,
    places: problem.placeIds.length,
    placeOf: Int32Array.from(problem.jobs, (job) => job.place),
    ...hoursOfDays(problem),
    area: Float64Array.from(problem.jobs, (job) =>
      job.tasks.reduce((sum, task) => sum + (problem.tasks[task]?.areaUnits ?? 0), 0),
    ),
    rigs: problem.rigs.map((_, rig) => layOutRig(problem, rig, width)),
  };
}

function layOutRig(problem: Problem, rigIndex: number, width: number): RigTable {
  const rig = problem.rigs[rigIndex] as ProblemRig;
  const jobs = problem.jobs.length;
  const modesOf = problem.jobs.map((job) => job.modes[rigIndex] ?? []);
  const ops = modesOf.flatMap((modes) => modes.flatMap((mode) => mode.ops));
  const draws = ops.flatMap((op) => op.draws);
  const opStart = new Int32Array(jobs * width + 1);
  const table = {
    beforeMs: new Float64Array(jobs * width),
    afterMs: new Float64Array(jobs * width),
    workMs: new Float64Array(jobs * width),
    visitMs: new Float64Array(jobs * width).fill(-1),
    leastVisitMs: new Float64Array(jobs).fill(Number.POSITIVE_INFINITY),
    firstMix: new Int32Array(jobs * width).fill(-1),
    lastMix: new Int32Array(jobs * width).fill(-1),
  };
  const shares = refillShares(problem, rig);
  let count = 0;
  for (let code = 0; code < jobs * width; code += 1) {
    opStart[code] = count;
    const job = Math.trunc(code / width);
    const mode = modesOf[job]?.[code % width];
    if (mode === undefined) continue;
    count += mode.ops.length;
    const work = visitMs(mode);
    const visit = work + refillTime(mode, shares);
    table.workMs[code] = work;
    const mixes = mixesOf(rig, mode);
    table.beforeMs[code] = mode.beforeMs;
    table.afterMs[code] = mode.afterMs;
    table.visitMs[code] = visit;
    table.leastVisitMs[job] = Math.min(table.leastVisitMs[job] as number, visit);
    table.firstMix[code] = mixes[0] ?? -1;
    table.lastMix[code] = mixes.at(-1) ?? -1;
  }
  opStart[jobs * width] = count;
  let drawn = 0;
  return {
    rig,
    homePlace: rig.depot,
    modes: Int32Array.from(modesOf, (modes) => modes.length),
    opStart,
    ...table,
    material: Int32Array.from(ops, (op) => op.material),
    stock: Int32Array.from(ops, (op) => problem.materials[op.material]?.stock ?? 0),
    serviceMs: Float64Array.from(ops, (op) => op.serviceMs),
    second: Uint8Array.from(ops, (op) => (op.second ? 1 : 0)),
    machine: Int32Array.from(ops, (op) => (op.head < 0 ? -1 : op.machine)),
    head: Int32Array.from(ops, (op) => op.head),
    swapMs: Float64Array.from(ops, (op) => op.swapMs),
    reloadMs: Float64Array.from(ops, (op) => op.reloadMs),
    drawStart: Int32Array.from([0, ...ops.map((op) => (drawn += op.draws.length))]),
    drawCompartment: Int32Array.from(draws, (draw) => draw.compartment),
    drawParts: Float64Array.from(draws, (draw) => draw.parts),
    machines: ops.reduce((most, op) => Math.max(most, op.machine + 1), 0),
  };
}

function mixesOf(rig: ProblemRig, mode: Mode): readonly number[] {
  return mode.ops.flatMap((op) =>
    op.draws.flatMap((draw) => (rig.compartments[draw.compartment]?.kind === 'tank' ? [op.material] : [])),
  );
}

/** The time that what a visit takes out of each compartment will cost in refills. */
function refillTime(mode: Mode, shares: Float64Array): number {
  let ms = 0;
  for (const op of mode.ops) for (const draw of op.draws) ms += draw.parts * (shares[draw.compartment] ?? 0);
  return ms;
}

/** What one part out of each compartment costs in refill time: the flow, and a share of the fixed time of a fill. ms */
function refillShares(problem: Problem, rig: ProblemRig): Float64Array {
  const trip = cheapestTripMs(problem, rig);
  return Float64Array.from(rig.compartments, (each) => {
    const capacity = Math.max(1, each.capacityParts);
    const carried = each.kind === 'tank' ? rig.nurseParts : rig.bagPlaces * 5000;
    return each.fillMsPerPart + rig.refillMs / capacity + trip / Math.max(capacity, carried);
  });
}

/** Fixed time of the quickest fill point, without the way to it. */
function cheapestTripMs(problem: Problem, rig: ProblemRig): number {
  const visits = problem.stations.filter((each) => each.msPerPart.some((ms) => ms >= 0)).map((each) => each.visitMs);
  return visits.length === 0 ? rig.refillMs : Math.min(...visits);
}
