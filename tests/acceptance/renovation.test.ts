import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeBook } from '../../core/book/index.ts';
import { bandAreaSqFt } from '../../core/measure/index.ts';
import type { PlanActivity, PlanDay } from '../../core/plan/result/index.ts';
import { quantity } from '../../core/units/index.ts';
import { placedTasks, unplacedTasks, wholeRun } from './whole-run.ts';

/** One round of everything a machine with four heads can do: holes, seed with starter, spots, bands. Invented, not for use. */

const text = readFileSync(new URL('../fixtures/renovation.json', import.meta.url), 'utf8');
const run = wholeRun(text, 400);
const { book, problem, plan } = run;
const days: readonly PlanDay[] = plan.days;
const activities = days.flatMap((day) => day.activities);
const treats = activities.filter((each): each is PlanActivity & { kind: 'treat' } => each.kind === 'treat');

const areaOf = (propertyId: string, zoneId: string): number =>
  run.measures.find((each) => each.propertyId === propertyId)?.zones.find((each) => each.zoneId === zoneId)?.areaSqFt ??
  Number.NaN;
const treatedBy = (treatmentId: string, step = 0) =>
  treats.filter((each) => each.treatmentId === treatmentId && each.step === step);

test('the fixture is written as the program writes books, and has nothing wrong in it', () => {
  expect(writeBook(book)).toBe(text);
  expect(book.invented).toBe(true);
  // Its heads are from before there were passes, which is told and is no fault.
  expect(run.checks.filter((each) => each.severity !== 'note')).toEqual([]);
  expect(new Set(run.checks.map((each) => each.code))).toEqual(new Set(['head-without-passes']));
});

test('the judge has nothing to say against the plan', () => {
  expect(run.verdict).toMatchObject({ feasible: true, violations: [] });
});

test('all is done but the holes behind the narrow gate, which are listed with their reason', () => {
  expect(unplacedTasks(plan)).toEqual(['larch-9 back holes 0']);
  expect(plan.unplaced[0]?.reasons).toEqual([
    { rigId: 'rig', code: 'gate-too-narrow', words: 'gate 34 in, machine 46 in', ways: [] },
  ]);
  // Eleven zones: holes, seed, starter, spots and bands on each.
  expect([...placedTasks(plan), ...unplacedTasks(plan)]).toHaveLength(11 * 5);
});

describe('what each treatment comes to', () => {
  test('aeration goes over the ground twice with the width and speed of its head, and takes nothing', () => {
    const [front] = treatedBy('holes').filter((each) => each.propertyId === 'larch-1' && each.zoneId === 'front');
    // 3.5 ft x 4.5 mph x 0.55 / 8.25 acres an hour (Iowa State University Extension A3-24), two passes.
    const hours = (2 * areaOf('larch-1', 'front')) / 43_560 / ((3.5 * 4.5 * 0.55) / 8.25);
    expect(((front?.endSec ?? 0) - (front?.startSec ?? 0)) / 3600).toBeCloseTo(hours, 4);
    expect(treatedBy('holes').flatMap((each) => each.draws)).toEqual([]);
  });

  test('seed comes out of the seed box, starter out of the hopper, by nutrient and analysis', () => {
    for (const each of treatedBy('renew')) {
      const [draw] = each.draws;
      expect(draw?.materialId).toBe('seedmix');
      expect(['carrier/box', 'hand-spreader']).toContain(draw?.compartmentId);
      expect(draw?.weightLb).toBeCloseTo((areaOf(each.propertyId, each.zoneId) * 3) / 1000, 1);
    }
    for (const each of treatedBy('renew', 1)) {
      const [draw] = each.draws;
      expect(draw?.materialId).toBe('starter');
      expect(['carrier/hopper', 'hand-spreader']).toContain(draw?.compartmentId);
      // 0.9 lb of phosphate from a product with 18 %: 5 lb per 1,000 ft2.
      expect(draw?.weightLb).toBeCloseTo((areaOf(each.propertyId, each.zoneId) * 5) / 1000, 1);
    }
  });

  test('spots take the share of the ground at the full rate', () => {
    for (const each of treatedBy('spots')) {
      const spots = 0.15 * areaOf(each.propertyId, each.zoneId);
      expect(Math.abs(each.areaSqFt - spots)).toBeLessThan(1);
      expect(each.draws[0]?.volumeGal).toBeCloseTo(spots / 1000, 1);
    }
    const sprayed = treatedBy('spots').reduce((sum, each) => sum + each.areaSqFt, 0);
    const ounces = plan.totals.products.find((each) => each.productId === 'spotter')?.amount ?? 0;
    // 0.7 fl oz per 1,000 ft2 of sprayed ground; each zone rounds up to a hundredth of a gallon.
    expect(ounces / (sprayed / 1000)).toBeGreaterThanOrEqual(0.7 - 0.001);
    expect(ounces / (sprayed / 1000)).toBeLessThan(0.72);
  });

  test('bands take the strip along drives and beds', () => {
    const bands = treatedBy('edges');
    expect(bands).toHaveLength(11);
    for (const each of bands) {
      const property = book.properties.find((other) => other.id === each.propertyId);
      const zone = property?.zones.find((other) => other.id === each.zoneId);
      if (property === undefined || zone === undefined) throw new Error('no such zone');
      const strip = bandAreaSqFt(property, zone, quantity(2), ['paving', 'bed']);
      expect(each.areaSqFt).toBe(Math.ceil(strip - 1e-6));
      expect(strip).toBeLessThan(areaOf(each.propertyId, each.zoneId) / 4);
    }
    // The stated area: 90 ft of pavement and 40 ft of bed, 2 ft wide.
    expect(bands.find((each) => each.propertyId === 'larch-10')?.areaSqFt).toBe(260);
  });
});

describe('order of work inside a stop', () => {
  const RANK: Readonly<Record<string, number>> = {
    'holes 0': 0,
    'renew 0': 1,
    'renew 1': 2,
    'spots 0': 3,
    'edges 0': 3,
  };

  test.each(days.flatMap((day) => day.stops.map((stop) => [`${day.date} ${stop.name}`, stop] as const)))(
    '%s: holes before seed before starter before water, one material after the other',
    (_name, stop) => {
      const ranks = stop.tasks.map((task) => RANK[`${task.treatmentId} ${task.step}`]);
      expect(ranks).toEqual([...ranks].sort());
      const runs = stop.tasks.filter((task, index) => {
        const before = stop.tasks[index - 1];
        return before?.treatmentId !== task.treatmentId || before.step !== task.step;
      });
      expect(runs).toHaveLength(5);
    },
  );

  test('a head is swapped in its own minutes, and only where another one was on', () => {
    const swapMin: Readonly<Record<string, number>> = { tines: 12, sower: 9, disc: 3, boom: 4 };
    for (const day of days) {
      let head = '';
      for (const each of day.activities) {
        if (each.kind === 'swap-head') {
          expect(each.headId).not.toBe(head);
          expect((each.endSec - each.startSec) / 60).toBeCloseTo(swapMin[each.headId] ?? Number.NaN, 6);
          head = each.headId;
        }
        if (each.kind === 'treat' && each.method.kind === 'machine') {
          expect(['', each.method.headId]).toContain(head);
          head = each.method.headId;
        }
      }
    }
  });
});

describe('what has to be flagged first', () => {
  test('is in the minutes of every set-up: 7 for heads and lines, 2 for edges', () => {
    const setUps = activities.filter((each) => each.kind === 'set-up');
    expect(setUps).toHaveLength(6);
    for (const each of setUps) {
      // 3 min of stop, 9 of flagging, 3 of ramp; where the reel or the hand spreader is used, half its setting up.
      const byHand = plan.days
        .flatMap((day) => day.stops)
        .find((stop) => stop.propertyId === each.propertyId)
        ?.tasks.flatMap((task) => (task.method.kind === 'hand' ? [task.method.handMethodId] : []));
      const hand = [...new Set(byHand)].reduce((sum, id) => sum + (id === 'reel' ? 2 : 0.5), 0);
      expect((each.endSec - each.startSec) / 60).toBeCloseTo(15 + hand, 6);
    }
  });

  test('is named in the plan, with its minutes', () => {
    const notes = plan.issues.filter((each) => each.code === 'flag-first');
    expect(notes.map((each) => each.where)).toEqual(['treatment Aeration', 'treatment Bands along drives and beds']);
    expect(notes[0]?.message).toMatch(/sprinkler heads, shallow lines; 7 min/);
    expect(notes[1]?.message).toMatch(/edges; 2 min/);
  });

  test('the same things are not flagged twice at one stop', () => {
    const alike = JSON.parse(text) as { treatments: { id: string; flagFirst?: string[]; flagMin?: number }[] };
    for (const each of alike.treatments) Object.assign(each, { flagFirst: ['sprinkler-heads'], flagMin: 7 });
    const again = wholeRun(JSON.stringify(alike), 1).problem;
    const beforeMs = (of: typeof problem) => of.jobs.flatMap((job) => job.modes.flat().map((mode) => mode.beforeMs));
    const least = Math.min(...beforeMs(problem)) - Math.min(...beforeMs(again));
    expect(least).toBe(2 * 60_000);
  });
});

test('what is too little for the gun to work evenly is said where nothing else can do it', () => {
  const scant = plan.issues.filter((each) => each.code === 'below-least-volume');
  expect(scant.map((each) => each.where)).toContain('property 9 Larch Walk, zone back');
  expect(scant.every((each) => each.severity === 'warning' && /another method/.test(each.message))).toBe(true);
});
