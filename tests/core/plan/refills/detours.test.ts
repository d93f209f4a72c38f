import { expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { Detours } from '../../../../core/plan/refills/detours.ts';
import { createRigModel } from '../../../../core/plan/refills/model.ts';
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
