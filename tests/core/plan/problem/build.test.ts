import { describe, expect, test } from 'vitest';
import type { Book, HandMethod, Machine, Property, Rig } from '../../../../core/book/index.ts';
import { buildProblem, type Problem } from '../../../../core/plan/problem/index.ts';
import { problemOf, SAMPLE_NAMES, sampleBook } from '../../../support/samples.ts';

const residential = sampleBook('residential-day');
const mixed = sampleBook('mixed-day');

function withRig(book: Book, change: Partial<Rig>): Book {
  return { ...book, rigs: book.rigs.map((rig) => ({ ...rig, ...change })) };
}

function withMachine(book: Book, change: Partial<Machine>): Book {
  return { ...book, machines: book.machines.map((machine) => ({ ...machine, ...change })) };
}

function jobOf(problem: Problem, propertyId: string) {
  const job = problem.jobs.find((each) => each.propertyId === propertyId);
  if (job === undefined) throw new Error(`no job at ${propertyId}`);
  return job;
}

describe('a frozen problem', () => {
  test.each(SAMPLE_NAMES)('of %s holds whole numbers only', (name) => {
    const problem = problemOf(sampleBook(name));
    const numbers = JSON.stringify(problem, (_key, value: unknown) =>
      ArrayBuffer.isView(value) ? Array.from(value as Int32Array) : value,
    ).match(/-?\d+\.\d+(?=[,\]}])/g);
    expect(numbers).toBeNull();
  });

  test('is the same for the same book, and another one for another book', () => {
    expect(problemOf(residential).hash).toBe(problemOf(sampleBook('residential-day')).hash);
    expect(problemOf(withRig(residential, { nurseTankGal: 66 })).hash).not.toBe(problemOf(residential).hash);
  });

  test('takes the usable tank, less what the pump leaves, rounded down', () => {
    const tank = problemOf(residential).rigs[0]?.compartments.find((each) => each.id === 'stand-on-35/tank');
    // 18.5 gal less 0.5 gal.
    expect(tank?.capacityParts).toBe(1800);
    // 20 gal per minute is 3 s a gallon.
    expect(tank?.fillMsPerPart).toBe(30);
  });

  test('joins the tanks that one head draws on', () => {
    const rig = problemOf(mixed).rigs.find((each) => each.rigId === 'rig-south');
    expect(rig?.compartments.map((each) => [each.id, each.capacityParts])).toEqual([
      ['ride-on-49/left+right', 5200],
      ['ride-on-49/hopper', 22_000],
      ['ride-on-49/bags', 10_000],
    ]);
  });

  test('keeps bags on a machine beside its hopper, with a time of their own', () => {
    const rigOf = (change: Partial<Machine>) =>
      problemOf(withMachine(mixed, change)).rigs.find((each) => each.rigId === 'rig-south');
    const bagsOf = (change: Partial<Machine>) => rigOf(change)?.compartments.find((each) => each.pours !== undefined);
    // Two places for bags of 50 lb. A minute a bag, as at the rig, is 12 ms for each hundredth of a pound.
    expect(bagsOf({})).toEqual({
      id: 'ride-on-49/bags',
      kind: 'dry',
      capacityParts: 10_000,
      fillMsPerPart: 0,
      pours: { into: 1, msPerPart: 12 },
    });
    // 100 seconds a bag: 20 ms.
    expect(bagsOf({ minutesPerBag: 100 / 60 })?.pours?.msPerPart).toBe(20);
    // A bag that is poured in half a minute on the machine takes no longer beside the rig.
    expect(bagsOf({ minutesPerBag: 0.5 })?.pours?.msPerPart).toBe(6);
    expect(rigOf({ minutesPerBag: 0.5 })?.compartments[1]?.fillMsPerPart).toBe(6);
    // Without places for bags there are none, and those of the rig stay its own.
    expect(bagsOf({ bagPlaces: 0 })).toBeUndefined();
    expect(rigOf({ bagPlaces: 0 })?.bagPlaces).toBe(rigOf({})?.bagPlaces);
  });

  test('hoses and spreads by hand out of a machine that is off the rig, at the rate of the method', () => {
    const source = { kind: 'machine', machineId: 'ride-on-49', compartmentId: 'left' } as const;
    const hose: HandMethod = {
      id: 'lance',
      name: 'Lance',
      what: 'hose',
      drawsFrom: source,
      minutesPer1000SqFt: 3,
      setUpMin: 2,
      leastVolumeGal: 0,
      besideMachine: false,
      deliveredGalPer1000SqFt: 0.51,
    };
    const spreader: HandMethod = {
      ...hose,
      id: 'crank',
      what: 'hand-spreader',
      drawsFrom: { ...source, compartmentId: 'hopper' },
    };
    // Nothing but the two hand methods gets through, as the machine may not work on a slope.
    const book: Book = {
      ...withMachine(mixed, { maxSlopeDeg: 0 }),
      properties: mixed.properties.map((each) => ({
        ...each,
        zones: each.zones.map((zone) => ({ ...zone, slopeDeg: 10 })),
      })),
      handMethods: [hose, spreader],
      rigs: mixed.rigs.map((each) => ({ ...each, handMethodIds: ['lance', 'crank'] })),
    };
    const problem = problemOf(book);
    const rig = problem.rigs.findIndex((each) => each.rigId === 'rig-south');
    const carried = book.rigs.find((each) => each.id === 'rig-south')?.machines[0];
    const modes = problem.jobs.flatMap((job) => job.modes[rig] ?? []);
    const ops = modes.flatMap((mode) => mode.ops).filter((op) => op.draws.length > 0);
    expect(ops.length).toBeGreaterThan(0);
    for (const op of ops) {
      const wet = problem.stocks[problem.materials[op.material]?.stock ?? -1]?.kind === 'water';
      expect(op.method).toEqual({ kind: 'hand', handMethodId: wet ? 'lance' : 'crank' });
      // The joined tanks, and the hopper, of the machine; no head is on.
      expect(op.draws.map((draw) => draw.compartment)).toEqual([wet ? 0 : 1]);
      expect([op.machine, op.head]).toEqual([-1, -1]);
      // Half a gallon is the mix's carrier; 0.51 gal are delivered. A task's whole square feet are at most one too many.
      const gallons = (0.51 * op.areaUnits) / 1000;
      if (wet) expect(Math.abs((op.draws[0]?.parts ?? 0) / 100 - gallons)).toBeLessThan(0.011);
      expect(op.reloadMs).toBe(Math.ceil(((carried?.unloadMin ?? 0) + (carried?.loadMin ?? 0)) * 60_000));
    }
    // Unloading and loading the machine, the stop, and the set-up of the methods in use.
    for (const mode of modes) {
      expect(mode.beforeMs).toBeGreaterThanOrEqual(((carried?.unloadMin ?? 0) + 1) * 60_000);
    }
  });

  test('lets bags on a machine without a hopper ride along with those of the rig', () => {
    const tanksOnly = withMachine(mixed, {
      bagPlaces: 2,
      compartments: [{ kind: 'tank', id: 'left', name: 'left', capacityGal: 20, sumpGal: 0, agitated: true }],
    });
    const plain = problemOf(withMachine(tanksOnly, { bagPlaces: 0 })).rigs;
    const rigs = problemOf(tanksOnly).rigs;
    rigs.forEach((rig, index) => {
      const machines = mixed.rigs.find((each) => each.id === rig.rigId)?.machines.length ?? 0;
      expect(rig.bagPlaces).toBe((plain[index]?.bagPlaces ?? 0) + 2 * machines);
      expect(rig.compartments.every((each) => each.pours === undefined)).toBe(true);
    });
  });

  test('takes machines and sumps off the payload', () => {
    // 3,000 lb less the 690-lb machine, less half a gallon in the tank and one gallon in the reel, at 8.34 lb.
    const expected = (3000 - 690) * 10_000 - 150 * 834;
    expect(problemOf(residential).rigs[0]?.cargoLimit).toBe(expected);
  });

  test('works minutes out from field capacity where nobody said how a head is driven', () => {
    const heads = (residential.machines[0]?.heads ?? []).map(({ passes: _, ...head }) => head);
    const problem = problemOf(withMachine(residential, { heads }));
    const front = jobOf(problem, 'teasel-lane-2').modes[0]?.[0]?.ops.find(
      (op) => problem.tasks[op.task]?.zoneId === 'front',
    );
    // 185.4 m2 at 8 ft x 4 mph x 0.6 / 8.25 acres an hour (Iowa State University Extension A3-24).
    const hours = 185.4 / 0.3048 ** 2 / 43_560 / ((8 * 4 * 0.6) / 8.25);
    expect(front?.serviceMs).toBeGreaterThanOrEqual(hours * 3_600_000 * 0.9997);
    expect(front?.serviceMs).toBeLessThanOrEqual(hours * 3_600_000 * 1.0003);
  });

  test('puts dry work before wet work inside a stop', () => {
    const problem = problemOf(mixed);
    for (const mode of problem.jobs.flatMap((job) => job.modes.flat())) {
      const kinds = mode.ops.map((op) => problem.stocks[problem.materials[op.material]?.stock ?? 0]?.kind);
      expect(kinds).toEqual([...kinds].sort());
    }
  });

  test('keeps the hours of a customer', () => {
    const job = jobOf(problemOf(residential), 'orchard-rise-5');
    expect([job.openMs, job.closeMs]).toEqual([13 * 3_600_000, 16 * 3_600_000]);
  });

  test('leaves a rig with a trailer out where none may go', () => {
    const problem = problemOf(mixed);
    const south = problem.rigs.findIndex((rig) => rig.rigId === 'rig-south');
    expect(jobOf(problem, 'heron-way-3').modes[south]).toEqual([]);
    expect(jobOf(problem, 'heron-way-6').modes[south]?.length).toBeGreaterThan(0);
  });

  test('plans only the dates it is asked for', () => {
    const built = buildProblem(sampleBook('four-day-round'), 'spring', { dates: ['2027-03-17'] });
    expect(built.ok && built.value.dates).toEqual(['2027-03-17']);
  });
});

describe('work that nobody can do', () => {
  test('a gate narrower than every machine and a hose too short: listed with both reasons, never dropped', () => {
    const short = { ...residential, handMethods: residential.handMethods.map((each) => ({ ...each, reachFt: 75 })) };
    const problem = problemOf(short);
    const lost = problem.unplaceable.map((each) => {
      const task = problem.tasks[each.task];
      return [`${task?.propertyId} ${task?.zoneId}`, each.reasons[0]?.words ?? ''] as const;
    });
    expect(lost.map(([place]) => place).sort()).toEqual(['teasel-lane-6 back', 'wagtail-court-4 back']);
    const words = lost.find(([place]) => place === 'teasel-lane-6 back')?.[1] ?? '';
    expect(words).toMatch(/30 in.*35 in/);
    expect(words).toMatch(/75 ft/);
  });

  test('every rig has its say', () => {
    const problem = problemOf(withRig(withMachine(mixed, { maxSlopeDeg: 0.5 }), { handMethodIds: [] }));
    for (const { reasons } of problem.unplaceable)
      expect(reasons.map((each) => each.rigId)).toEqual(['rig-north', 'rig-south']);
    expect(problem.unplaceable.length).toBeGreaterThan(0);
  });

  test('a hose calibrated to five times the carrier of the mix is refused where that breaks the label', () => {
    const wild = {
      ...residential,
      handMethods: residential.handMethods.map((each) => ({ ...each, deliveredGalPer1000SqFt: 2.5 })),
    };
    const reasons = problemOf(wild).unplaceable.flatMap((each) => each.reasons);
    expect(reasons.length).toBe(2);
    for (const reason of reasons)
      expect(reason.words).toMatch(/delivers 2\.5.*forecrop becomes 2\.25 per 1,000 ft² against 0\.6/);
  });
});

describe('a round that makes no sense is refused with a code and a remedy', () => {
  const property = (change: Partial<Property>): Book => ({
    ...residential,
    properties: residential.properties.map((each) => ({ ...each, ...change })),
  });
  const round = residential.rounds[0]!;
  test.each([
    ['an unknown round', residential, 'autumn', 'reference-missing'],
    ['no turf at all', property({ zones: [] }), 'spring', 'nothing-to-do'],
    ['everybody skipped', { ...residential, rounds: [{ ...round, propertyIds: [] }] }, 'spring', 'nothing-to-do'],
    ['a rig that is not there', { ...residential, rigs: [] }, 'spring', 'reference-missing'],
    ['a home that is not there', withRig(residential, { homeId: 'moon' }), 'spring', 'reference-missing'],
    [
      'a rate above the label',
      {
        ...residential,
        mixes: residential.mixes.map((mix) => ({ ...mix, parts: [{ productId: 'forecrop', amountPer1000SqFt: 0.9 }] })),
      },
      'spring',
      'label-limit-broken',
    ],
    [
      'one machine on two rigs',
      {
        ...residential,
        rigs: [...residential.rigs, { ...residential.rigs[0]!, id: 'rig-two' }],
        rounds: [{ ...round, rigIds: ['rig-north', 'rig-two'] }],
      },
      'spring',
      'book-invalid',
    ],
  ] as const)('%s', (_name, book, roundId, code) => {
    const built = buildProblem(book, roundId);
    expect(built.ok).toBe(false);
    if (built.ok) return;
    expect(built.error.code).toBe(code);
    expect(built.error.hint).not.toBe('');
  });

  test.each([
    ['a day that no calendar has', { dates: ['2027-03-16', '2027-02-30'] }, 'dates[1]', '2027-02-30'],
    ['29 February of a common year', { dates: ['2027-02-29'] }, 'dates[0]', '2027-02-29'],
    ['a due day that no calendar has', { dueDate: '2027-04-31' }, 'dueDate', '2027-04-31'],
  ] as const)('%s', (_name, change, member, date) => {
    const book = { ...residential, rounds: [{ ...round, ...change }] };
    const refused = {
      code: 'quantity-out-of-range',
      where: `round ${round.name}, ${member}`,
      detail: `There is no ${date} in the calendar.`,
      hint: 'Give the round another day in its place.',
    };
    expect(buildProblem(book, 'spring')).toEqual({ ok: false, error: refused });
    // Also where only other days are asked for.
    expect(buildProblem(book, 'spring', { dates: ['2027-03-16'] })).toEqual({ ok: false, error: refused });
  });

  test('29 February of a leap year is planned', () => {
    const leap = buildProblem({ ...residential, rounds: [{ ...round, dates: ['2028-02-29'] }] }, 'spring');
    expect(leap.ok && leap.value.dates).toEqual(['2028-02-29']);
  });
});
