import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { withoutIdle } from '../../../../core/plan/refills/busy.ts';
import type { Chain } from '../../../../core/plan/refills/chain.ts';
import { moveEarlier } from '../../../../core/plan/refills/earlier.ts';
import { keepLedger } from '../../../../core/plan/refills/ledger.ts';
import { neighboursOf } from '../../../../core/plan/refills/neighbours.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { addedMs, leadAfter } from '../../../../core/plan/refills/strands.ts';
import { smallProblem } from '../judge/small-problem.ts';

const [SHOP, HYDRANT, RIG] = [0, 1, -1];
const [TANK, HOPPER] = [0, 1];

/** Rows of the small problem's jobs: seed and spray at Acre, spray at Birch, another mix at Cedar. */
function chainOf(jobs: readonly number[], change: (problem: Problem) => Problem = (problem) => problem): Chain {
  const { chain } = new RefillSearch(change(smallProblem()), 0);
  chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  return chain;
}

const event = (position: number, done = 0, station = RIG, changes = 0): RefillEvent => ({
  position,
  done,
  station,
  changes,
});

describe('the day cut at its events', () => {
  it('tells what is used between them, and the runs of one material', () => {
    // Acre 4,000 of seed and 1,800 of mix one; Birch 2,700 of it over 9,000 ft2; Cedar 600 of mix two.
    const events = [event(1, 0, HYDRANT), event(2, 1000), event(2, 1001), event(3, 0, SHOP, 1 << TANK)];
    const ledger = keepLedger(chainOf([0, 1, 2]), events);
    expect(ledger.events).toEqual([null, ...events]);
    expect(ledger.stretches.map(({ used }) => [...used])).toEqual([
      [0, 4000],
      [1800 + 300, 0],
      [1, 0],
      [2700 - 301, 0],
      [600, 0],
    ]);
    expect(ledger.runs).toEqual([
      { compartment: TANK, material: 0, stock: 0, firstEvent: 0 },
      { compartment: HOPPER, material: 2, stock: 1, firstEvent: 0 },
      { compartment: TANK, material: 1, stock: 0, firstEvent: 4 },
    ]);
    expect([...ledger.runAt]).toEqual([0, 1, 0, 1, 0, 1, 0, 1, 2, 1]);
  });

  it('has no run where a compartment is not used', () => {
    const ledger = keepLedger(chainOf([1]), [event(0, 6666)]);
    expect([...ledger.runAt]).toEqual([0, -1, 0, -1]);
    expect(ledger.stretches.map(({ used }) => [...used])).toEqual([
      [2000, 0],
      [700, 0],
    ]);
  });
});

describe('refills inside ops', () => {
  it('come as early as the tank then lasts to the end', () => {
    // 2,000 of 2,700 parts are left after 2,331 ft2.
    expect(moveEarlier(chainOf([1]), [event(0, 6666)], 0)).toEqual([event(0, 2331)]);
    expect(moveEarlier(chainOf([1]), [event(0, 2331)], 0)).toBeNull();
    // With Acre after it, 4,500 in all, the tank cannot last to the end from any point of Birch.
    expect(moveEarlier(chainOf([1, 0]), [event(0, 6666)], 0)).toBeNull();
  });

  it('come as early as it lasts to the next one that fills it', () => {
    const chain = chainOf([1, 0]);
    // The later one may come after 1 ft2 of Acre's spray, with 1,799 parts to come. 1 part of it and what is left of Birch are 2,000.
    const later = event(2, 4000);
    expect(moveEarlier(chain, [event(0, 8000), later], 0)).toEqual([event(0, 2334), event(2, 1)]);
    expect(moveEarlier(chain, [event(0, 8000), later], 1)).toEqual([event(0, 8000), event(2, 1)]);
    // Stations stay where they are, and what lies after one is left to a later call.
    const rows = [event(0, 8000), event(2, 0, HYDRANT), event(2, 4000)];
    expect(moveEarlier(chain, rows, 0)).toEqual([event(0, 2331), ...rows.slice(1)]);
    expect(moveEarlier(chain, rows, 2)).toEqual([...rows.slice(0, 2), event(2, 1)]);
    expect(moveEarlier(chain, [event(0, 8000, SHOP)], 0)).toBeNull();
  });

  it('of one op stay in order', () => {
    const chain = chainOf([1]);
    expect(moveEarlier(chain, [event(0, 5000), event(0, 6000)], 0)).toEqual([event(0, 1), event(0, 2331)]);
    expect(moveEarlier(chain, [event(0, 0), event(0, 6000)], 0)).toEqual([event(0, 0), event(0, 2331)]);
    expect(moveEarlier(chain, [event(0, 5000), event(0, 6000)], 1)).toBeNull();
    expect(moveEarlier(chain, [event(0, 2331), event(0, 6000)], 1)).toEqual([event(0, 2331), event(0, 2331)]);
    // A station at the beginning ends the stretch.
    expect(moveEarlier(chain, [event(0, 0, SHOP), event(0, 8000)], 0)).toBeNull();
  });

  it('last past a station that has something else', () => {
    // Acre twice, 4,000 parts of seed each time, 6,000 in the hopper; the hydrant in between has none.
    const chain = chainOf([0, 0], (small) => ({
      ...small,
      rigs: small.rigs.map((rig) => ({
        ...rig,
        compartments: rig.compartments.map((each, c) => (c === HOPPER ? { ...each, capacityParts: 6000 } : each)),
      })),
    }));
    const moved = moveEarlier(chain, [event(0, 3000), event(1, 0, HYDRANT)], 0);
    expect(moved).toEqual([event(0, 2000), event(1, 0, HYDRANT)]);
  });

  it('last to a change of material', () => {
    const chain = chainOf([1, 2]);
    expect(moveEarlier(chain, [event(0, 6666), event(1, 0, RIG, 1 << TANK)], 0)?.[0]).toEqual(event(0, 2331));
    // A station without the material does not count: the hydrant has water, so that it does.
    expect(moveEarlier(chain, [event(0, 6666), event(1, 0, HYDRANT, 1 << TANK)], 0)?.[0]).toEqual(event(0, 2331));
  });
});

describe('events at which nothing is done', () => {
  const nothing = { fills: [], stock: [] };
  const fill = { fills: [{ compartment: 0, material: 0, parts: 1 }], stock: [] };
  const stock = { fills: [], stock: [{ stock: 0, parts: 1 }] };

  it('are left out; a rinse, a fill or stock taken on is something', () => {
    const events = [event(0, 1), event(1), event(2, 0, RIG, 1), event(3), event(4)];
    const found = withoutIdle({ events, moves: [nothing, nothing, fill, nothing, stock, nothing] });
    expect(found.events).toEqual([events[1], events[2], events[3]]);
    expect(found.moves).toEqual([nothing, fill, nothing, stock]);
  });

  it('are none in a day without them, which stays as it is', () => {
    const work = { events: [event(0, 1)], moves: [nothing, fill], pours: new Map([[1, 2]]) };
    expect(withoutIdle(work)).toBe(work);
  });
});

/** A row in words: "after 0 of 2 at the hydrant"; `+` inside an op. */
function wordsOf(events: readonly RefillEvent[]): string {
  const places = ['rig', 'shop', 'hydrant'];
  const told = events.map(
    ({ position, done, station, changes }) =>
      `${position}${done > 0 ? '+' : ''} ${places[station + 1]}${changes === 0 ? '' : `, rinsed ${changes}`}`,
  );
  return told.length === 0 ? 'nothing' : told.join('; ');
}

describe('rows of refills beside another one', () => {
  it('are these for a short day', async () => {
    // Acre's spray with mix two: the tank changes before or in the seed's op, for Acre's spray uses it first.
    const otherMix = (small: Problem): Problem => ({
      ...small,
      jobs: small.jobs.map((job, j) => {
        const [mode] = job.modes[0] ?? [];
        if (j !== 0 || mode === undefined) return job;
        return {
          ...job,
          modes: [[{ ...mode, ops: mode.ops.map((op, o) => (o === 1 ? { ...op, material: 1 } : op)) }], []],
        };
      }),
    });
    const oneFoot = (small: Problem): Problem => ({
      ...small,
      jobs: small.jobs.map((job, j) => {
        const [mode] = job.modes[0] ?? [];
        const area = j === 1 ? 1 : 2;
        if (mode === undefined) return job;
        return { ...job, modes: [[{ ...mode, ops: mode.ops.map((op) => ({ ...op, areaUnits: area })) }], []] };
      }),
    });
    const rows = [
      { jobs: [1], events: [event(0, 6666)] },
      { jobs: [1, 2], events: [event(0, 0, HYDRANT), event(1, 0, RIG, 1 << TANK)] },
      { jobs: [0, 1], events: [event(2, 0, HYDRANT), event(2, 0, SHOP), event(2, 5000)] },
      { jobs: [1, 2], events: [event(1, 0, HYDRANT), event(1, 0, RIG, 1 << TANK)] },
      { jobs: [1, 0], events: [event(1, 0, RIG), event(1, 500, HYDRANT, 1 << TANK)], change: otherMix },
      { jobs: [1, 2], events: [event(0), event(1, 0, RIG, 1 << TANK)], change: oneFoot },
    ];
    const lines = rows.flatMap(({ jobs, events, change }) => {
      const beside = neighboursOf(chainOf(jobs, change), events).map(wordsOf);
      return [`# beside ${wordsOf(events)}`, ...beside.sort(), ''];
    });
    await expect(lines.join('\n')).toMatchFileSnapshot('neighbours.txt');
  });

  it('change the material where they did; else where there is water, or at the last event that can', () => {
    // Birch, then Acre with the other mix: the tank changes before or in the seed's op, or before the spray.
    const changed = (station: number, msPerPart: readonly number[]): readonly string[] => {
      const chain = chainOf([1, 0], (small) => ({
        ...small,
        stations: small.stations.map((each, k) => (k === station ? { ...each, msPerPart } : each)),
        jobs: small.jobs.map((job, j) => {
          const [mode] = job.modes[0] ?? [];
          if (j !== 0 || mode === undefined) return job;
          const ops = mode.ops.map((op, o) => (o === 1 ? { ...op, material: 1 } : op));
          return { ...job, modes: [[{ ...mode, ops }], []] };
        }),
      }));
      const row = [event(1, 0, station), event(1, 500), event(2, 0, RIG, 1 << TANK)];
      const beside = neighboursOf(chain, row);
      // Left out: the change itself, or the refill inside the seed.
      const short = beside.filter(
        (each) => each.length === 2 && each[0]?.station === station && each[0]?.position === 1,
      );
      return short.filter((each) => each[1]?.station === RIG && each[1].position + each[1].done > 1).map(wordsOf);
    };
    const name = (station: number): string => ['rig', 'shop', 'hydrant'][station + 1] ?? '';
    for (const station of [SHOP, HYDRANT]) {
      const here = name(station);
      expect(changed(station, [6, 3])).toEqual(
        expect.arrayContaining([`1 ${here}, rinsed 1; 1+ rig`, `1 ${here}; 2 rig, rinsed 1`]),
      );
      expect(changed(station, [-1, 3])).toEqual(
        expect.arrayContaining([`1 ${here}; 1+ rig, rinsed 1`, `1 ${here}; 2 rig, rinsed 1`]),
      );
      expect(changed(station, [-1, 3])).not.toContain(`1 ${here}, rinsed 1; 1+ rig`);
    }
  });

  it('of a long day are near what they change', () => {
    const jobs = Array.from({ length: 26 }, () => 1);
    const chain = chainOf(jobs);
    const rows = neighboursOf(chain, [event(10, 7)]);
    // Elsewhere: three places before and after, seven in all, with three supplies each, less the one that is there; left out; one from
    // the rig more at each of 52 places, and one more on the other side of the one inside its own op.
    const alone = rows.filter((each) => each.length < 2).map(wordsOf);
    const elsewhere = (places: readonly string[], but: string): string[] =>
      places
        .flatMap((place) => ['rig', 'shop', 'hydrant'].map((each) => `${place} ${each}`))
        .filter((each) => each !== but);
    expect(alone.sort()).toEqual(
      ['nothing', ...elsewhere(['9', '9+', '10', '10+', '11', '11+', '12'], '10+ rig')].sort(),
    );
    const begun = neighboursOf(chain, [event(10)]).filter((each) => each.length < 2);
    expect(begun.map(wordsOf).sort()).toEqual(
      ['nothing', ...elsewhere(['8+', '9', '9+', '10', '10+', '11', '11+'], '10 rig')].sort(),
    );
    expect(rows.filter((each) => each.length === 2).every((each) => each.some(({ position }) => position === 10))).toBe(
      true,
    );
    expect(rows.filter((each) => each.length === 2).length).toBe(52);
    // Of 24 ops all places are tried.
    const all = neighboursOf(chainOf(jobs.slice(0, 24)), [event(10, 7)]).filter((each) => each.length < 2);
    expect(all.length).toBe(48 * 3);
  });
});

describe('work of two persons side by side', () => {
  it.each([
    // lead, second, ms: added, lead then
    [0, false, 5, 5, 5],
    [5, true, 3, 0, 2],
    [5, true, 8, 3, -3],
    [-4, false, 3, 0, -1],
    [-4, false, 6, 2, 2],
    [-4, true, 6, 6, -10],
    [4, false, 6, 6, 10],
  ])('a lead of %i, second %s, %i ms more', (lead, second, ms, added, then) => {
    expect([addedMs(lead, second, ms), leadAfter(lead, second, ms)]).toEqual([added, then]);
  });
});
