import { describe, expect, test } from 'vitest';
import type { Book, Exclusion, Property } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem, type Op, type Problem } from '../../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { ringAt } from '../../geometry/shapes.ts';
import { naiveJudge } from '../naive/naive-judge.ts';
import { DRIVEN, FEET, oneLawn, PASSES, withHeads, withoutTools } from './one-lawn.ts';

/** The ops of the quickest way of the only rig with the only job. */
function opsOf(problem: Problem): readonly Op[] {
  return problem.jobs[0]?.modes[0]?.[0]?.ops ?? [];
}

function machineOps(problem: Problem): readonly Op[] {
  const all = problem.jobs.flatMap((job) => job.modes.flatMap((modes) => modes.flatMap((mode) => mode.ops)));
  return all.filter((op) => op.method.kind === 'machine');
}

describe('work on a lawn with an outline', () => {
  test('60,000 ft2 at 1/3 gal per 1,000 with 9 ft take about a tank of 20 gal and its overlap (common practice, no source)', () => {
    const book = withHeads(oneLawn(300, 200), () => ({ swathFt: 9, passes: PASSES }));
    const mixes = book.mixes.map((mix) => ({ ...mix, carrierGalPer1000SqFt: 1 / 3 }));
    const problem = problemOf({ ...book, mixes });
    const [machine] = opsOf(problem);
    // Round the edge 2 (291 + 191) ft; then 22 lanes over 200 - 2 x 8.5 ft, 8.3 ft apart, of 300 - 2 x 9 ft and 1 cm at each end.
    const coveredSqFt = 9 * (2 * (291 + 191) + 22 * (282 + 2 * (0.01 / FEET)));
    expect(machine?.ground).toMatchObject({ swaths: 22, trims: 1 });
    expect(Math.abs((machine?.ground?.coveredUnits ?? 0) / coveredSqFt - 1)).toBeLessThan(0.001);
    const gallons = (machine?.draws[0]?.parts ?? 0) / 100;
    expect(gallons).toBeCloseTo(coveredSqFt / 3000, 1);
    expect(gallons / 20).toBeGreaterThan(1);
    expect(gallons / 20).toBeLessThan(1.1);
    // Corners that a round turn leaves: (1 - pi/4) of a square of 4.5 ft at each of four.
    expect(machine?.ground?.leftUnits).toBe(Math.round(4 * (1 - Math.PI / 4) * 4.5 ** 2));
    // Labels count on what is treated, and not on what is covered.
    expect(Math.abs((problem.tasks[0]?.areaUnits ?? 0) - 60_000)).toBeLessThanOrEqual(1);
  });

  test('takes the minutes of the way and its turns', () => {
    const machine = opsOf(problemOf(DRIVEN(oneLawn(120, 80))))[0];
    const { swaths = 0, trims = 0, coveredUnits = 0 } = machine?.ground ?? {};
    // 4 mph are 352 ft a minute over what 8 ft cover, 4 s a turn, and the ways in between.
    const least = coveredUnits / 8 / 352 + ((swaths + trims - 1) * 4) / 60;
    const minutes = (machine?.serviceMs ?? 0) / 60_000;
    expect(minutes).toBeGreaterThan(least);
    expect(minutes).toBeLessThan(1.25 * least);
  });

  test('on a slope the way is as much longer as there is more ground', () => {
    const [level, steep] = [0, 12].map((slopeDeg) => opsOf(problemOf(DRIVEN(oneLawn(120, 80, { slopeDeg }))))[0]);
    const factor = 1 / Math.cos((12 * Math.PI) / 180);
    expect((steep?.serviceMs ?? 0) / (level?.serviceMs ?? 1)).toBeCloseTo(factor, 4);
    expect((steep?.ground?.coveredUnits ?? 0) / (level?.ground?.coveredUnits ?? 1)).toBeCloseTo(factor, 3);
  });

  test('what the machine leaves is trimmed by hand, at the rate of the mix and the minutes of the tool', () => {
    const problem = problemOf(DRIVEN(oneLawn(120, 80)));
    const [machine, trim] = opsOf(problem);
    expect(trim).toMatchObject({
      task: machine?.task,
      groundBefore: machine?.areaUnits,
      areaUnits: (problem.tasks[0]?.areaUnits ?? 0) - (machine?.areaUnits ?? 0),
      method: { kind: 'hand', handMethodId: 'reel-200' },
      machine: -1,
      second: false,
    });
    // The reel stands on a tank of its own and takes 3.2 min per 1,000 ft2; the mix 0.5 gal.
    expect(trim?.serviceMs).toBeCloseTo((trim?.areaUnits ?? 0) * 3.2 * 60, 6);
    const [draw] = trim?.draws ?? [];
    expect(problem.rigs[0]?.compartments[draw?.compartment ?? -1]?.id).toBe('reel-200');
    expect(Math.abs((draw?.parts ?? 0) - (trim?.areaUnits ?? 0) * 0.05)).toBeLessThanOrEqual(1);
    const set = problem.jobs[0]?.modes[0]?.[0];
    // 3 min at the stop, 1 to unload, half of 4 for the reel.
    expect(set?.beforeMs).toBe(6 * 60_000);
  });

  test('a tool that is carried is filled out of the machine', () => {
    const book = DRIVEN(oneLawn(120, 80));
    const handMethods = book.handMethods.map((hand) => ({
      ...hand,
      ...(hand.id === 'reel-200'
        ? { drawsFrom: { kind: 'own-tank', capacityGal: 4, sumpGal: 0, agitated: true } as const, reachFt: undefined }
        : {}),
    }));
    const [machine, trim] = opsOf(problemOf({ ...book, handMethods } as Book));
    expect(trim?.draws[0]?.compartment).toBe(machine?.draws[0]?.compartment);
  });

  test('less than the user wants to trim is stated; without a tool it is left, and said', () => {
    const stated = opsOf(problemOf(DRIVEN(oneLawn(120, 80), { ...PASSES, handTrimFromSqFt: 50 })));
    expect(stated).toHaveLength(1);
    expect(stated[0]?.ground?.leftUnits).toBeGreaterThan(0);
    expect(stated[0]?.ground?.leftUnits).toBeLessThan(50);
    const book = withoutTools(DRIVEN(oneLawn(120, 80)));
    const problem = problemOf(book);
    const [machine, ...others] = opsOf(problem);
    expect(others).toEqual([]);
    expect(machine?.areaUnits).toBe(problem.tasks[0]?.areaUnits);
    expect(problem.issues.map((each) => each.code)).toContain('ground-not-reached');
    const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 20 }));
    const [task] = plan.days[0]?.stops[0]?.tasks ?? [];
    expect(task?.reckoned).toMatchObject({ from: 'passes', notReachedSqFt: machine?.ground?.leftUnits });
    expect(task?.why).toContain(`${machine?.ground?.leftUnits} ft² not reached by the machine`);
    expect(task?.why).toContain('no hand tool on this rig');
  });

  test('a strip without room for the swath goes to the hand, or to nobody', () => {
    const book = DRIVEN(oneLawn(100, 6));
    expect(opsOf(problemOf(book)).map((op) => op.method.kind)).toEqual(['hand']);
    const [left] = problemOf(withoutTools(book)).unplaceable;
    expect(left?.reasons[0]).toMatchObject({ code: 'no-room-for-swath' });
  });

  test('the whole chain holds for both judges, and trims that are left out are found', () => {
    const whole = DRIVEN(sampleBook('mixed-day'));
    const properties = whole.properties.slice(0, 3);
    const propertyIds = properties.map((each) => each.id);
    const book = { ...whole, properties, rounds: whole.rounds.map((each) => ({ ...each, propertyIds, skipped: [] })) };
    const problem = problemOf(book);
    const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 20 }));
    const trims = plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.tasks.filter((task) => task.handTrim)));
    expect(trims.length).toBeGreaterThan(1);
    expect(judgePlan(problem, plan).violations).toEqual([]);
    expect(naiveJudge(problem, plan)).toMatchObject({ faults: [], further: [] });
    const short = {
      ...plan,
      days: plan.days.map((day) => ({
        ...day,
        activities: day.activities.filter((each) => each.kind !== 'treat' || !each.handTrim),
      })),
    };
    expect(judgePlan(problem, short).violations.map((each) => each.code)).toContain('ground-not-covered');
    expect(naiveJudge(problem, short).faults.map((each) => each.code)).toContain('ground-not-covered');
  });
});

describe('a lawn in two parts', () => {
  /** 60 by 40 ft on either side of a strip of 80 ft, across which something of this kind lies, wider than the lawn is long. */
  function withBetween(what: Exclusion['what'] | null): Book {
    const book = oneLawn(60, 40);
    const [property] = book.properties;
    const box = (left: number, low: number, right: number, high: number) =>
      [
        ringAt(
          property!.parking,
          [
            [left, low],
            [right, low],
            [right, high],
            [left, high],
          ].map(([x, y]) => [x! * FEET, y! * FEET] as const),
        ),
      ] as const;
    const coordinates = [box(10, 10, 70, 50), box(150, 10, 210, 50)];
    const zones = property!.zones.map((zone) => ({
      ...zone,
      shape: { ...zone.shape, kind: 'drawn', geometry: { type: 'MultiPolygon', coordinates } } as typeof zone.shape,
    }));
    const between = { type: 'Polygon', coordinates: box(100, -40, 120, 100) } as const;
    const exclusions = what === null ? [] : [{ id: 'between', name: '', what, geometry: between, keepAwayFt: 0 }];
    return DRIVEN({ ...book, properties: [{ ...property!, zones, exclusions: exclusions as Exclusion[] }] });
  }
  const machineMs = (book: Book): number => machineOps(problemOf(book))[0]?.serviceMs ?? 0;

  test('is driven to straight over paving, and round a building or water', () => {
    const straight = machineMs(withBetween(null));
    expect(machineMs(withBetween('paving'))).toBe(straight);
    // From 50 or 10 ft up to 100 or down to -40 ft and back: some 50 to 100 ft more, at 352 ft a minute.
    for (const what of ['building', 'bed', 'water'] as const) {
      const seconds = (machineMs(withBetween(what)) - straight) / 1000;
      expect(seconds).toBeGreaterThan(4);
      expect(seconds).toBeLessThan(25);
    }
  });
});

describe('field capacity counts', () => {
  const capacityMs = (problem: Problem): number => {
    // Iowa State University Extension A3-24: acres per hour = mph x ft x efficiency / 8.25.
    const acresPerHour = (4 * 8 * 0.6) / 8.25;
    return ((problem.tasks[0]?.areaUnits ?? 0) / 43_560 / acresPerHour) * 3_600_000;
  };

  test('where nobody said how the head is driven, and where an area is stated', () => {
    const stated = { shape: { kind: 'stated', areaSqFt: 9600 } } as const;
    for (const book of [oneLawn(120, 80), DRIVEN(oneLawn(120, 80, stated as Partial<Property['zones'][number]>))]) {
      const problem = problemOf(book);
      const [op] = machineOps(problem);
      expect(op?.ground).toBeUndefined();
      expect(op?.serviceMs).toBeCloseTo(capacityMs(problem), -2);
      const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 20 }));
      const [task] = plan.days[0]?.stops[0]?.tasks ?? [];
      expect(task?.reckoned).toEqual({ from: 'field-capacity', fieldEfficiency: 0.6 });
      expect(task?.why).toContain('field efficiency 60 %');
    }
  });

  test('for spots, which lie anywhere', () => {
    const book = DRIVEN(oneLawn(120, 80));
    const treatments = book.treatments.map((each) => ({ ...each, coverage: { kind: 'spot', share: 0.2 } as const }));
    expect(machineOps(problemOf({ ...book, treatments }))[0]?.ground).toBeUndefined();
  });

  test('with a warning, where the head cannot be driven as the book says', () => {
    const problem = problemOf(DRIVEN(oneLawn(120, 80), { ...PASSES, overlapFt: 8 }));
    expect(machineOps(problem)[0]?.ground).toBeUndefined();
    expect(problem.issues.filter((each) => each.code === 'passes-not-possible')).toHaveLength(1);
  });
});

describe('while the work is reckoned', () => {
  const book = DRIVEN(sampleBook('mixed-day'));
  const roundId = book.rounds[0]?.id ?? '';

  test('it tells how far it is', () => {
    const told: number[] = [];
    const built = buildProblem(book, roundId, { onProgress: ({ done, total }) => told.push(done / total) });
    expect(built.ok).toBe(true);
    expect(told.length).toBeGreaterThan(5);
    expect(told).toEqual(told.toSorted((left, right) => left - right));
  });

  test('it can be cancelled', () => {
    const answers = [false, false, true];
    const signal = { stopped: () => answers.shift() ?? true };
    expect(buildProblem(book, roundId, { signal })).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });
});
