import { describe, expect, it } from 'vitest';
import { DayModel } from '../../../../core/plan/search/model.ts';
import { nearest } from '../../../../core/plan/search/near.ts';
import { layOutSlots } from '../../../../core/plan/search/slots.ts';
import { layOutJobs } from '../../../../core/plan/search/tables.ts';
import { RouteValues } from '../../../../core/plan/search/values.ts';
import { Search } from '../../../../core/routing/engine/index.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';

const SHAPES: readonly ProblemShape[] = [
  { jobs: 20, stations: 2, zones: 2, modes: 2, largest: 10, hours: 14 },
  { jobs: 24, rigs: 2, days: 3, stations: 2, zones: 1, windows: 0.4, breaks: 1, hours: 6 },
  { jobs: 16, rigs: 2, stations: 1, zones: 2, materials: 4, thirst: 2, noNurse: 0.5, heavy: 0.5 },
];

describe.each(SHAPES)('the model of a problem of $jobs jobs', (shape) => {
  it('costs after every step what its routes cost when they are reckoned from nothing', () => {
    for (const seed of [1, 2]) {
      const table = layOutJobs(randomProblem(seed, shape));
      const slots = layOutSlots(table, new Int32Array(table.jobs).fill(-1));
      const model = new DayModel(table, slots, nearest(table));
      const search = new Search(model, { seed, iterations: 300 });
      const values = new RouteValues(table);
      for (let until = 1; until <= 300; until += 1) {
        search.run(until);
        expect(model.cost, `seed ${seed}, step ${until}`).toBe(anew(search, values, table.width));
      }
    }
  });
});

function anew({ tours }: Search, values: RouteValues, width: number): number {
  let sum = 0;
  for (let route = 0; route < tours.routes; route += 1) {
    const sentinel = tours.sentinel(route);
    const codes: number[] = [];
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
      codes.push((node - 1) * width + (tours.way[node] as number));
    }
    sum += values.reckon(route, codes);
  }
  return sum;
}

describe('the nearest jobs', () => {
  it('are sorted by the way there and back, the job itself first', () => {
    const problem = randomProblem(3, { jobs: 130 });
    const table = layOutJobs(problem);
    const { near, width } = nearest(table);
    expect(width).toBe(101);
    const away = (one: number, other: number): number => {
      const [from, to] = [table.placeOf[one] as number, table.placeOf[other] as number];
      return (problem.travelMs[from * table.places + to] ?? 0) + (problem.travelMs[to * table.places + from] ?? 0);
    };
    for (const job of [0, 7, 129]) {
      const row = Array.from(near.subarray((job + 1) * width, (job + 2) * width), (node) => node - 1);
      expect(row[0]).toBe(job);
      const others = Array.from({ length: 130 }, (_, other) => other).filter((other) => other !== job);
      const sorted = others.map((other) => away(job, other)).sort((left, right) => left - right);
      expect(row.slice(1).map((other) => away(job, other))).toEqual(sorted.slice(0, 100));
      expect(new Set(row).size).toBe(101);
    }
  });
});
