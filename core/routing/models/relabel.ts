import type { Fleet, RoutingProblem } from './types.ts';

/**
 * The same problem with its customers numbered along a chain of nearest neighbours, so that what is near in the plane is near in
 * memory. `names[customer]` is the customer's own number; names[0] is the depot.
 */
export function relabelled(problem: RoutingProblem): { problem: RoutingProblem; names: Int32Array } {
  const names = chain(problem);
  const { windows } = problem;
  const cost = square(problem.cost, names);
  return {
    names,
    problem: {
      ...problem,
      ...(problem.fleet === undefined ? {} : { fleet: movedFleet(problem.fleet, names) }),
      cost,
      time: problem.time === problem.cost ? cost : square(problem.time, names),
      demand: names.map((name) => problem.demand[name] as number),
      service: names.map((name) => problem.service[name] as number),
      windows:
        windows === null
          ? null
          : {
              open: names.map((name) => windows.open[name] as number),
              close: names.map((name) => windows.close[name] as number),
            },
    },
  };
}

function movedFleet(fleet: Fleet, names: Int32Array): Fleet {
  const { allowed, release } = fleet;
  return {
    ...fleet,
    allowed: names.map((name) => allowed[name] as number),
    release: release === undefined ? undefined : names.map((name) => release[name] as number),
  };
}

function chain({ customers, cost }: RoutingProblem): Int32Array {
  const width = customers + 1;
  const names = Int32Array.from({ length: width }, (_, index) => index);
  for (let at = 0; at < customers; at += 1) {
    const row = (names[at] as number) * width;
    let nearest = at + 1;
    for (let other = at + 2; other <= customers; other += 1) {
      if ((cost[row + (names[other] as number)] as number) < (cost[row + (names[nearest] as number)] as number)) {
        nearest = other;
      }
    }
    const name = names[nearest] as number;
    names[nearest] = names[at + 1] as number;
    names[at + 1] = name;
  }
  return names;
}

function square(matrix: Int32Array, names: Int32Array): Int32Array {
  const width = names.length;
  const moved = new Int32Array(matrix.length);
  for (let from = 0; from < width; from += 1) {
    const row = (names[from] as number) * width;
    for (let to = 0; to < width; to += 1) moved[from * width + to] = matrix[row + (names[to] as number)] as number;
  }
  return moved;
}
