import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { Detours } from '../../../../core/plan/refills/detours.ts';
import { createRigModel } from '../../../../core/plan/refills/model.ts';
import { smallProblem } from '../judge/small-problem.ts';
import { randomProblem } from '../random-problem.ts';

/** What a stop at station k adds between two places: time and metres. */
function addedBy(problem: Problem, k: number, from: number, to: number): readonly [number, number] {
  const count = problem.placeIds.length;
  const place = problem.stations[k]?.place ?? 0;
  const more = (table: Int32Array): number =>
    (table[from * count + place] as number) +
    (table[place * count + to] as number) -
    (table[from * count + to] as number);
  return [more(problem.travelMs) + (problem.stations[k]?.visitMs ?? 0), more(problem.travelM)];
}

/** Whether station `other` gives all that k gives, no dearer and no fewer hours. */
function covers(problem: Problem, other: number, k: number): boolean {
  const [one, two] = [problem.stations[k], problem.stations[other]];
  if (one === undefined || two === undefined) return false;
  const gives = one.msPerPart.every((price, s) => {
    const there = two.msPerPart[s] as number;
    return price < 0 || (there >= 0 && there <= price);
  });
  return gives && two.openMs <= one.openMs && two.closeMs >= one.closeMs;
}

/** Stations that another one is as good as on every count are left out; of equal ones the first stays. */
function worthALook(problem: Problem, from: number, to: number): number[] {
  const all = problem.stations.map((_, k) => k);
  return all.filter((k) => {
    const own = addedBy(problem, k, from, to);
    return !all.some((other) => {
      if (other === k || !covers(problem, other, k)) return false;
      const there = addedBy(problem, other, from, to);
      if (there[0] > own[0] || there[1] > own[1]) return false;
      const better = there[0] < own[0] || there[1] < own[1] || !covers(problem, k, other);
      return better || other < k;
    });
  });
}

it('stations on the way are those that no other one is as good as', () => {
  let left = 0;
  for (let seed = 1; seed <= 6; seed += 1) {
    const plain = randomProblem(seed, { jobs: 3, stations: 3, windows: 0.5, evenFlow: seed % 2 === 0 });
    // The last one twice more: the same place, flow and hours; and with quicker flow.
    const twins = plain.stations.slice(-1).flatMap((each) => {
      const quick = each.msPerPart.map((ms) => (ms > 0 ? ms - 1 : ms));
      return [{ ...each }, { ...each, msPerPart: quick }];
    });
    const problem = { ...plain, stations: [...plain.stations, ...twins] };
    const detours = new Detours(createRigModel(problem, 0));
    const places = problem.placeIds.length;
    for (let from = 0; from < places; from += 1)
      for (let to = 0; to < places; to += 1) {
        const found = [...detours.between(from, to)];
        expect(found, `seed ${seed}, ${from} to ${to}`).toEqual(worthALook(problem, from, to));
        expect([...detours.between(from, to)]).toEqual(found);
        left += problem.stations.length - found.length;
        for (const k of found) {
          expect([detours.addedMs(k, from, to), detours.addedM(k, from, to)]).toEqual(addedBy(problem, k, from, to));
          expect(detours.placeOf(k)).toBe(problem.stations[k]?.place);
        }
      }
  }
  expect(left).toBeGreaterThan(150);
});

/** Two places of supply, and the way between two lawns by each of them: a half before it and a half after it. */
describe('of two stations on the way between two lawns', () => {
  const [FIRST, SECOND] = [0, 1];
  const [FROM, TO] = [2, 3];
  const OWN_MS = 600_000;
  const OWN_M = 5000;
  type Supply = { readonly ms: number; readonly metres: number; readonly prices: readonly number[] };

  function between(supplies: readonly Supply[], visitMs: readonly number[] = [300_000, 300_000]): readonly number[] {
    const small = smallProblem();
    const count = small.placeIds.length;
    const [travelMs, travelM] = [small.travelMs.slice(), small.travelM.slice()];
    supplies.forEach(({ ms, metres }, k) => {
      for (const [at, share] of [
        [FROM * count + k, 1],
        [k * count + TO, 3],
      ] as const) {
        travelMs[at] = (ms * share) / 4;
        travelM[at] = (metres * share) / 4;
      }
    });
    const problem: Problem = {
      ...small,
      travelMs,
      travelM,
      stations: small.stations.map((each, k) => ({
        ...each,
        place: k,
        openMs: 0,
        closeMs: 86_400_000,
        visitMs: visitMs[k] ?? 0,
        msPerPart: supplies[k]?.prices ?? [],
      })),
    };
    const detours = new Detours(createRigModel(problem, 0));
    supplies.forEach(({ ms, metres }, k) => {
      expect(detours.addedMs(k, FROM, TO)).toBe(ms - OWN_MS + (visitMs[k] ?? 0));
      expect(detours.addedM(k, FROM, TO)).toBe(metres - OWN_M);
    });
    return [...detours.between(FROM, TO)];
  }

  const supply = (ms: number, metres: number, prices: readonly number[] = [6, 3]): Supply => ({ ms, metres, prices });

  it.each([
    ['the first stays where both are equal', 8000, 8000, [FIRST]],
    ['the quicker one stays', 8004, 8000, [SECOND]],
    ['the quicker one stays, the first', 7996, 8000, [FIRST]],
    ['the shorter one stays', 8000, 8004, [SECOND]],
    ['the shorter one stays, the first', 8000, 7996, [FIRST]],
    ['both stay where one is quicker and the other one shorter', 8004, 7996, [FIRST, SECOND]],
    ['both stay the other way about', 7996, 8004, [FIRST, SECOND]],
    ['the one that is quicker and shorter stays', 8004, 8004, [SECOND]],
  ] as const)('%s', (_, ms, metres, left) => {
    expect(between([supply(ms, metres), supply(8000, 8000)])).toEqual(left);
  });

  it('the time of a visit counts', () => {
    expect(between([supply(8000, 8000), supply(8000, 8000)], [300_001, 300_000])).toEqual([SECOND]);
  });

  it('the one that gives more, or the same for less time, stays', () => {
    const prices = (first: readonly number[], second: readonly number[], ms = 8000) =>
      between([supply(ms, 8000, first), supply(8000, 8000, second)]);
    expect(prices([6, 3], [6, 2])).toEqual([SECOND]);
    expect(prices([6, 2], [6, 3])).toEqual([FIRST]);
    expect(prices([6, -1], [6, 3])).toEqual([SECOND]);
    expect(prices([6, 3], [6, 0])).toEqual([SECOND]);
    // What costs no time is given all the same.
    expect(prices([6, 0], [6, -1], 8004)).toEqual([FIRST, SECOND]);
    expect(prices([6, 3], [5, 4])).toEqual([FIRST, SECOND]);
    // The slower one is left out only where the quicker one gives as much.
    expect(prices([6, 2], [6, 3], 8004)).toEqual([FIRST, SECOND]);
  });
});
