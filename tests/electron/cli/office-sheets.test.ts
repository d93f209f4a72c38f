import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBook } from '../../../core/book/index.ts';
import { writePlan } from '../../../core/plan/result/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';
import { buildFirst, errorOf, here, jsonOf, scratchFolder } from './support.ts';

const scratch = scratchFolder();
const book = sampleBook('mixed-day');
const file = scratch.at('company.json');
const plan = (fleet: string): string => scratch.at(`${fleet}.json`);

beforeAll(() => {
  buildFirst();
  const rigIds = book.rigs.map((each) => each.id);
  const fleets = [
    { id: 'both', name: 'Both rigs', rigIds, fixedPerSeason: 0, note: '' },
    { id: 'one', name: 'One rig', rigIds: rigIds.slice(0, 1), fixedPerSeason: 0, note: '' },
  ];
  writeFileSync(file, writeBook({ ...book, fleets }));
}, 120_000);
afterAll(scratch.remove);

type Made = { readonly sheets: readonly { readonly sheet: string; readonly text: string }[] };
const textOf = async (words: readonly string[]): Promise<string> =>
  jsonOf<Made>(await here(['report', file, ...words, '--json']), 'report')
    .sheets.map((each) => each.text)
    .join('\n');

describe('sheets of the office', () => {
  test('fleets are planned and held against each other', { timeout: 90_000 }, async () => {
    writeFileSync(plan('both'), writePlan(storedPlan('mixed-day')));
    expect((await here(['plan', file, '--iterations', '1', '--fleet', 'one', '--out', plan('one')])).code).toBe(0);
    const rigs = (fleet: string): number =>
      new Set(
        (JSON.parse(readFileSync(plan(fleet), 'utf8')) as { days: { rigId: string }[] }).days.map((day) => day.rigId),
      ).size;
    expect([rigs('both'), rigs('one')]).toEqual([2, 1]);
    const compared = await textOf([
      '--sheet',
      'fleet-comparison',
      '--fleets',
      `both=${plan('both')},one=${plan('one')}`,
    ]);
    expect(compared).toContain('Both rigs against One rig');
    expect(await textOf([plan('both'), '--sheet', 'round-summary'])).toContain('What to order');
    const words = ['report', file, plan('both'), '--json', '--rig', book.rigs[1]?.id ?? ''];
    const crew = jsonOf<Made>(await here(words), 'report').sheets;
    expect(crew.some((each) => ['application-records', 'notices', 'postings'].includes(each.sheet))).toBe(false);
  });

  test('a year, calibrations and versions need no plan', { timeout: 60_000 }, async () => {
    expect(await textOf(['--sheet', 'season-ledger'])).toContain('Season ledger 2027');
    expect(await textOf(['--sheet', 'season-ledger', '--year', '2019'])).toContain('Nothing is recorded or planned');
    expect(await textOf(['--sheet', 'calibration-record'])).toContain('No calibration is kept');
    expect(await textOf(['--sheet', 'record-history'])).toContain('No application record of this lawn');
  });

  test('sheets are told in the units, by the clock and with the dates that are asked for', {
    timeout: 60_000,
  }, async () => {
    writeFileSync(plan('both'), writePlan(storedPlan('mixed-day')));
    const sheet = async (...reading: string[]) => await textOf([plan('both'), '--sheet', 'run-sheet', ...reading]);
    const asBook = await sheet();
    expect(asBook).toMatch(/, March \d+, 2027/);
    expect(asBook).toMatch(/\d:\d\d am/);
    const other = await sheet('--units', 'metric', '--clock', '24-hour', '--dates', 'day-first');
    expect(other).toMatch(/, \d+ March 2027/);
    expect(other).not.toMatch(/\d:\d\d [ap]m/);
    expect(other).toMatch(/\d m²/);
    expect(other).not.toMatch(/\d ft²/);
    expect((await here(['report', file, plan('both'), '--units', 'imperial'])).code).toBe(2);
  });

  test('what cannot be meant is refused', async () => {
    expect((await here(['report', file, '--sheet', 'season-ledger', '--year', 'spring'])).code).toBe(2);
    expect((await here(['report', file, '--sheet', 'fleet-comparison', '--fleets', 'both'])).code).toBe(2);
    expect((await here(['report', file, '--sheet', 'notices'])).code).toBe(2);
    const words = ['report', file, '--sheet', 'fleet-comparison', '--fleets', `three=${file}`, '--json'];
    expect(errorOf(await here(words), file)).toMatchObject({ code: 'reference-missing' });
    expect(errorOf(await here(['plan', file, '--fleet', 'three', '--json']), file)).toMatchObject({
      code: 'reference-missing',
    });
  });
});
