import type { Chain } from './chain.ts';
import type { RefillEvent } from './search-limits.ts';

/** What a day with given events costs at least, whatever is moved at them. Quick: for leaving out rows of events that cannot pay. */
export class CostFloor {
  private readonly chain: Chain;
  /** Time that moving parts takes at least over the day. ms */
  private readonly movingMs: number;
  private ms = 0;
  private waitedMs = 0;
  private metres = 0;
  private place = 0;

  constructor(chain: Chain) {
    this.chain = chain;
    this.movingMs = leastMovingMs(chain);
  }

  private get rig() {
    return this.chain.model.rig;
  }

  /** nano-dollars. `breakVisit`: visit on whose arrival the break falls, or -1 */
  of(events: readonly RefillEvent[], breakVisit: number): number {
    const { chain, rig } = this;
    const { model } = chain;
    this.ms = rig.morningMs;
    this.waitedMs = 0;
    this.metres = 0;
    this.place = model.homePlace;
    let next = 0;
    for (let v = 0; v < chain.visits; v += 1) {
      const first = chain.start[v] as number;
      const mode = chain.mode[v] as number;
      while (isOnTheWay(events[next], first)) this.refill(events, next++, true);
      this.drive(chain.place[v] as number);
      this.waitUntil(model.openMs[chain.job[v] as number] as number);
      this.ms += (model.modes.beforeMs[mode] as number) + (model.modes.afterMs[mode] as number);
      if (v === breakVisit) this.ms += rig.breakMs;
      for (let i = first; i < (chain.start[v + 1] as number); i += 1) {
        while (events[next]?.position === i) this.refill(events, next++, false);
        this.ms += chain.workMs[i] as number;
      }
    }
    this.drive(model.homePlace);
    const paidMs = rig.eveningMs + Math.max(this.ms, this.ms - this.waitedMs + this.movingMs);
    const over = Math.max(0, paidMs - rig.shiftMs);
    return rig.costPerDay + paidMs * rig.costPerMs + over * rig.overtimeCostPerMs + this.metres * rig.costPerM;
  }

  private drive(to: number): void {
    const { problem, places } = this.chain.model;
    if (to === this.place) return;
    this.ms += problem.travelMs[this.place * places + to] as number;
    this.metres += problem.travelM[this.place * places + to] as number;
    this.place = to;
  }

  private waitUntil(openMs: number): void {
    const early = openMs - this.rig.shiftStartMs - this.ms;
    if (early <= 0) return;
    this.ms += early;
    this.waitedMs += early;
  }

  /** The fixed time of an event. What a refill inside an op comes before counts as done. */
  private refill(events: readonly RefillEvent[], index: number, onTheWay: boolean): void {
    const { chain, rig } = this;
    const { model } = chain;
    const event = events[index] as RefillEvent;
    const station = model.problem.stations[event.station];
    if (event.done > 0) this.ms += rig.midZoneMs;
    if (station === undefined) {
      this.ms += rig.refillMs;
      return;
    }
    const back = this.place;
    this.drive(station.place);
    if (event.done === 0) this.waitUntil(station.openMs);
    this.ms += station.visitMs;
    if (onTheWay) return;
    this.ms += model.ops.reloadMs[chain.op[event.position] as number] as number;
    this.drive(back);
  }
}

function isOnTheWay(event: RefillEvent | undefined, first: number): boolean {
  return event !== undefined && event.position === first && event.done === 0 && event.station >= 0;
}

/** Every part that is not in its compartment in the morning goes into it later; what the rig cannot carry is fetched. */
function leastMovingMs(chain: Chain): number {
  const { model } = chain;
  let ms = 0;
  const fromHome = new Float64Array(model.stocks);
  for (let c = 0; c < model.compartments; c += 1) {
    const first = model.problem.materials[chain.nextMaterial[c] as number];
    if (first === undefined) continue;
    const held = model.homeHolds[first.stock] === 1 && chain.firstMaterial(c) === chain.nextMaterial[c];
    const loaded = held ? Math.min(model.homeParts[c] as number, chain.runParts[c] as number) : 0;
    if (!chain.poursBeside(c)) ms += ((chain.totalParts[c] as number) - loaded) * (model.fillMs[c] as number);
    fromHome[first.stock] = (fromHome[first.stock] as number) + loaded;
  }
  for (let s = 0; s < model.stocks; s += 1) {
    const carried = model.homeHolds[s] === 1 ? (model.homeStock[s] as number) : 0;
    const short = usedParts(chain, s) - (fromHome[s] as number) - carried;
    if (short > 0) ms += short * leastPrice(chain, s);
  }
  return ms;
}

/** Parts of a stock that the ops use. */
function usedParts(chain: Chain, s: number): number {
  const { ops } = chain.model;
  let parts = 0;
  for (let i = 0; i < chain.length; i += 1) {
    const op = chain.op[i] as number;
    if (ops.stock[op] !== s) continue;
    for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1)
      parts += ops.drawParts[draw] as number;
  }
  return parts;
}

function leastPrice(chain: Chain, s: number): number {
  const prices = chain.model.problem.stations.map((each) => each.msPerPart[s] ?? -1).filter((each) => each >= 0);
  return prices.length === 0 ? 0 : Math.min(...prices);
}
