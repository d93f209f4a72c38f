import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStore } from '../../../electron/services/store/index.ts';
import { buildFirst, errorOf, jsonOf, readJsonFile, sampleFile, scratchFolder, swardway } from './support.ts';

const scratch = scratchFolder();
const sample = sampleFile('residential-day');
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

type Import = {
  readonly found: number;
  readonly accepted: number;
  readonly rejected: number;
  readonly added: readonly string[];
  readonly same: readonly string[];
  readonly kept: readonly string[];
  readonly properties: number;
  readonly matrixPlaces: number;
  readonly issues: readonly { readonly code: string; readonly where: string }[];
};
type Book = {
  readonly properties: readonly { readonly id: string }[];
  readonly matrix?: { readonly placeIds: readonly string[] };
};

const write = (name: string, text: string): string => {
  writeFileSync(scratch.at(name), text);
  return scratch.at(name);
};
const run = (file: string, into: string, out: string): Import => {
  const done = swardway(['import', file, '--into', into, '--out', out, '--json']);
  expect(done.code, done.remarks).toBe(0);
  return jsonOf<Import>(done, 'import');
};

describe('lawns of a table', () => {
  const table = () =>
    write(
      'lawns.csv',
      [
        'id,name,lat,lon,area,gate width,slope',
        'n-1,Ash 1,40.031,-89.43,"12,500 sq ft",36 in,4',
        'n-2,Ash 2,40.032,-89.43,0.25 ac,,',
        'n-3,Ash 3,-89.43,40.032,5000,,',
        'n-4,Ash 4,40.033,-89.43,a lot,,',
        'n-2,Ash 5,40.034,-89.43,4000,,',
      ].join('\n'),
    );

  test('are added; every row is accounted for; the book given stays as it is', () => {
    const before = readFileSync(sample);
    const out = scratch.at('more.json');
    const answer = run(table(), sample, out);
    expect([answer.found, answer.accepted, answer.rejected]).toEqual([5, 2, 3]);
    expect(answer.added).toEqual(['n-1', 'n-2']);
    const rows = answer.issues.map((each) => /^lawns\.csv in .*, row (\d+)$/.exec(each.where)?.[1]);
    expect(rows).toEqual(['4', '5', '6']);
    const book = readJsonFile<Book>(out);
    expect(book.properties).toHaveLength(30);
    expect(readFileSync(sample).equals(before)).toBe(true);
    const measured = swardway(['measure', out, '--json']);
    const areas = jsonOf<{ properties: { id: string; treatableSqFt: number }[] }>(measured, 'measure').properties;
    expect(areas.find((each) => each.id === 'n-1')?.treatableSqFt).toBe(12_500);
    // 0.25 acres of 43,560 ft2 (NIST Handbook 44, appendix C).
    expect(areas.find((each) => each.id === 'n-2')?.treatableSqFt).toBeCloseTo(10_890, 9);
  });

  test('twice the same is the same; another lawn under a known id keeps what the book says', () => {
    const first = scratch.at('first.json');
    const second = scratch.at('second.json');
    run(table(), sample, first);
    expect(run(table(), first, second)).toMatchObject({ added: [], same: ['n-1', 'n-2'], kept: [], properties: 30 });
    expect(readFileSync(second, 'utf8')).toBe(readFileSync(first, 'utf8'));
    const other = write('other.csv', 'id,lat,lon,area\nn-1,40.05,-89.43,900\n');
    const answer = run(other, first, second);
    expect(answer).toMatchObject({ added: [], same: [], kept: ['n-1'] });
    expect(answer.issues.map((each) => each.code)).toContain('id-already-in-book');
    expect(readFileSync(second, 'utf8')).toBe(readFileSync(first, 'utf8'));
  });

  test('nothing usable: no book is written', () => {
    const file = write('useless.csv', 'id,lat,lon,area\nx,0,0,5\n');
    const out = scratch.at('never.json');
    const error = errorOf(swardway(['import', file, '--into', sample, '--out', out, '--json']), file);
    expect(error.code).toBe('format-invalid');
    expect(() => statSync(out)).toThrow();
  });

  test('a table without places, and a file of no known format', () => {
    const out = scratch.at('never.json');
    const file = write('placeless.csv', 'id,area\nx,5000\n');
    expect(errorOf(swardway(['import', file, '--into', sample, '--out', out, '--json']), file).code).toBe(
      'format-invalid',
    );
    const odd = write('odd.xyz', 'hello');
    expect(errorOf(swardway(['import', odd, '--into', sample, '--out', out, '--json']), odd).code).toBe(
      'format-unknown',
    );
  });
});

test('travel times are taken into the book, and plans use them', () => {
  const file = write(
    'times.csv',
    'from,to,seconds,metres\nshop,teasel-lane-2,600,5000\nteasel-lane-2,shop,620,5100\nshop,mars,1,1\n',
  );
  const out = scratch.at('timed.json');
  const answer = run(file, sample, out);
  expect(answer.matrixPlaces).toBe(3);
  expect(answer.issues.map((each) => each.code)).toContain('place-unknown');
  expect(readJsonFile<Book>(out).matrix?.placeIds).toContain('teasel-lane-2');
  const plan = swardway(['plan', out, '--iterations', '2', '--json']);
  expect(jsonOf<{ travel: string }>(plan, 'plan').travel).toBe('mixed');
});

describe('a book file', () => {
  const stored = scratch.at('stored.swardway');
  const table = () => write('one.csv', 'id,lat,lon,area\nonly,40.031,-89.43,8000\n');

  test('is made, read by every command, and not changed by reading', () => {
    run(table(), sample, stored);
    const before = readFileSync(stored);
    expect(before.toString('latin1', 0, 15)).toBe('SQLite format 3');
    const json = scratch.at('same.json');
    run(table(), sample, json);
    const plan = scratch.at('stored.plan.json');
    for (const words of [['measure'], ['reach'], ['demand'], ['plan', '--iterations', '5', '--seed', '3']] as const) {
      const [command, ...rest] = words;
      const ofStored = swardway([command, stored, ...rest, '--json']);
      expect(ofStored.code).toBe(0);
      expect(JSON.parse(ofStored.out)).toEqual(JSON.parse(swardway([command, json, ...rest, '--json']).out));
    }
    expect(swardway(['plan', stored, '--iterations', '5', '--out', plan]).code).toBe(0);
    expect(jsonOf<{ feasible: boolean }>(swardway(['judge', stored, plan, '--json']), 'judge').feasible).toBe(true);
    expect(readFileSync(stored).equals(before)).toBe(true);
  }, 60_000);

  test('is not overwritten by an import, and a newer one is refused untouched', () => {
    const before = readFileSync(stored);
    const again = swardway(['import', table(), '--into', sample, '--out', stored, '--json']);
    expect(errorOf(again, stored).code).toBe('not-allowed');
    expect(readFileSync(stored).equals(before)).toBe(true);
    const newer = Buffer.from(before);
    // user_version, a big-endian number at byte 60 ("Database File Format", section 1.3, sqlite.org/fileformat2.html).
    newer.writeInt32BE(900, 60);
    writeFileSync(scratch.at('newer.swardway'), newer);
    const refused = swardway(['measure', scratch.at('newer.swardway'), '--json']);
    expect(errorOf(refused, 'newer.swardway').code).toBe('newer-version');
    expect(readFileSync(scratch.at('newer.swardway')).equals(newer)).toBe(true);
  });

  test('one that is open elsewhere is told as locked', async () => {
    const held = await openStore(stored);
    if (!held.ok) throw new Error(held.error.detail);
    try {
      const error = errorOf(swardway(['measure', stored, '--json']), stored);
      expect(error.code).toBe('book-locked');
      expect(error.hint).toContain('Close the book');
    } finally {
      await held.value.close();
    }
    expect(swardway(['measure', stored]).code).toBe(0);
  }, 30_000);

  test('a damaged one is told', () => {
    const bytes = Buffer.from(readFileSync(stored));
    bytes.fill(0x5a, 4096, bytes.length - 100);
    writeFileSync(scratch.at('damaged.swardway'), bytes);
    const error = errorOf(swardway(['measure', scratch.at('damaged.swardway'), '--json']), 'damaged.swardway');
    expect(error.code).toBe('book-damaged');
    expect(readFileSync(scratch.at('damaged.swardway')).equals(bytes)).toBe(true);
  });
});
