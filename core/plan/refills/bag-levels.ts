import type { Moves } from './amounts.ts';
import type { Work } from './busy.ts';
import type { Chain } from './chain.ts';
import { drawnAfter } from './part-done.ts';
import { hopperOf, stintKey } from './programme-bags.ts';
import type { RefillEvent } from './search-limits.ts';

/**
 * When bags on machines are poured: where the hopper is dry, as much as fits and is used before it is filled again; there too, but
 * only what the op in hand needs; or so many parts in each stint of work, by `stintKey`.
 */
export type Pouring = 'ahead' | 'as-needed' | ReadonlyMap<number, number>;

/** Bags poured into a hopper after so many units of an op. */
export type Pour = {
  readonly doneUnits: number;
  readonly from: number;
  readonly into: number;
  readonly material: number;
  readonly parts: number;
  readonly ms: number;
};

/** The levels of hoppers with bags beside them, and of those bags, while a day is played. */
export class BagLevels {
  /** True once a hopper ran dry with nothing left beside it, or was filled beyond what it holds. */
  failed = false;
  private readonly chain: Chain;
  private readonly work: Work;
  private readonly pouring: Pouring;
  private readonly level: Float64Array;

  constructor(chain: Chain, work: Work, pouring: Pouring) {
    this.chain = chain;
    this.work = work;
    this.pouring = pouring;
    this.level = new Float64Array(chain.model.compartments);
  }

  /** Takes up what is moved at an event; 0: the morning. */
  fill(event: number): void {
    for (const { compartment, parts } of (this.work.moves[event] as Moves).fills) {
      const level = (this.level[compartment] as number) + parts;
      this.level[compartment] = level;
      const { bagsOf, poursInto, capacity } = this.chain.model;
      const watched = (bagsOf[compartment] as number) >= 0 || (poursInto[compartment] as number) >= 0;
      if (watched && level > (capacity[compartment] as number)) this.failed = true;
    }
  }

  /** What is poured while op i is worked on between two marks. `event`: events that have been by then. */
  during(i: number, event: number, fromUnits: number, toUnits: number): readonly Pour[] {
    const { chain, level, pouring } = this;
    const into = hopperOf(chain, i);
    if (into < 0) return [];
    const { ops } = chain.model;
    const op = chain.op[i] as number;
    const area = ops.area[op] as number;
    const draw = this.drawOf(op, into);
    const drawn = (units: number): number => drawnAfter(draw, units, area);
    const all = drawn(toUnits) - drawn(fromUnits);
    const needed = pouring === 'ahead' ? all + this.usedLater(i, event, toUnits, into) : all;
    const given =
      typeof pouring === 'string' ? null : (pouring.get(stintKey(i, event, this.work.events.length + 1)) ?? 0);
    const pours: Pour[] = [];
    let left = given ?? Number.POSITIVE_INFINITY;
    let done = fromUnits;
    while (!this.failed) {
      const reached = furthest(done, toUnits, (units) => drawn(units) - drawn(done) <= (level[into] as number));
      level[into] = (level[into] as number) - (drawn(reached) - drawn(done));
      done = reached;
      if (done === toUnits) break;
      const rest = needed - (drawn(done) - drawn(fromUnits)) - (level[into] as number);
      const pour = this.pour(into, done, op, Math.min(left, rest));
      this.failed = pour === null;
      if (pour === null) break;
      left -= pour.parts;
      pours.push(pour);
    }
    const last = given === null ? null : this.pour(into, done, op, left);
    return last === null ? pours : [...pours, last];
  }

  /** Pours at most `most` parts; null where nothing fits or is there. */
  private pour(into: number, doneUnits: number, op: number, most: number): Pour | null {
    const { level } = this;
    const { capacity, bagsOf, pourMs, ops } = this.chain.model;
    const from = bagsOf[into] as number;
    const room = (capacity[into] as number) - (level[into] as number);
    const parts = Math.min(most, room, level[from] as number);
    if (parts <= 0) return null;
    level[into] = (level[into] as number) + parts;
    level[from] = (level[from] as number) - parts;
    return { doneUnits, from, into, material: ops.material[op] as number, parts, ms: parts * (pourMs[from] as number) };
  }

  private drawOf(op: number, c: number): number {
    const { ops } = this.chain.model;
    let parts = 0;
    for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1)
      if (ops.drawCompartment[draw] === c) parts += ops.drawParts[draw] as number;
    return parts;
  }

  /** Parts used from the hopper after `units` of op i and before it is filled anew or holds something else. */
  private usedLater(i: number, event: number, units: number, into: number): number {
    const { chain, work } = this;
    const { ops, compartments } = chain.model;
    const material = ops.material[chain.op[i] as number] as number;
    let next = event;
    let parts = 0;
    for (let position = i; position < chain.length; position += 1) {
      const op = chain.op[position] as number;
      const area = ops.area[op] as number;
      const draw = this.drawOf(op, into);
      let done = position === i ? units : 0;
      for (; work.events[next]?.position === position; next += 1) {
        const mark = Math.max(done, (work.events[next] as RefillEvent).done);
        parts += drawnAfter(draw, mark, area) - drawnAfter(draw, done, area);
        done = mark;
        if ((work.moves[next + 1] as Moves).fills.some((each) => each.compartment === into)) return parts;
      }
      if (chain.nextMaterial[position * compartments + into] !== material) return parts;
      parts += drawnAfter(draw, area, area) - drawnAfter(draw, done, area);
    }
    return parts;
  }
}

/** The last whole number from `low` to `high` for which the test holds; it holds at `low`, and up to some number. */
function furthest(low: number, high: number, holds: (units: number) => boolean): number {
  if (holds(high)) return high;
  let [least, most] = [low, high];
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (holds(middle)) least = middle;
    else most = middle;
  }
  return least;
}
