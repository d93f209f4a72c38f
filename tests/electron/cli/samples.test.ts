import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SHEETS } from '../../../core/reports/index.ts';
import { SAMPLE_NAMES } from '../../support/samples.ts';
import {
  buildFirst,
  here,
  interrupted,
  jsonOf,
  readJsonFile,
  sampleFile,
  scratchFolder,
  smallSample,
} from './support.ts';

const scratch = scratchFolder();
let small = '';
let smallRound = '';
beforeAll(async () => {
  small = smallSample('residential-day', scratch.at('small.json'));
  smallRound = smallSample('four-day-round', scratch.at('small-round.json'));
  await buildFirst();
}, 120_000);
afterAll(scratch.remove);

type Plan = {
  readonly days: readonly { readonly date: string; readonly rigId: string; readonly stops: readonly unknown[] }[];
  readonly unplaced: readonly unknown[];
  readonly totals: { readonly stops: number; readonly treatedSqFt: number; readonly costUsd: number };
};
type Verdict = {
  readonly feasible: boolean;
  readonly violations: readonly { readonly code: string }[];
  readonly totals: Plan['totals'];
};

/** Creek Town is planned by road in roads.test.ts. */
const WITHOUT_ROADS = SAMPLE_NAMES.filter((each) => each !== 'creek-town');
const planOf = (name: string): string => scratch.at(`${name}.plan.json`);

describe.each(WITHOUT_ROADS)('%s', (name) => {
  const book = sampleFile(name);

  test('is planned, and the judge finds the plan feasible', async () => {
    const run = await here(['plan', book, '--seed', '7', '--iterations', '15', '--json', '--out', planOf(name)]);
    expect(run.code).toBe(0);
    const plan = jsonOf<Plan>(run, 'plan');
    expect(readJsonFile(planOf(name))).toEqual(plan);
    const judged = await here(['judge', book, planOf(name), '--json']);
    expect(judged.code).toBe(0);
    const verdict = jsonOf<Verdict>(judged, 'judge');
    expect(verdict.violations).toEqual([]);
    expect(verdict.feasible).toBe(true);
    expect(verdict.totals.stops).toBe(plan.totals.stops);
    expect(verdict.totals.treatedSqFt).toBe(plan.totals.treatedSqFt);
    expect(verdict.totals.costUsd).toBe(plan.totals.costUsd);
  }, 120_000);

  test('measure, reach and demand agree on the ground', async () => {
    const measured = jsonOf<{
      properties: { treatableSqFt: number; zones: { areaSqFt: number }[] }[];
      totalSqFt: number;
    }>(await here(['measure', book, '--json']), 'measure');
    const sum = measured.properties.reduce((total, each) => total + each.treatableSqFt, 0);
    expect(measured.totalSqFt).toBeCloseTo(sum, 3);
    const reach = jsonOf<{
      treatments: {
        zones: {
          treatedSqFt: number;
          reachable: boolean;
          answers: { can: boolean; words: string; minutes: number | null }[];
        }[];
      }[];
    }>(await here(['reach', book, '--json']), 'reach');
    for (const { zones } of reach.treatments) {
      for (const zone of zones) {
        expect(zone.reachable).toBe(zone.answers.some((each) => each.can));
        for (const answer of zone.answers) {
          expect(answer.words).not.toBe('');
          expect(answer.minutes === null).toBe(!answer.can);
        }
      }
    }
    const demand = jsonOf<{
      demands: { treatedSqFt: number; volumeGal: number }[];
      totals: { treatedSqFt: number; volumeGal: number };
    }>(await here(['demand', book, '--json']), 'demand');
    const treated = reach.treatments.flatMap(({ zones }) => zones).reduce((total, each) => total + each.treatedSqFt, 0);
    expect(demand.totals.treatedSqFt).toBeCloseTo(treated, 3);
    expect(demand.totals.volumeGal).toBeCloseTo(
      demand.demands.reduce((total, each) => total + each.volumeGal, 0),
      6,
    );
  });

  test('sheets come as JSON and as a page', async () => {
    const page = scratch.at(`${name}.html`);
    const run = await here(['report', book, planOf(name), '--json', '--html', page]);
    expect(run.code).toBe(0);
    const report = jsonOf<{ current: boolean; sheets: { sheet: string; date: string; text: string }[] }>(run, 'report');
    const plan = readJsonFile<Plan>(planOf(name));
    expect(report.current).toBe(true);
    const crewSheets = SHEETS.filter((each) => each.scope === 'day' && each.forOffice !== true);
    expect(crewSheets.map(({ id }) => id)).toEqual(['run-sheet', 'load-tickets', 'truck-list', 'map-pages']);
    expect(report.sheets).toHaveLength(crewSheets.length * plan.days.length);
    const html = readFileSync(page, 'utf8');
    expect(html.startsWith('<!doctype html>')).toBe(true);
    expect(html).not.toContain('<script');
  }, 60_000);
});

test('the same seed and iterations give the same plan', async () => {
  const words = ['plan', small, '--seed', '7', '--iterations', '15', '--json'];
  const first = await here(words);
  expect(first.code).toBe(0);
  expect((await here(words)).out).toBe(first.out);
});

test('a sheet of a day is printed as text, and every lawn has its measure sheet', async () => {
  const planFile = scratch.at('sheets.json');
  const plan = jsonOf<Plan>(await here(['plan', small, '--iterations', '3', '--json', '--out', planFile]), 'plan');
  const text = await here(['report', small, planFile, '--sheet', 'run-sheet', '--date', plan.days[0]?.date ?? '']);
  expect(text.code).toBe(0);
  expect(text.out).toContain('INVENTED DATA, NOT FOR USE');
  const measures = await here(['report', small, planFile, '--sheet', 'measure-sheet', '--json']);
  const all = jsonOf<{ sheets: { propertyId: string }[] }>(measures, 'report').sheets.map((each) => each.propertyId);
  expect(new Set(all).size).toBe(all.length);
  expect(all).toHaveLength(8);
});

describe('for people', () => {
  test('every command prints a table', async () => {
    const book = sampleFile('residential-day');
    expect((await here(['measure', book])).out).toMatch(/28 properties, 56 zones, 0 not measured/);
    expect((await here(['reach', book, '--rig', 'rig-north'])).out).toMatch(/no: gate 30 in, machine 35 in/);
    expect((await here(['demand', book])).out).toMatch(/to buy/);
    const plan = await here(['plan', small, '--iterations', '5', '--out', scratch.at('people.json')]);
    expect(plan.out).toMatch(/2027-03-16, Rig North: \d+:\d\d [ap]m to \d+:\d\d [ap]m,/);
    expect(plan.out).toContain('an estimate from straight lines');
    expect(plan.remarks).toContain('plan written: people.json');
    expect((await here(['judge', small, scratch.at('people.json')])).out).toContain('Feasible');
    const [two, file] = [sampleFile('mixed-day'), scratch.at('two-rigs.json')];
    for (const words of [
      ['plan', two, '--iterations', '5', '--out', file],
      ['judge', two, file],
    ]) {
      expect((await here(words)).out).toContain('1 day, 2 rig days, ');
    }
  }, 60_000);
});

describe('plan', () => {
  test('one day of a round is planned alone, and judged by its own problem', async () => {
    const out = scratch.at('one-day.json');
    const book = sampleFile('four-day-round');
    const run = await here(['plan', book, '--date', '2027-03-17', '--iterations', '5', '--json', '--out', out]);
    const plan = jsonOf<Plan>(run, 'plan');
    expect(plan.days.map((each) => each.date)).toEqual(['2027-03-17']);
    expect(plan.unplaced.length).toBeGreaterThan(0);
    expect(jsonOf<Verdict>(await here(['judge', book, out, '--json']), 'judge').feasible).toBe(true);
  }, 60_000);

  test('Ctrl-C keeps the best plan so far', async () => {
    const words = ['plan', small, '--seconds', '60', '--progress', '--json'];
    const run = await interrupted(words);
    expect(run.code).toBe(0);
    expect(run.remarks).toContain('stopped early');
    expect(jsonOf<Plan>(run, 'plan').totals.stops).toBeGreaterThan(0);
  }, 30_000);

  test('progress is told on standard error and never falls', async () => {
    const run = await here(['plan', small, '--seconds', '1', '--progress', '--json']);
    jsonOf(run, 'plan');
    const shares = [...run.remarks.matchAll(/^Placing stops and refills (\d+) %/gm)].map((match) => Number(match[1]));
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual(shares.toSorted((left, right) => left - right));
    expect(shares.at(-1)).toBe(100);
  });
});

describe('judge', () => {
  test('tells a tampered plan', async () => {
    const out = scratch.at('tampered.json');
    jsonOf(await here(['plan', small, '--iterations', '3', '--json', '--out', out]), 'plan');
    const plan = readJsonFile<{ days: { activities: { kind: string; areaSqFt?: number }[] }[] }>(out);
    const treat = plan.days[0]?.activities.find((each) => each.kind === 'treat');
    if (treat?.areaSqFt === undefined) throw new Error('the plan treats nothing');
    treat.areaSqFt -= 500;
    writeFileSync(out, JSON.stringify(plan));
    const verdict = jsonOf<Verdict>(await here(['judge', small, out, '--json']), 'judge');
    expect(verdict.feasible).toBe(false);
    expect(verdict.violations.map((each) => each.code)).toContain('ground-not-covered');
    const people = await here(['judge', small, out]);
    expect(people.code).toBe(0);
    expect(people.out).toContain('Not feasible');
  });

  test('and a plan for another state of the book', async () => {
    const out = scratch.at('stale.json');
    jsonOf(await here(['plan', small, '--iterations', '3', '--json', '--out', out]), 'plan');
    const changed = scratch.at('changed.json');
    const book = readJsonFile<{ rigs: { refillMin: number }[] }>(small);
    for (const rig of book.rigs) rig.refillMin = 9;
    writeFileSync(changed, JSON.stringify(book));
    const verdict = jsonOf<Verdict>(await here(['judge', changed, out, '--json']), 'judge');
    expect(verdict.violations.map((each) => each.code)).toContain('plan-stale');
    expect((await here(['report', changed, out])).remarks).toContain('[plan-stale]');
  });
});

test('a plan with a price on days of unlike length says what they cost, and is judged and reported with that price', async () => {
  const book = smallRound;
  const file = scratch.at('even.json');
  const run = await here(['plan', book, '--iterations', '8', '--balance', '12.5', '--json', '--out', file]);
  expect(run.code).toBe(0);
  const plan = jsonOf<Plan & { readonly evenDays: { usdPerHour: number; words: string } }>(run, 'plan');
  expect(plan.evenDays.usdPerHour).toBe(12.5);
  expect(jsonOf<Verdict>(await here(['judge', book, file, '--json']), 'judge')).toMatchObject({
    feasible: true,
    totals: { costUsd: plan.totals.costUsd },
  });
  expect(jsonOf<{ current: boolean }>(await here(['report', book, file, '--json']), 'report').current).toBe(true);
  expect((await here(['plan', book, '--iterations', '8', '--balance', '12.5'])).out).toContain(plan.evenDays.words);
}, 120_000);
