import type { Material } from '../problem/index.ts';
import type { Chain } from './chain.ts';
import { drawnAfter } from './part-done.ts';
import type { RefillEvent } from './search-limits.ts';

/** A stretch of work between two events: parts taken from each compartment. */
export type Stretch = { readonly used: Float64Array };

/**
 * The day cut at its events. Event 0 is the morning; stretch e follows event e. A run is the use of one compartment between two
 * changes of material.
 */
export type Ledger = {
  /** [e]: null for the morning. */
  readonly events: readonly (RefillEvent | null)[];
  readonly stretches: readonly Stretch[];
  readonly runs: readonly Run[];
  /** [e * compartments + c]: run of c in the stretch after event e, or -1. */
  readonly runAt: Int32Array;
};

export type Run = {
  readonly compartment: number;
  readonly material: number;
  readonly stock: number;
  /** Event with which it begins: 0, or that of its change. */
  readonly firstEvent: number;
};

/** Splits the loaded chain at the events. */
export function keepLedger(chain: Chain, events: readonly RefillEvent[]): Ledger {
  const C = chain.model.compartments;
  const stretches = cut(chain, events);
  const runs: Run[] = [];
  const runAt = new Int32Array((events.length + 1) * C).fill(-1);
  const begin = (c: number, event: number, position: number): void => {
    const next = position > chain.length ? -1 : (chain.nextMaterial[position * C + c] as number);
    const material = event === 0 ? chain.firstMaterial(c) : next;
    const stock = chain.model.problem.materials[material]?.stock ?? -1;
    runAt[event * C + c] = material < 0 ? -1 : runs.push({ compartment: c, material, stock, firstEvent: event }) - 1;
  };
  for (let c = 0; c < C; c += 1) begin(c, 0, 0);
  events.forEach((event, index) => {
    for (let c = 0; c < C; c += 1) {
      if (((event.changes >> c) & 1) === 1) begin(c, index + 1, event.position);
      else runAt[(index + 1) * C + c] = runAt[index * C + c] as number;
    }
  });
  return { events: [null, ...events], stretches, runs, runAt };
}

/** What is rinsed out of compartment c at event e, which changes it. */
export function rinsedOut(chain: Chain, ledger: Ledger, e: number, c: number): Material {
  const { compartments, problem } = chain.model;
  const run = ledger.runs[ledger.runAt[(e - 1) * compartments + c] as number] as Run;
  return problem.materials[run.material] as Material;
}

function cut(chain: Chain, events: readonly RefillEvent[]): Stretch[] {
  const { ops, compartments } = chain.model;
  const stretches: Stretch[] = [];
  let used = new Float64Array(compartments);
  let next = 0;
  for (let i = 0; i < chain.length; i += 1) {
    const op = chain.op[i] as number;
    const area = ops.area[op] as number;
    let done = 0;
    const work = (to: number): void => {
      for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1) {
        const c = ops.drawCompartment[draw] as number;
        const parts = ops.drawParts[draw] as number;
        used[c] = (used[c] as number) + drawnAfter(parts, to, area) - drawnAfter(parts, done, area);
      }
      done = to;
    };
    for (; events[next]?.position === i; next += 1) {
      work((events[next] as RefillEvent).done);
      stretches.push({ used });
      used = new Float64Array(compartments);
    }
    work(area);
  }
  stretches.push({ used });
  return stretches;
}
