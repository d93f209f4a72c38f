import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import type { Cell } from '../../../core/passes/cells.ts';
import { orderCells } from '../../../core/passes/order.ts';
import { distanceM, doorsOf, drive, turnedWay, type Visit, WAYS } from '../../../core/passes/visits.ts';

/** A cell of so many swaths 1 m apart, the first one from (x, y) eastwards. */
const cellAt = (x: number, y: number, long: number, swaths: number): Cell =>
  Array.from({ length: swaths }, (_, lane) => ({
    from: { x, y: y + lane },
    to: { x: x + long, y: y + lane },
    strip: lane,
    isTurned: false,
  }));

const randomCells = (seed: number, count: number): readonly Cell[] => {
  const random = createRandom(seed);
  return Array.from({ length: count }, () =>
    cellAt(100 * random.unit(), 100 * random.unit(), 3 + 20 * random.unit(), 1 + random.below(5)),
  );
};

const wayM = (visits: readonly Visit[], cells: readonly Cell[]): number =>
  visits.slice(1).reduce((sum, visit, index) => {
    const before = visits[index]!;
    return (
      sum + distanceM(doorsOf(cells[before.cell]!).exit[before.way]!, doorsOf(cells[visit.cell]!).entry[visit.way]!)
    );
  }, 0);

/** The least way over all orders and all ways through the cells. */
function shortest(cells: readonly Cell[], done: readonly Visit[] = []): number {
  if (done.length === cells.length) return wayM(done, cells);
  const open = [...cells.keys()].filter((cell) => done.every((each) => each.cell !== cell));
  return Math.min(...open.flatMap((cell) => WAYS.map((way) => shortest(cells, [...done, { cell, way }]))));
}

describe('the four ways through a cell', () => {
  it('drive every swath once, there and back', () => {
    const cell = cellAt(0, 0, 10, 3);
    for (const way of WAYS) {
      const driven = drive(cell, way);
      expect(driven.map((each) => Math.min(each.from.x, each.to.x))).toEqual([0, 0, 0]);
      for (const [index, swath] of driven.entries()) {
        if (index > 0) expect(distanceM(driven[index - 1]!.to, swath.from)).toBeCloseTo(1, 12);
      }
    }
    expect(new Set(WAYS.map((way) => JSON.stringify(drive(cell, way)[0]!.from))).size).toBe(4);
  });

  it('turned are driven exactly backwards', () => {
    for (const swaths of [1, 2, 3, 4]) {
      const cell = cellAt(0, 0, 10, swaths);
      for (const way of WAYS) {
        const backwards = drive(cell, way)
          .toReversed()
          .map((swath) => ({ ...swath, from: swath.to, to: swath.from, isTurned: !swath.isTurned }));
        expect(drive(cell, turnedWay(way, swaths))).toEqual(backwards);
      }
    }
  });
});

describe('the order of cells', () => {
  it('has each cell once', () => {
    const { visits, wasCutShort } = orderCells(randomCells(7, 30));
    expect(visits.map((each) => each.cell).sort((left, right) => left - right)).toEqual([...Array(30).keys()]);
    expect(wasCutShort).toBe(false);
  });

  it('is within 20 % of the shortest of four cells, and mostly the shortest', () => {
    let hits = 0;
    for (let seed = 1; seed <= 20; seed += 1) {
      const cells = randomCells(seed, 4);
      const found = wayM(orderCells(cells).visits, cells);
      const least = shortest(cells);
      expect(found).toBeLessThanOrEqual(1.2 * least);
      if (found < least + 1e-6) hits += 1;
    }
    expect(hits).toBeGreaterThan(12);
  });

  it('ends, and says so, where there are too many cells to try every place', () => {
    const { visits, wasCutShort } = orderCells(randomCells(3, 500));
    expect(new Set(visits.map((each) => each.cell)).size).toBe(500);
    expect(wasCutShort).toBe(true);
  });

  it('of none and of one is plain', () => {
    expect(orderCells([]).visits).toEqual([]);
    expect(orderCells([cellAt(0, 0, 5, 2)]).visits).toHaveLength(1);
  });
});
