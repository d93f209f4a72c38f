import type { Fleet, VehicleKind } from '../models/index.ts';
import { type Sections, tableOf } from './sections.ts';

/** Kinds of vehicles that a file may have: one bit of a whole number each. */
export const MOST_KINDS = 31;

/**
 * How lengths and times of a file count, by its type, as the stored values of those instances ask: not rounded, rounded to
 * thousandths, cut to tenths. `scale` is the whole number that stands for one unit.
 */
export type Convention = { readonly scale: number; readonly length: (exact: number) => number };
export const FLEET_CONVENTIONS: Readonly<Record<string, Convention>> = {
  HFVRP: { scale: 100, length: (exact) => exact },
  SDVRPTW: { scale: 1000, length: (exact) => Math.round(exact * 1000) / 1000 },
  MTVRPTWR: { scale: 10, length: (exact) => Math.floor(exact * 10 + 1e-9) / 10 },
};

/** Parts of the problem that files with a fleet may state. Times in whole units of the convention's scale. */
export type FleetPart = {
  readonly fleet: Fleet;
  readonly windows: { readonly open: Int32Array; readonly close: Int32Array } | null;
  readonly service: Int32Array;
};

/** Costs are written in hundredths where a file has them. */
export const HUNDREDTHS = 100;

/** Reads fleet, windows and service times, or names the part that is wrong. */
export function fleetPartOf(file: Sections, width: number, scale: number, most: number): FleetPart | string {
  const fleet = fleetOf(file, width, scale, most);
  if (typeof fleet === 'string') return fleet;
  const windows = file.rows.has('TIME_WINDOW_SECTION') ? tableOf(file, 'TIME_WINDOW_SECTION', width, 2) : undefined;
  if (windows === null) return 'TIME_WINDOW_SECTION';
  const service = serviceOf(file, width);
  if (service === null) return 'SERVICE_TIME_SECTION';
  const scaled = (times: Int32Array): Int32Array => times.map((each) => each * scale);
  return {
    fleet,
    windows: windows ? { open: scaled(windows[0] as Int32Array), close: scaled(windows[1] as Int32Array) } : null,
    service: scaled(service),
  };
}

function serviceOf(file: Sections, width: number): Int32Array | null {
  if (file.rows.has('SERVICE_TIME_SECTION')) return tableOf(file, 'SERVICE_TIME_SECTION', width, 1)?.[0] ?? null;
  const each = Number(file.fields.get('SERVICE_TIME') ?? 0);
  return Number.isInteger(each) && each >= 0 ? new Int32Array(width).fill(each, 1) : null;
}

function fleetOf(file: Sections, width: number, scale: number, most: number): Fleet | string {
  const count = Number(file.fields.get('VEHICLES'));
  if (!Number.isInteger(count) || count < 1) return 'VEHICLES';
  const perVehicle = (name: string, otherwise: number): Int32Array | null =>
    file.rows.has(name) ? (tableOf(file, name, count, 1)?.[0] ?? null) : new Int32Array(count).fill(otherwise);
  const capacity = perVehicle('CAPACITY_SECTION', Number(file.fields.get('CAPACITY') ?? 0));
  if (capacity === null) return 'CAPACITY_SECTION';
  const fixed = perVehicle('VEHICLES_FIXED_COST_SECTION', 0);
  if (fixed === null) return 'VEHICLES_FIXED_COST_SECTION';
  const perLength = perVehicle('VEHICLES_UNIT_DISTANCE_COST_SECTION', HUNDREDTHS);
  if (perLength === null) return 'VEHICLES_UNIT_DISTANCE_COST_SECTION';
  const served = allowedRows(file, count, width);
  if (served === null) return 'VEHICLES_ALLOWED_CLIENTS_SECTION';
  const release = releaseOf(file, width);
  if (release === null) return 'RELEASE_TIME_SECTION';
  const longest = Number(file.fields.get('VEHICLES_MAX_DURATION') ?? Number.POSITIVE_INFINITY);
  if (!(longest >= 0)) return 'VEHICLES_MAX_DURATION';
  const grouped = group(Math.min(count, most), { capacity, fixed, perLength, served }, width);
  if (grouped.kinds.length > MOST_KINDS) return 'VEHICLES';
  const reloads = file.rows.has('VEHICLES_RELOAD_DEPOT_SECTION');
  // Only vehicles that are alike, without a cost of their own or a longest day, come back for more.
  const plain = grouped.kinds.length === 1 && grouped.kinds[0]?.fixed === 0 && longest === Number.POSITIVE_INFINITY;
  if (reloads && !plain) return 'VEHICLES_RELOAD_DEPOT_SECTION';
  return {
    ...grouped,
    release: release?.map((each) => each * scale),
    mostDuration: longest * scale,
    reloads,
  };
}

type Table = {
  readonly capacity: Int32Array;
  readonly fixed: Int32Array;
  readonly perLength: Int32Array;
  /** Nodes that each vehicle may serve, counted from 0; undefined for all. */
  readonly served: readonly (readonly number[])[] | undefined;
};

/** Vehicles that are alike make one kind. */
function group(count: number, table: Table, width: number): Pick<Fleet, 'kinds' | 'allowed'> {
  const { capacity, fixed, perLength, served } = table;
  const kinds = new Map<string, VehicleKind & { readonly vehicles: number[]; readonly nodes: readonly number[] }>();
  const everybody = Array.from({ length: width }, (_, node) => node);
  for (let vehicle = 0; vehicle < count; vehicle += 1) {
    const nodes = served?.[vehicle] ?? everybody;
    const key = [capacity[vehicle], fixed[vehicle], perLength[vehicle], served === undefined ? '' : nodes].join(' ');
    const known = kinds.get(key);
    if (known !== undefined) known.vehicles.push(vehicle);
    else {
      kinds.set(key, {
        vehicles: [vehicle],
        capacity: capacity[vehicle] as number,
        fixed: (fixed[vehicle] as number) / HUNDREDTHS,
        perLength: (perLength[vehicle] as number) / HUNDREDTHS,
        nodes,
      });
    }
  }
  const allowed = new Int32Array(width);
  [...kinds.values()].forEach(({ nodes }, bit) => {
    for (const node of nodes) allowed[node] = (allowed[node] as number) | (1 << bit);
  });
  return { kinds: [...kinds.values()].map(({ nodes: _, ...kind }) => kind), allowed };
}

/** Undefined where every vehicle may go everywhere, null where the section is not as it should be. */
function allowedRows(file: Sections, count: number, width: number): readonly (readonly number[])[] | undefined | null {
  const rows = file.rows.get('VEHICLES_ALLOWED_CLIENTS_SECTION');
  if (rows === undefined) return undefined;
  const valid = (row: readonly number[], at: number): boolean =>
    row[0] === at + 1 &&
    row.every((each) => Number.isInteger(each) && each >= 1) &&
    row.slice(1).every((each) => each <= width);
  if (rows.length !== count || !rows.every(valid)) return null;
  return rows.map((row) => row.slice(1).map((each) => each - 1));
}

/** Undefined where all goods are there from the start. */
function releaseOf(file: Sections, width: number): Int32Array | undefined | null {
  if (!file.rows.has('RELEASE_TIME_SECTION')) return undefined;
  return tableOf(file, 'RELEASE_TIME_SECTION', width, 1)?.[0] ?? null;
}
