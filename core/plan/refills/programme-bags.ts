import type { Chain } from './chain.ts';
import { add, type Sum } from './linear.ts';
import type { DayProgramme } from './programme.ts';
import type { RefillEvent } from './search-limits.ts';

/** Work on one op between two events: the op's chain position, and the event before it (0: the morning). */
type Stint = { readonly position: number; readonly event: number; readonly variable: number };

/** The work between events as stints, with a variable each for what is then poured out of bags into the hopper that the op draws on. */
export class Pours {
  readonly stints: readonly Stint[];
  readonly count: number;
  private readonly events: number;
  private readonly variables = new Map<number, number>();

  /** @param first number of the first variable */
  constructor(chain: Chain, events: readonly (RefillEvent | null)[], first: number) {
    const stints: Stint[] = [];
    this.events = events.length;
    let event = 0;
    for (let position = 0; position < chain.length; position += 1) {
      while (events[event + 1]?.position === position && events[event + 1]?.done === 0) event += 1;
      const pours = hopperOf(chain, position) >= 0;
      for (;;) {
        if (pours) stints.push({ position, event, variable: first + stints.length });
        if (events[event + 1]?.position !== position) break;
        event += 1;
      }
    }
    this.stints = stints;
    this.count = stints.length;
    for (const each of stints) this.variables.set(stintKey(each.position, each.event, this.events), each.variable);
  }

  /** The variable of a stint, -1 for none. */
  variable(position: number, event: number): number {
    return this.variables.get(stintKey(position, event, this.events)) ?? -1;
  }

  /** Whole parts by `stintKey`. */
  parts(values: Float64Array): ReadonlyMap<number, number> {
    return new Map([...this.variables].map(([key, variable]) => [key, Math.round(values[variable] as number)]));
  }

  /** Whole parts poured into hopper c after these events. */
  during(chain: Chain, events: readonly number[], c: number, values: Float64Array): number {
    return this.stints.reduce((sum, { position, event, variable }) => {
      const counts = events.includes(event) && hopperOf(chain, position) === c;
      return counts ? sum + Math.round(values[variable] as number) : sum;
    }, 0);
  }

  /** Neither hopper c nor the bags beside it ever hold less than nothing or more than fits. */
  bound(day: DayProgramme, c: number): void {
    const { linear, model } = day;
    const C = model.compartments;
    const bags = model.bagsOf[c] as number;
    const levels = [linear.sum(), linear.sum()] as const;
    for (let e = 0; e < this.events; e += 1) {
      if (day.ledger.runAt[e * C + c] !== day.ledger.runAt[(e - 1) * C + c]) for (const level of levels) level.fill(0);
      fillUp(day, levels[0], e, c);
      fillUp(day, levels[1], e, bags);
      for (const stint of this.stints) {
        if (stint.event !== e || hopperOf(day.chain, stint.position) !== c) continue;
        levels[0][stint.variable] = 1;
        levels[1][stint.variable] = -1;
        add(levels[0], drawnIn(day, stint, c), -1);
        linear.atLeast(levels[0]);
        linear.atMost(levels[0], model.capacity[c] as number);
        linear.atLeast(levels[1]);
      }
    }
  }
}

/** One number per stint of a day with so many events, the morning among them. */
export function stintKey(position: number, event: number, events: number): number {
  return position * events + event;
}

/** The hopper with bags beside it that the op at a position draws on, or -1. */
export function hopperOf(chain: Chain, position: number): number {
  const { ops, bagsOf, carriesBags } = chain.model;
  if (!carriesBags) return -1;
  const op = chain.op[position] as number;
  for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1) {
    const c = ops.drawCompartment[draw] as number;
    if ((bagsOf[c] as number) >= 0) return c;
  }
  return -1;
}

function fillUp(day: DayProgramme, level: Sum, e: number, c: number): void {
  const fill = day.fillAt[e * day.model.compartments + c] as number;
  if (fill < 0) return;
  level[fill] = 1;
  day.linear.atMost(level, (e === 0 ? day.model.homeParts : day.model.capacity)[c] as number);
}

/** Parts out of compartment c during a stint. */
function drawnIn(day: DayProgramme, { position, event }: Stint, c: number): Sum {
  const { ops } = day.model;
  const op = day.chain.op[position] as number;
  const area = ops.area[op] as number;
  const drawn = day.linear.sum();
  for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1) {
    if (ops.drawCompartment[draw] !== c) continue;
    const parts = ops.drawParts[draw] as number;
    const began = day.events[event];
    if (began?.position === position) day.addDrawn(drawn, event, parts, area, -1);
    if (day.events[event + 1]?.position === position) day.addDrawn(drawn, event + 1, parts, area, 1);
    else drawn[day.linear.variables] = (drawn[day.linear.variables] as number) + parts;
  }
  return drawn;
}
