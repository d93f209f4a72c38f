import type { Random } from '../../base/index.ts';
import type { JobTable } from './jobs.ts';
import { type Choices, exactPlace, orderJobs, type Place, roughPlace } from './recreate.ts';
import { ruin } from './ruin.ts';
import type { RouteScreen } from './screen.ts';
import { SMALL } from './size.ts';
import { type State, withRoutes } from './state.ts';
import type { Codes, RouteValues } from './values.ts';

/** By how much the rough length of a day is corrected when it proved wrong. ms */
const TIGHTEN_MS = 120_000;
const LOOSEN_MS = 10_000;
const MOST_SLACK_MS = 1_800_000;

/** One step of ruin and recreate: takes a plan, returns a neighbouring one with its full cost. */
export class Stepper {
  private readonly table: JobTable;
  private readonly values: RouteValues;
  private readonly screens: readonly RouteScreen[];
  private readonly choices: Choices;
  private readonly random: Random;

  constructor(table: JobTable, values: RouteValues, screens: readonly RouteScreen[], choices: Choices, random: Random) {
    this.table = table;
    this.values = values;
    this.screens = screens;
    this.choices = choices;
    this.random = random;
  }

  step(state: State): State {
    const { routes: ruined, removed } = ruin(this.table, state, this.random);
    const routes = state.routes.slice();
    for (const [slot, codes] of ruined) routes[slot] = codes;
    for (const screen of this.screens) {
      const codes = routes[screen.slot] as Codes;
      if (screen.codes !== codes) screen.load(codes);
    }
    const touched = new Set(ruined.keys());
    const added = new Map<number, number[]>();
    const absent: number[] = [];
    for (const job of orderJobs(this.table, this.choices, [...removed, ...state.absent], this.random)) {
      const place = this.placeFor(routes, job);
      if (place === null) {
        absent.push(job);
        continue;
      }
      const codes = (routes[place.slot] as Codes).toSpliced(place.at, 0, place.code);
      routes[place.slot] = codes;
      this.screens[place.slot]?.load(codes);
      touched.add(place.slot);
      added.set(place.slot, [...(added.get(place.slot) ?? []), place.code]);
    }
    return this.reckonTouched(state, routes, touched, added, absent);
  }

  private placeFor(routes: readonly Codes[], job: number): Place | null {
    if (this.table.jobs <= SMALL) return exactPlace(this.values, routes, this.choices, job, this.random);
    return roughPlace(this.screens, this.choices, job, this.random);
  }

  /** Reckons the touched routes in full; what turns out not to fit comes out again, last in first out. */
  private reckonTouched(
    state: State,
    routes: readonly Codes[],
    touched: ReadonlySet<number>,
    added: ReadonlyMap<number, number[]>,
    absent: number[],
  ): State {
    const change = new Map<number, { readonly codes: Codes; readonly cost: number }>();
    for (const slot of touched) {
      let codes = routes[slot] as Codes;
      let cost = this.values.reckon(slot, codes);
      const screen = this.screens[slot] as RouteScreen;
      const hopeful = !Number.isFinite(cost);
      const back = added.get(slot) ?? [];
      while (!Number.isFinite(cost)) {
        const code = back.pop() ?? (codes.at(-1) as number);
        codes = codes.filter((each) => each !== code);
        absent.push(Math.trunc(code / this.table.width));
        cost = this.values.reckon(slot, codes);
      }
      screen.slackMs = hopeful
        ? Math.max(-MOST_SLACK_MS, screen.slackMs - TIGHTEN_MS)
        : Math.min(MOST_SLACK_MS, screen.slackMs + LOOSEN_MS);
      screen.load(codes);
      change.set(slot, { codes, cost });
    }
    return withRoutes(state, change, absent);
  }
}
