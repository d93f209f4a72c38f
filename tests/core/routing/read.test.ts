import { describe, expect, test } from 'vitest';
import { ROUTING_FORMATS, type RoutingProblem } from '../../../core/routing/index.ts';

function read(id: string, text: string, options = {}): RoutingProblem {
  const result = ROUTING_FORMATS.find((each) => each.id === id)?.read(text, 'small.txt', options);
  if (result?.ok !== true) throw new Error(result?.error.detail ?? 'no such format');
  return result.value;
}

const HEAD = 'NAME : small\nTYPE : CVRP\nDIMENSION : 3\nCAPACITY : 10\n';
const TAIL = 'DEMAND_SECTION\n1 0\n2 4\n3 7\nDEPOT_SECTION\n1\n-1\nEOF\n';
const POINTS = 'EDGE_WEIGHT_TYPE : EUC_2D\nNODE_COORD_SECTION\n1 0 0\n2 3 4\n3 0 2.6\n';

describe('VRPLIB', () => {
  test('plane distances are rounded to the nearest whole number', () => {
    const problem = read('vrplib', HEAD + POINTS + TAIL);
    // 3-4-5 triangle; 2.6 rounds to 3; from (3, 4) to (0, 2.6) it is sqrt(9 + 1.96) = 3.31, so 3.
    expect([...problem.cost]).toEqual([0, 5, 3, 5, 0, 3, 3, 3, 0]);
    expect([...problem.demand]).toEqual([0, 4, 7]);
    expect(problem).toMatchObject({ name: 'small', customers: 2, capacity: 10, vehicles: 2, windows: null });
  });

  test('asked for exact lengths, it counts ten-thousandths', () => {
    const problem = read('vrplib', HEAD + POINTS + TAIL, { exact: true, vehicles: 1 });
    expect(problem.cost[2]).toBe(26_000);
    expect(problem.costPerUnit).toBe(10_000);
    expect(problem.vehicles).toBe(1);
  });

  test('every form of a written-out matrix gives the same distances', () => {
    const forms: readonly (readonly [string, string])[] = [
      ['FULL_MATRIX', '0 1 2 1 0 3 2 3 0'],
      ['UPPER_ROW', '1 2 3'],
      ['UPPER_DIAG_ROW', '0 1 2\n0 3\n0'],
      ['LOWER_ROW', '1\n2 3'],
      ['LOWER_DIAG_ROW', '0\n1 0\n2 3 0'],
    ];
    for (const [form, numbers] of forms) {
      const matrix = `EDGE_WEIGHT_TYPE : EXPLICIT\nEDGE_WEIGHT_FORMAT : ${form}\nEDGE_WEIGHT_SECTION\n${numbers}\n`;
      expect([...read('vrplib', HEAD + matrix + TAIL).cost], form).toEqual([0, 1, 2, 1, 0, 3, 2, 3, 0]);
    }
  });

  test('a tour has one route and carries nothing', () => {
    const text = `NAME: t\nTYPE: TSP\nDIMENSION: 3\n${POINTS}EOF`;
    expect(read('vrplib', text)).toMatchObject({ vehicles: 1, capacity: 0 });
  });

  test.each([
    ['no nodes', 'NAME : x\nTYPE : CVRP\nDIMENSION : many\n', 'DIMENSION'],
    ['coordinates cut short', `${HEAD}EDGE_WEIGHT_TYPE : EUC_2D\nNODE_COORD_SECTION\n1 0 0\n${TAIL}`, 'coordinates'],
    ['a number that is none', HEAD + POINTS.replace('3 4', '3 four') + TAIL, 'coordinates'],
    ['no demands', HEAD + POINTS, 'DEMAND'],
    ['a depot elsewhere', HEAD + POINTS + TAIL.replace('DEPOT_SECTION\n1', 'DEPOT_SECTION\n2'), 'DEPOT'],
    ['nothing at all', '', 'DIMENSION'],
  ])('refused with its place: %s', (_, text, place) => {
    const result = ROUTING_FORMATS[0]?.read(text, 'small.vrp', {});
    expect(result).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
    if (result?.ok === false) expect(result.error.where).toContain(place);
  });
});

describe('Solomon text', () => {
  const text = `R1

VEHICLE
NUMBER     CAPACITY
  4         50

CUSTOMER
CUST NO.  XCOORD.   YCOORD.    DEMAND   READY TIME  DUE DATE   SERVICE   TIME

    0      0     0     0     0    100     0
    1      1     1     7    10     20     5
    2      3     4     9     0     90     5
`;

  test('distances are cut to one decimal and counted in tenths', () => {
    const problem = read('solomon', text);
    // sqrt(2) = 1.414.. is 1.4; sqrt(4 + 9) = 3.605.. is 3.6.
    expect([...problem.cost]).toEqual([0, 14, 50, 14, 0, 36, 50, 36, 0]);
    expect(problem).toMatchObject({ name: 'R1', vehicles: 4, capacity: 50, costPerUnit: 10 });
    expect([...(problem.windows?.close ?? [])]).toEqual([1000, 200, 900]);
    expect([...problem.service]).toEqual([0, 50, 50]);
  });

  test('rows of the wrong width are refused', () => {
    const result = ROUTING_FORMATS[1]?.read(text.replace('    5\n', '\n'), 'r1.txt', {});
    expect(result).toMatchObject({ ok: false, error: { code: 'format-invalid', where: 'r1.txt' } });
  });
});
