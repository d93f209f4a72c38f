import { err, ok, type Result } from '../../base/index.ts';
import type { RoutingProblem } from '../models/index.ts';
import { distancesBetween, type Point } from './distances.ts';
import type { ReadOptions } from './index.ts';

/** Distances and times are cut to one decimal (the convention of the 12th DIMACS challenge) and counted in tenths. */
const TENTHS = 10;
const PER_ROW = 7;

/** Reads an instance in Solomon's text form: fleet and capacity, then one row per node. Error: 'format-invalid'. */
export function readSolomon(text: string, where: string, options: ReadOptions): Result<RoutingProblem> {
  const rows = text
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length >= 2 && row.every(Number.isFinite));
  const [fleet, ...nodes] = rows;
  if (fleet?.length !== 2 || nodes.length < 2 || nodes.some((row) => row.length !== PER_ROW)) {
    return err(
      'format-invalid',
      where,
      'The file should hold a row with fleet and capacity, then rows of seven numbers for depot and customers.',
      'Check the file against the format it is said to be.',
    );
  }
  const column = (at: number, factor: number): Int32Array =>
    Int32Array.from(nodes, (row) => Math.round(factor * (row[at] as number)));
  const points = nodes.map((row): Point => [row[1] as number, row[2] as number]);
  const distances = distancesBetween(points, 'EXACT_2D').map((each) => Math.floor(each * TENTHS + 1e-9) / TENTHS);
  const cost = Int32Array.from(distances, (each) => Math.round(each * TENTHS));
  return ok({
    name: text.trim().split(/\s/, 1)[0] ?? where,
    customers: nodes.length - 1,
    cost,
    time: cost,
    distances,
    demand: column(3, 1),
    service: column(6, TENTHS),
    windows: { open: column(4, TENTHS), close: column(5, TENTHS) },
    capacity: fleet[1] as number,
    mostLength: Number.POSITIVE_INFINITY,
    vehicles: options.vehicles ?? (fleet[0] as number),
    costPerUnit: TENTHS,
  });
}
