import { err, ok, type Result } from '../../base/index.ts';
import type { RoutingProblem } from '../models/index.ts';
import { DISTANCE_KINDS, type DistanceKind, distancesBetween, type Point } from './distances.ts';
import { type Convention, FLEET_CONVENTIONS, fleetPartOf, HUNDREDTHS } from './fleet.ts';
import type { ReadOptions } from './index.ts';
import { explicitDistances } from './matrix.ts';
import { numbersOf, type Sections, sectionsOf } from './sections.ts';

/** Unrounded lengths are searched in ten-thousandths of a unit. */
const EXACT_SCALE = 10_000;
const MOST_NODES = 20_000;
const NO_LENGTHS = 'are missing, cut short or of a kind that is not known';

/**
 * Reads VRPLIB and TSPLIB text: CVRP, with a limit on a route's length and a service time where the file has them (then lengths are
 * not rounded, as the stored values of those instances ask), TSP as one route, and the types of `FLEET_CONVENTIONS`. Error:
 * 'format-invalid' with the section.
 */
export function readVrplib(text: string, where: string, options: ReadOptions): Result<RoutingProblem> {
  const file = sectionsOf(text);
  const width = Number(file.fields.get('DIMENSION'));
  if (!Number.isInteger(width) || width < 2 || width > MOST_NODES) {
    return bad(where, 'DIMENSION', `should be a whole number from 2 to ${MOST_NODES}`);
  }
  const depot = (numbersOf(file, 'DEPOT_SECTION')[0] ?? 1) - 1;
  if (depot !== 0) return bad(where, 'DEPOT_SECTION', 'names a node that is not the first one');
  const convention = FLEET_CONVENTIONS[file.fields.get('TYPE') ?? ''];
  if (convention !== undefined) return readFleet(file, where, width, convention, options);
  const mostLength = Number(file.fields.get('DISTANCE') ?? Number.POSITIVE_INFINITY);
  const limited = Number.isFinite(mostLength);
  const exact = limited || options.exact === true;
  const distances = distancesOf(file, width, exact);
  if (distances === null) return bad(where, 'coordinates or EDGE_WEIGHT_SECTION', NO_LENGTHS);
  const isTour = (file.fields.get('TYPE') ?? '').startsWith('TSP');
  const demand = isTour ? new Int32Array(width) : demands(file, width);
  const capacity = isTour ? 0 : Number(file.fields.get('CAPACITY'));
  if (demand === null || !(capacity >= 0))
    return bad(where, 'CAPACITY and DEMAND_SECTION', 'are missing or hold no number for every node');
  const scale = exact ? EXACT_SCALE : 1;
  const service = new Int32Array(width).fill(Math.round(scale * Number(file.fields.get('SERVICE_TIME') ?? 0)), 1);
  const cost = Int32Array.from(distances, (each) => Math.round(each * scale));
  return ok({
    name: file.fields.get('NAME') ?? where,
    customers: width - 1,
    cost,
    time: cost,
    distances,
    demand,
    service,
    windows: null,
    capacity,
    mostLength: limited ? Math.floor(mostLength * scale) : Number.POSITIVE_INFINITY,
    vehicles: isTour ? 1 : (options.vehicles ?? width - 1),
    costPerUnit: scale,
  });
}

/** Files whose vehicles differ, come back for more, or have a longest working day. */
function readFleet(
  file: Sections,
  where: string,
  width: number,
  { scale, length }: Convention,
  options: ReadOptions,
): Result<RoutingProblem> {
  const distances = distancesOf(file, width, true)?.map(length);
  if (distances === undefined) return bad(where, 'coordinates', NO_LENGTHS);
  const demand = demands(file, width);
  if (demand === null) return bad(where, 'DEMAND_SECTION', 'is missing or holds no number for every node');
  const part = fleetPartOf(file, width, scale, options.vehicles ?? Number.POSITIVE_INFINITY);
  if (typeof part === 'string')
    return bad(
      where,
      part,
      'is missing, cut short, or asks for what is not known: more than 31 kinds of vehicles, or reloads of vehicles that differ',
    );
  const { kinds } = part.fleet;
  const cost = Int32Array.from(distances, (each) => Math.round(each * scale));
  return ok({
    name: file.fields.get('NAME') ?? where,
    customers: width - 1,
    cost,
    time: cost,
    distances,
    demand,
    service: part.service,
    windows: part.windows,
    capacity: Math.max(...kinds.map((each) => each.capacity)),
    mostLength: Number.POSITIVE_INFINITY,
    vehicles: kinds.reduce((sum, each) => sum + each.vehicles.length, 0),
    costPerUnit: scale * HUNDREDTHS,
    fleet: part.fleet,
  });
}

function distancesOf(file: Sections, width: number, exact: boolean): Float64Array | null {
  const { fields } = file;
  const named = fields.get('EDGE_WEIGHT_TYPE') ?? '';
  if (named === 'EXPLICIT') {
    return explicitDistances(numbersOf(file, 'EDGE_WEIGHT_SECTION'), fields.get('EDGE_WEIGHT_FORMAT') ?? '', width);
  }
  const kind = DISTANCE_KINDS.find((each) => each === named);
  const numbers = numbersOf(file, 'NODE_COORD_SECTION');
  if (kind === undefined || numbers.length !== 3 * width || numbers.some(Number.isNaN)) return null;
  const points = Array.from(
    { length: width },
    (_, at): Point => [numbers[3 * at + 1] as number, numbers[3 * at + 2] as number],
  );
  const used: DistanceKind = exact ? 'EXACT_2D' : kind;
  return distancesBetween(points, used);
}

function demands(file: Sections, width: number): Int32Array | null {
  const numbers = numbersOf(file, 'DEMAND_SECTION');
  if (numbers.length !== 2 * width || numbers.some((each) => !Number.isInteger(each) || each < 0)) return null;
  return Int32Array.from({ length: width }, (_, at) => numbers[2 * at + 1] as number);
}

function bad(where: string, part: string, detail: string): Result<never> {
  return err(
    'format-invalid',
    `${where}, ${part}`,
    `${part} ${detail}.`,
    'Check the file against the format it is said to be.',
  );
}
