import { describe, expect, it } from 'vitest';
import { type AppError, err, ok, type Result } from '../../core/base/index.ts';
import { readBook, readJson, writeBook } from '../../core/book/index.ts';
import {
  guessTemperatureColumns,
  guessTemperatures,
  guessWeather,
  guessWeatherColumns,
  readTable,
  readTemperatures,
  readTemperatureTable,
  readWeather,
} from '../../core/formats/index.ts';
import { readImageHead } from '../../core/imagery/index.ts';
import { readKeptStreets, readStreets } from '../../core/places/index.ts';
import { readPlan } from '../../core/plan/result/index.ts';
import { readRoadMap } from '../../core/roads/index.ts';
import { ROUTING_FORMATS } from '../../core/routing/index.ts';
import { readDraft } from '../../core/sketch/index.ts';
import { type Asked, readRefusal, readTableAnswer } from '../../core/travel/engines/index.ts';
import { readDriveTable } from '../../core/travel/index.ts';
import { openTally, WHOLE_FUZZ } from '../support/fuzz.ts';
import { mutate } from '../support/mutate.ts';
import { sampleText } from '../support/samples.ts';
import { storedPlan } from '../support/stored-plans.ts';
import * as seeds from './seeds.ts';

/** Mutated inputs of each reader. */
const ROUNDS = WHOLE_FUZZ ? 2000 : 40;
/** No input may take longer, ms. */
const LONGEST_MS = 2000;

type Read = (bytes: Uint8Array) => Result<unknown>;
type Case = readonly [name: string, seed: string | Uint8Array, read: Read];

const onText =
  (read: (text: string) => Result<unknown>): Read =>
  (bytes) =>
    read(new TextDecoder().decode(bytes));
const onJson = (read: (value: unknown) => Result<unknown>): Read =>
  onText((text) => {
    const value = readJson(text, 'x.json');
    return value.ok ? read(value.value) : value;
  });

const ASKED: Asked = {
  at: [
    [0, 0],
    [0.01, 0],
  ],
  block: { sources: [0, 1], targets: [0, 1] },
  mostM: 100,
};
const engine = (kind: 'osrm' | 'valhalla'): Case => [
  `answer of ${kind}`,
  seeds.ENGINE_ANSWERS[kind],
  onText((text) => {
    readRefusal(text);
    return readTableAnswer({ kind, address: 'http://127.0.0.1' }, text, ASKED, '127.0.0.1');
  }),
];

const CASES: readonly Case[] = [
  ['book.json', sampleText('residential-day'), onText(readBookTwice)],
  ['plan.json', JSON.stringify(storedPlan('residential-day')), onText((text) => readPlan(text, 'plan.json'))],
  ['draft.json', seeds.DRAFT, onJson(readDraft)],
  ['book.drives', seeds.DRIVE_TABLE, (bytes) => readDriveTable(bytes, 'book.drives')],
  ['book.roads', seeds.ROAD_MAP, (bytes) => readRoadMap(bytes, 'book.roads')],
  ['streets.geojson', seeds.STREETS_TEXT, onJson((value) => readStreets(value, 'streets'))],
  ['streets as kept', seeds.KEPT_STREETS, onJson((value) => readKeptStreets(value, 'streets'))],
  ['weather.csv', seeds.WEATHER, onText(readWeatherText)],
  ['temperatures.csv', seeds.TEMPERATURES, onText(readTemperatureText)],
  engine('osrm'),
  engine('valhalla'),
  ...ROUTING_FORMATS.map(
    ({ id, read }): Case => [
      `routing, ${id}`,
      id === 'vrplib' ? seeds.VRPLIB : seeds.SOLOMON,
      onText((text) => read(text, 'x', {})),
    ],
  ),
  ['head of a PNG', seeds.PNG_HEAD, readHead],
  ['head of a JPEG', seeds.JPEG_HEAD, readHead],
];

/** What is taken in can be written, and read again. */
function readBookTwice(text: string): Result<unknown> {
  const read = readBook(text, 'book.json');
  if (read.ok) expect(readBook(writeBook(read.value.book), 'again').ok).toBe(true);
  return read;
}

function readWeatherText(text: string): Result<unknown> {
  const table = readTable(text, 'weather.csv');
  if (!table.ok) return table;
  const columns = guessWeatherColumns(table.value.columns);
  const { dates, air, wind, rain } = guessWeather(table.value, columns);
  const answers = {
    columns,
    dateOrder: dates.order,
    airUnit: air.unit ?? 'F',
    windUnit: wind ?? 'mph',
    rainUnit: rain ?? 'in',
  } as const;
  const { found, accepted, rejected, empty } = readWeather(table.value, answers, 'weather.csv');
  expect(accepted + rejected + empty).toBe(found);
  return rejected === 0 ? ok(found) : partly(`${rejected} rows`);
}

function readTemperatureText(text: string): Result<unknown> {
  const table = readTemperatureTable(text, 'temperatures.csv');
  if (!table.ok) return table;
  const columns = guessTemperatureColumns(table.value.columns);
  const { dates, air, soil } = guessTemperatures(table.value, columns);
  const answers = {
    columns,
    dateOrder: dates.order,
    airUnit: air.unit ?? 'F',
    soilUnit: soil.unit ?? 'F',
    station: null,
  } as const;
  const read = readTemperatures(table.value, answers, 'temperatures.csv');
  expect(read.accepted + read.rejected + read.empty + read.elsewhere).toBe(read.found);
  return read.rejected === 0 ? ok(read) : partly(`${read.rejected} rows`);
}

function readHead(bytes: Uint8Array): Result<unknown> {
  const head = readImageHead(bytes);
  if (head !== null) expect(Math.min(head.widthPx, head.heightPx)).toBeGreaterThan(0);
  return head === null ? partly('no picture') : ok(head);
}

/** What is left out is counted here as refused, though the reader itself goes on with the rest. */
function partly(what: string): Result<never> {
  return err('format-invalid', 'x', what, '-');
}

function check(read: Read, bytes: Uint8Array, label: string): readonly [outcome: string, tookMs: number] {
  const begin = performance.now();
  const result = read(bytes);
  const tookMs = performance.now() - begin;
  expect(tookMs, label).toBeLessThan(LONGEST_MS);
  if (!result.ok) checkRefusal(result.error, label);
  return [result.ok ? 'read' : result.error.code, tookMs];
}

function checkRefusal({ code, where, detail, hint }: AppError, label: string): void {
  expect(code, `${label}: ${detail}`).not.toBe('internal');
  expect(
    [code, where, detail, hint].every((each) => each.length > 0 && each.length < 2000),
    `${label}: ${code}, ${where}, ${detail}, ${hint}`,
  ).toBe(true);
}

describe("mutated files of the program's own, and those that go with a book", () => {
  it.each(CASES)(`%s: ${ROUNDS} of them`, { timeout: 600_000 }, (name, seed, read) => {
    const bytes = typeof seed === 'string' ? new TextEncoder().encode(seed) : seed;
    expect(check(read, bytes, `${name} as it was`)[0]).toBe('read');
    const tally = openTally(name);
    for (let round = 0; round < ROUNDS; round += 1)
      tally.note(...check(read, mutate(bytes, round), `${name}, seed ${round}`));
    // Some must be refused, or the mutations reach nothing.
    expect([...tally.close().keys()].some((each) => each !== 'read')).toBe(true);
  });
});
