import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildFirst, here, jsonOf, sampleFile, scratchFolder } from './support.ts';

const scratch = scratchFolder();
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

const book = sampleFile('creek-town');
const extract = book.replace(/\.json$/, '.osm');

/** The book with its first and its last two lawns, so that little is planned; its roads may lie beside it. */
function smallBook(name: string, withRoads: boolean): string {
  const whole = JSON.parse(readFileSync(book, 'utf8')) as { properties: unknown[] };
  const properties = [...whole.properties.slice(0, 2), ...whole.properties.slice(-2)];
  const file = scratch.at(`${name}.json`);
  writeFileSync(file, JSON.stringify({ ...whole, properties }));
  if (withRoads) copyFileSync(extract, scratch.at(`${name}.osm`));
  return file;
}

describe('swardway roads', () => {
  test('import writes a road file that plans and tables take, and tells whose roads they are', async () => {
    const out = scratch.at('town.roads');
    const told = jsonOf<{ attribution: string; counts: { roads: number } }>(
      await here(['roads', 'import', extract, '--out', out, '--json']),
      'roads',
    );
    expect(told.attribution).toContain('Invented roads');
    expect(told.counts.roads).toBe(15);
    const table = jsonOf<{ pairs: number; byRoad: number; durationSec: (number | null)[][]; offRoad: unknown[] }>(
      await here(['roads', 'table', book, '--roads', out, '--json']),
      'roads',
    );
    expect([table.pairs, table.byRoad, table.offRoad]).toEqual([870, 870, []]);
    expect(table.durationSec[0]?.[0]).toBe(0);
    const text = await here(['roads', 'table', book]);
    expect(text.out).toContain('870 of 870 pairs of places are by road (Invented roads');
  });

  test('a plan is by road where the roads lie beside the book, and is judged with the same ones', async () => {
    const small = smallBook('small', true);
    const plan = scratch.at('road.plan.json');
    const made = jsonOf<{ travel: string; travelCredit?: string }>(
      await here(['plan', small, '--iterations', '100', '--out', plan, '--json']),
      'plan',
    );
    expect([made.travel, made.travelCredit]).toEqual(['roads', expect.stringContaining('Invented roads')]);
    expect(jsonOf<{ violations: unknown[] }>(await here(['judge', small, plan, '--json']), 'judge').violations).toEqual(
      [],
    );
    const straight = await here(['judge', small, plan, '--roads', 'off', '--json']);
    const codes = jsonOf<{ violations: { code: string }[] }>(straight, 'judge').violations.map((each) => each.code);
    expect(codes).toContain('plan-stale');
    expect((await here(['report', small, plan, '--sheet', 'run-sheet'])).out).toContain(
      'Invented roads of the Swardway',
    );
    const maps = async (more: readonly string[]) =>
      (await here(['report', small, plan, '--sheet', 'map-pages', ...more])).out;
    expect(await maps([])).toContain('Lines follow the roads of the map beside the book (Invented roads');
    expect(await maps(['--roads', 'off'])).toContain('Lines go straight');
  });

  test('a book whose roads are gone is planned by the estimate, and says so', async () => {
    const alone = smallBook('alone', false);
    const run = await here(['plan', alone, '--iterations', '10', '--json']);
    const made = jsonOf<{ travel: string; issues: { code: string; message: string }[] }>(run, 'plan');
    expect(made.travel).toBe('estimate');
    expect(made.issues.find((each) => each.code === 'roads-trouble')?.message).toContain('creek-town.osm');
  });

  test('bad input: no road file is begun, and each says what is wrong', async () => {
    const out = scratch.at('none.roads');
    const empty = scratch.at('empty.osm');
    const cut = scratch.at('cut.osm');
    writeFileSync(empty, '');
    writeFileSync(cut, readFileSync(extract, 'utf8').slice(0, 900));
    const codes: (string | undefined)[] = [];
    for (const file of [empty, cut, book, scratch.at('nowhere.osm')]) {
      const run = await here(['roads', 'import', file, '--out', out]);
      expect(run.code).toBe(1);
      codes.push(/\[([a-z-]+)\]/.exec(run.remarks)?.[1]);
    }
    expect(codes).toEqual(['format-invalid', 'format-invalid', 'format-unknown', 'file-not-found']);
    expect(existsSync(out)).toBe(false);
    expect((await here(['roads', 'import', extract, '--out', book])).remarks).toContain(
      'no road file; it was left as it is',
    );
    expect((await here(['plan', book, '--roads', empty])).code).toBe(1);
    for (const words of [
      ['roads', 'import', extract],
      ['roads', 'fly', book],
      ['roads', 'table', book, '--out', out],
    ])
      expect((await here(words)).code).toBe(2);
  });
});
