import * as v from 'valibot';
import { err, ok, type Result } from '../base/index.ts';
import type { StreetPiece } from './streets.ts';

const FORMAT = 'swardway-streets';
const VERSION = 1;
/** Places are kept to 1e-6 degrees, about 0.1 m. */
const STEPS = 1e6;

const range = v.nullable(v.tuple([v.number(), v.number()]));
const keptSchema = v.object({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  name: v.string(),
  streets: v.array(v.string()),
  /** Street, left range, right range, ZIP left, ZIP right, first corner and steps to the next ones in 1e-6 degrees. */
  pieces: v.array(v.tuple([v.number(), range, range, v.string(), v.string(), v.array(v.number())])),
});

/** The small form in which street pieces are kept: each name once, corners as steps. */
export function writeStreets(name: string, pieces: readonly StreetPiece[]): string {
  const streets = [...new Set(pieces.map(({ street }) => street))];
  const numbers = new Map(streets.map((street, index) => [street, index]));
  const kept = pieces.map((piece) => [
    numbers.get(piece.street) ?? 0,
    piece.left,
    piece.right,
    piece.zipLeft,
    piece.zipRight,
    toSteps(piece.line),
  ]);
  return JSON.stringify({ format: FORMAT, version: VERSION, name, streets, pieces: kept });
}

/** Reads what `writeStreets` wrote; fails with 'format-invalid' for anything else. */
export function readKeptStreets(
  value: unknown,
  where: string,
): Result<{ readonly name: string; readonly pieces: readonly StreetPiece[] }> {
  const parsed = v.safeParse(keptSchema, value);
  if (!parsed.success) {
    return err('format-invalid', where, 'The kept street file cannot be read.', 'Open the street file again.');
  }
  const { name, streets, pieces } = parsed.output;
  return ok({
    name,
    pieces: pieces.map(([street, left, right, zipLeft, zipRight, steps]) => {
      return { street: streets[street] ?? '', left, right, zipLeft, zipRight, line: fromSteps(steps) };
    }),
  });
}

function toSteps(line: StreetPiece['line']): readonly number[] {
  const whole = line.map(
    ([longitude, latitude]) => [Math.round(longitude * STEPS), Math.round(latitude * STEPS)] as const,
  );
  return whole.flatMap(([x, y], index) => {
    const before = whole[index - 1] ?? [0, 0];
    return [x - before[0], y - before[1]];
  });
}

function fromSteps(steps: readonly number[]): StreetPiece['line'] {
  const line: [number, number][] = [];
  let [x, y] = [0, 0];
  for (let index = 0; index + 1 < steps.length; index += 2) {
    x += steps[index] ?? 0;
    y += steps[index + 1] ?? 0;
    line.push([x / STEPS, y / STEPS]);
  }
  return line;
}
