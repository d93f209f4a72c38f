import type { Mode, Problem, ProblemRig } from '../problem/index.ts';

/** Figures of one rig for pricing insertions in constant time. Indices: mode numbers run over all jobs of the rig. */
export type RigSheet = {
  readonly rig: ProblemRig;
  readonly homePlace: number;
  /** [job] first mode; [jobs] number of modes. */
  readonly first: Int32Array;
  /** [mode]: set-up, work and pack-up. */
  readonly workMs: Float64Array;
  readonly compartments: number;
  /** [mode * compartments + c] parts drawn. */
  readonly parts: Float64Array;
  /**
   * Tracks: what a visit leaves in a state that the next one may have to change: the material of each compartment, then the head of
   * each machine. [mode * tracks + t]: state it needs first and leaves last, -1 where it does not touch the track.
   */
  readonly tracks: number;
  readonly needs: Int16Array;
  readonly leaves: Int16Array;
  /** [t]: what a change costs, about. */
  readonly changeMs: Float64Array;
  /** True where some track ever changes. */
  readonly changes: boolean;
  readonly capacity: Float64Array;
  readonly fillMs: Float64Array;
  /** Average time of one trip to a station for water, and the water of one trip. */
  readonly tripMs: number;
  readonly tripParts: number;
  /** [c]: 1 for tanks. */
  readonly wet: Uint8Array;
};

/** Lays out one rig. */
export function createRigSheet(problem: Problem, number: number): RigSheet {
  const rig = problem.rigs[number];
  if (rig === undefined) throw new RangeError(`no rig ${number}`);
  const lists = problem.jobs.map((job) => job.modes[number] ?? []);
  const modes = lists.flat();
  let total = 0;
  const first = [0, ...lists.map((list) => (total += list.length))];
  const C = rig.compartments.length;
  const machines = modes.reduce((top, mode) => Math.max(top, ...mode.ops.map((op) => op.machine + 1)), 0);
  const tracks = C + machines;
  const needs = new Int16Array(modes.length * tracks).fill(-1);
  const leaves = new Int16Array(modes.length * tracks).fill(-1);
  const parts = new Float64Array(modes.length * C);
  modes.forEach((mode, k) => {
    fillTracks(mode, C, needs.subarray(k * tracks), leaves.subarray(k * tracks));
    for (const op of mode.ops) {
      for (const draw of op.draws)
        parts[k * C + draw.compartment] = (parts[k * C + draw.compartment] ?? 0) + draw.parts;
    }
  });
  const trip = averageTrip(problem, rig);
  return {
    rig,
    homePlace: problem.stations[rig.home]?.place ?? 0,
    first: Int32Array.from(first),
    workMs: Float64Array.from(modes.map(workOf)),
    compartments: C,
    parts,
    tracks,
    needs,
    leaves,
    changeMs: changeCosts(problem, rig, modes, tracks),
    changes: variesAnywhere(needs, leaves, tracks),
    capacity: Float64Array.from(rig.compartments.map((each) => Math.max(1, each.capacityParts))),
    fillMs: Float64Array.from(rig.compartments.map((each) => each.fillMsPerPart)),
    tripMs: trip,
    tripParts:
      rig.nurseParts + rig.compartments.reduce((sum, each) => sum + (each.kind === 'tank' ? each.capacityParts : 0), 0),
    wet: Uint8Array.from(rig.compartments.map((each) => (each.kind === 'tank' ? 1 : 0))),
  };
}

/** Time of a whole visit without refills; swaps within it count in full. */
function workOf(mode: Mode): number {
  const heads = new Map<number, number>();
  let ms = mode.beforeMs + mode.afterMs;
  for (const op of mode.ops) {
    ms += op.serviceMs;
    if (op.machine < 0 || op.head < 0) continue;
    const fitted = heads.get(op.machine);
    if (fitted !== undefined && fitted !== op.head) ms += op.swapMs;
    heads.set(op.machine, op.head);
  }
  return ms;
}

function fillTracks(mode: Mode, compartments: number, needs: Int16Array, leaves: Int16Array): void {
  const touch = (track: number, state: number): void => {
    if (needs[track] === -1) needs[track] = state;
    leaves[track] = state;
  };
  for (const op of mode.ops) {
    for (const draw of op.draws) touch(draw.compartment, op.material);
    if (op.machine >= 0 && op.head >= 0) touch(compartments + op.machine, op.head);
  }
}

function changeCosts(problem: Problem, rig: ProblemRig, modes: readonly Mode[], tracks: number): Float64Array {
  const costs = new Float64Array(tracks);
  const C = rig.compartments.length;
  for (const mode of modes) {
    for (const op of mode.ops) {
      const rinse = rig.refillMs + (problem.materials[op.material]?.rinseMs ?? 0);
      for (const draw of op.draws) costs[draw.compartment] = Math.max(costs[draw.compartment] ?? 0, rinse);
      if (op.machine >= 0) costs[C + op.machine] = Math.max(costs[C + op.machine] ?? 0, op.swapMs);
    }
  }
  return costs;
}

function variesAnywhere(needs: Int16Array, leaves: Int16Array, tracks: number): boolean {
  const seen = new Int16Array(tracks).fill(-1);
  for (const states of [needs, leaves]) {
    for (let at = 0; at < states.length; at += 1) {
      const state = states[at] as number;
      const before = seen[at % tracks] as number;
      if (state >= 0 && before >= 0 && before !== state) return true;
      if (state >= 0) seen[at % tracks] = state;
    }
  }
  return false;
}

/** Way to the nearest station with water and back, averaged over jobs: half of it, since stations lie on the way now and then. */
function averageTrip(problem: Problem, rig: ProblemRig): number {
  const P = problem.placeIds.length;
  const water = problem.stocks.findIndex((stock) => stock.kind === 'water');
  const sources = problem.stations.filter((each) => (each.msPerPart[water] ?? -1) >= 0);
  if (sources.length === 0 || problem.jobs.length === 0) return rig.refillMs;
  const sum = problem.jobs.reduce((total, job) => {
    const nearest = sources.reduce(
      (least, each) =>
        Math.min(
          least,
          each.visitMs +
            ((problem.travelMs[job.place * P + each.place] ?? 0) +
              (problem.travelMs[each.place * P + job.place] ?? 0)) /
              2,
        ),
      Number.POSITIVE_INFINITY,
    );
    return total + nearest;
  }, 0);
  return sum / problem.jobs.length;
}
