import * as v from 'valibot';
import { err, ok, type Result } from '../../base/index.ts';
import type { Position } from '../../book/index.ts';
import { distanceMetres } from '../../geometry/index.ts';
import { METRES_PER_MILE } from '../../units/index.ts';
import { NO_WAY } from '../drive-table.ts';
import { cellsFault } from './sense.ts';
import type { Asked, Engine, EngineCells } from './types.ts';

const cell = v.nullable(v.pipe(v.number(), v.finite(), v.minValue(0)));
const rows = v.array(v.array(cell));
const snap = v.looseObject({
  location: v.tuple([v.pipe(v.number(), v.finite()), v.pipe(v.number(), v.finite())]),
  distance: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
});

/** OSRM API v1, service "table": `code`, `durations` in seconds, `distances` in metres, and where the places were put on a road. */
const osrmAnswer = v.looseObject({
  code: v.literal('Ok'),
  durations: rows,
  distances: rows,
  sources: v.array(snap),
  destinations: v.array(snap),
});

/** Valhalla, short form: `durations` in seconds, `distances` in the units that it names. Names from memory. */
const valhallaAnswer = v.looseObject({
  units: v.picklist(['kilometers', 'miles']),
  sources_to_targets: v.looseObject({ durations: rows, distances: rows }),
});

const refusal = v.looseObject({
  code: v.optional(v.string()),
  error_code: v.optional(v.number()),
  message: v.optional(v.string()),
  error: v.optional(v.string()),
});

const METRES_PER_KM = 1000;
const LONGEST_WORDS = 120;
/** What Valhalla says where a place has no road within the limit (from memory). */
const NO_ROAD_NEAR = 171;

/** An engine's refusal, in its own words where it has any. */
export type Refusal = { readonly words: string; readonly isNoRoadNear: boolean };

/** What an engine means by an answer that is no table; null where it is no refusal of an engine at all. */
export function readRefusal(text: string): Refusal | null {
  const parsed = v.safeParse(refusal, parse(text));
  if (!parsed.success) return null;
  const { code, error_code, message, error } = parsed.output;
  const words = [code, message ?? error].filter((each) => each !== undefined && each !== 'Ok').join(': ');
  const isNoRoadNear = error_code === NO_ROAD_NEAR;
  return words === '' ? null : { words: words.replace(/\s+/g, ' ').slice(0, LONGEST_WORDS), isNoRoadNear };
}

/**
 * The cells of a block out of an answer's text. Fails with 'format-invalid' where it is no answer of this kind of engine, where its
 * size is another one than what was asked for, and where the figures cannot be true (`cellsFault`): an engine that lies is not used.
 * A place that was put on a road farther away than allowed has no ways, and is told of in `offRoadM`.
 *
 * @param where the engine's host, for errors
 */
export function readTableAnswer(engine: Engine, text: string, asked: Asked, where: string): Result<EngineCells> {
  const read = engine.kind === 'osrm' ? readOsrm(text, asked, where) : readValhalla(text, where);
  if (!read.ok) return read;
  const { durations, distances, offRoadM } = read.value;
  const { block } = asked;
  if (!fits(durations, block) || !fits(distances, block)) {
    const [rowCount, columnCount] = [block.sources.length, block.targets.length];
    return senseless(where, `Its table is not ${rowCount} by ${columnCount} large, as it was asked for.`);
  }
  const cells = toCells(durations, distances, asked, offRoadM);
  const fault = cellsFault(cells, asked);
  return fault === null ? ok(cells) : senseless(where, fault);
}

type Read = {
  readonly durations: readonly (readonly (number | null)[])[];
  /** metres */
  readonly distances: readonly (readonly (number | null)[])[];
  readonly offRoadM: ReadonlyMap<number, number>;
};

function readOsrm(text: string, { at, block, mostM }: Asked, where: string): Result<Read> {
  const parsed = v.safeParse(osrmAnswer, parse(text));
  if (!parsed.success) return noTable(text, where, 'OSRM');
  const { durations, distances, sources, destinations } = parsed.output;
  if (sources.length !== block.sources.length || destinations.length !== block.targets.length)
    return senseless(where, 'It does not say for every place where it put it on a road.');
  const offRoadM = new Map<number, number>();
  const look = (index: number, found: (typeof sources)[number] | undefined): void => {
    if (found === undefined) return;
    // By its own word, or by where it says that the road is: an engine puts a place a thousand kilometres away without a sound.
    const metres = Math.max(found.distance ?? 0, distanceMetres(at[index] as Position, found.location));
    if (metres > mostM) offRoadM.set(index, Math.round(metres));
  };
  block.sources.forEach((index, number) => {
    look(index, sources[number]);
  });
  block.targets.forEach((index, number) => {
    look(index, destinations[number]);
  });
  return ok({ durations, distances, offRoadM });
}

function readValhalla(text: string, where: string): Result<Read> {
  const parsed = v.safeParse(valhallaAnswer, parse(text));
  if (!parsed.success) return noTable(text, where, 'Valhalla');
  const { units, sources_to_targets: table } = parsed.output;
  const metres = units === 'miles' ? METRES_PER_MILE : METRES_PER_KM;
  const distances = table.distances.map((row) => row.map((each) => (each === null ? null : each * metres)));
  return ok({ durations: table.durations, distances, offRoadM: new Map() });
}

function fits(table: Read['durations'], { sources, targets }: Asked['block']): boolean {
  return table.length === sources.length && table.every((row) => row.length === targets.length);
}

function toCells(
  durations: Read['durations'],
  distances: Read['distances'],
  { block }: Asked,
  offRoadM: Read['offRoadM'],
): EngineCells {
  const columns = block.targets.length;
  const durationSec = new Int32Array(block.sources.length * columns).fill(NO_WAY);
  const distanceM = new Int32Array(durationSec.length).fill(NO_WAY);
  block.sources.forEach((source, row) => {
    block.targets.forEach((target, column) => {
      const seconds = durations[row]?.[column] ?? null;
      const metres = distances[row]?.[column] ?? null;
      if (seconds === null || offRoadM.has(source) || offRoadM.has(target)) return;
      durationSec[row * columns + column] = Math.ceil(Math.min(seconds, LONGEST_SEC));
      distanceM[row * columns + column] = metres === null ? NO_WAY : Math.ceil(Math.min(metres, LONGEST_M));
    });
  });
  return { durationSec, distanceM, offRoadM };
}

const LONGEST_SEC = 2_000_000;
const LONGEST_M = 2_000_000_000;

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function noTable(text: string, where: string, name: string): Result<never> {
  const refused = readRefusal(text);
  if (refused !== null) {
    const hint = 'Look at the settings of the engine; drive times stay an estimate until it answers.';
    return err('not-available', where, `The engine refused: ${refused.words}.`, hint);
  }
  const looksLikePage = /^\s*<(!doctype|html|\?xml)/i.test(text);
  const detail = looksLikePage
    ? `It answered with a web page, not with a table of drive times of ${name}.`
    : `Its answer is no table of drive times of ${name}.`;
  return err('format-invalid', where, detail, 'Check the address and the kind of the engine.');
}

function senseless(where: string, detail: string): Result<never> {
  const hint = 'Its answers are not used; drive times stay an estimate. Check what the engine runs on.';
  return err('format-invalid', where, detail, hint);
}
