import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import {
  type RoadMap,
  type RoadNetwork,
  type RoadTable,
  roadNetwork,
  roadPath,
  roadTable,
  type Snap,
} from '../../../core/roads/index.ts';
import { casesOf } from '../../support/cases.ts';
import { naiveRouter, type Piece } from './naive.ts';
import { randomTown } from './random-town.ts';
import { at, mapOf, PLAIN, type Town } from './town.ts';

const WAITS = { signalSec: 8, gateSec: 20, roundSec: 25 };
const WAITING = { ...PLAIN, turns: { ...PLAIN.turns, ...WAITS } };
/** Every leg is rounded to a decimetre and every arc to a tenth of a second: ways of up to some forty arcs. */
const ROUNDED_SEC = 2.5;

function tableOf(
  network: RoadNetwork,
  places: readonly Snap[],
  options: Parameters<typeof roadTable>[2] = {},
): RoadTable {
  const table = roadTable(network, places, options);
  if (!table.ok) throw new Error(table.error.detail);
  return table.value;
}

/** Places all over a network, on arcs in one direction or both. */
function anywhere(network: RoadNetwork, seed: number, count: number, isOneWay: boolean): readonly Snap[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, (_, id): Snap => {
    const arc = random.below(network.arcEdge.length);
    const edge = network.arcEdge[arc]!;
    const length = network.map.edges.lengthDm[edge]!;
    return {
      kind: 'snapped',
      id: `${id}`,
      edge,
      alongDm: random.below(length + 1),
      directions: isOneWay ? (network.arcBackward[arc] === 1 ? 2 : 1) : 3,
      at: [0, 0],
      awayM: 0,
    };
  });
}

/** The middle of a piece of the town as a place, where the piece is an edge of its own; null elsewhere. */
function middleOf(map: RoadMap, town: Town, piece: Piece): Snap | null {
  const isAt = (junction: number, name: string): boolean => {
    const [lon, lat] = at(town.nodes[name]![0], town.nodes[name]![1]);
    return (
      Math.abs(map.junctions.lon[junction]! - lon * 1e7) < 2 && Math.abs(map.junctions.lat[junction]! - lat * 1e7) < 2
    );
  };
  for (let edge = 0; edge < map.edges.from.length; edge += 1) {
    if (map.edges.shapeStart[edge] !== map.edges.shapeStart[edge + 1]) continue;
    const [from, to] = [map.edges.from[edge]!, map.edges.to[edge]!];
    const isForward = isAt(from, piece.from) && isAt(to, piece.to);
    if (!isForward && !(isAt(from, piece.to) && isAt(to, piece.from))) continue;
    const alongDm = Math.round(map.edges.lengthDm[edge]! / 2);
    return { kind: 'snapped', id: '', edge, alongDm, directions: isForward ? 1 : 2, at: [0, 0], awayM: 0 };
  }
  return null;
}

describe('against a second router', () => {
  it.each(Array.from({ length: casesOf(12, 3) }, (_, seed) => seed))('town %i', async (seed) => {
    const town = randomTown(createRandom(seed), 6);
    const map = await mapOf(town);
    const network = roadNetwork(map, WAITING);
    const router = naiveRouter(town, WAITS);
    const known = router.pieces.flatMap((piece, number) => {
      const snap = middleOf(map, town, piece);
      return snap === null ? [] : [{ snap, number }];
    });
    expect(known.length).toBeGreaterThan(20);
    const table = tableOf(
      network,
      known.map(({ snap }) => snap),
    );
    let compared = 0;
    known.forEach((from, row) => {
      const least = router.leastFrom(from.number);
      known.forEach((to, column) => {
        const told = table.durationDs[row * known.length + column]!;
        const naive = least[to.number];
        if (naive) expect(Math.abs(told / 10 - naive[1]), `${from.number} to ${to.number}`).toBeLessThan(ROUNDED_SEC);
        else expect(told, `${from.number} to ${to.number}`).toBe(-1);
        compared += 1;
      });
    });
    expect(compared).toBe(known.length ** 2);
  });
});

describe('hierarchies', () => {
  it.each(Array.from({ length: casesOf(12, 3) }, (_, seed) => seed))(
    'say the same as plain searches, town %i',
    async (seed) => {
      const network = roadNetwork(await mapOf(randomTown(createRandom(100 + seed), 4 + seed)), WAITING);
      const places = anywhere(network, seed, 60, seed % 2 === 0);
      const plain = tableOf(network, places, { method: 'dijkstra' });
      const high = tableOf(network, places, { method: 'hierarchy' });
      expect(high).toEqual(plain);
      expect(plain.durationDs.some((each) => each > 0)).toBe(true);
    },
  );
});

describe('tables', () => {
  it('obey the triangle inequality between positions of arcs', async () => {
    const network = roadNetwork(await mapOf(randomTown(createRandom(7), 8)), {
      ...WAITING,
      privateRoads: 'ends',
      turns: { ...WAITING.turns, nearSec: 3, acrossSec: 6 },
    });
    // Without private ground: with it, fewest entries come before least time.
    const open = { ...network.map.edges, access: network.map.edges.access.map(() => 0) };
    const junctions = { ...network.map.junctions, flags: network.map.junctions.flags.map((each) => each & ~8) };
    const free = roadNetwork(
      { ...network.map, edges: open, junctions },
      { ...WAITING, turns: { ...WAITING.turns, nearSec: 3, acrossSec: 6 } },
    );
    const places = anywhere(free, 3, casesOf(60, 20), true);
    const { durationDs } = tableOf(free, places);
    const time = (from: number, to: number): number => {
      const told = durationDs[from * places.length + to]!;
      return told < 0 ? Number.POSITIVE_INFINITY : told;
    };
    let strict = 0;
    for (let a = 0; a < places.length; a += 1) {
      for (let b = 0; b < places.length; b += 1) {
        for (let c = 0; c < places.length; c += 1) {
          const roundabout = time(a, b) + time(b, c);
          if (time(a, c) > roundabout) throw new Error(`${a} to ${c} takes longer than by way of ${b}`);
          if (time(a, c) < roundabout) strict += 1;
        }
      }
    }
    expect(strict).toBeGreaterThan(1000);
  });

  it('are the same both ways where no road is one-way and turns cost nothing', async () => {
    const network = roadNetwork(await mapOf(randomTown(createRandom(5), 9, true)), PLAIN);
    const places = anywhere(network, 5, 50, false);
    const { durationDs, distanceDm } = tableOf(network, places);
    for (let row = 0; row < 50; row += 1) {
      for (let column = 0; column < row; column += 1) {
        // Of an arc with a place on it the time is split, one part rounded down: a tenth of a second at each end.
        expect(Math.abs(durationDs[row * 50 + column]! - durationDs[column * 50 + row]!)).toBeLessThanOrEqual(2);
        expect(Math.abs(distanceDm[row * 50 + column]! - distanceDm[column * 50 + row]!)).toBeLessThanOrEqual(20);
      }
    }
  });

  it('are the same whether known places are taken from an earlier one or not', async () => {
    const network = roadNetwork(await mapOf(randomTown(createRandom(11), 9)), WAITING);
    const places = anywhere(network, 11, 40, false);
    const fresh = tableOf(network, places);
    for (const method of ['dijkstra', 'hierarchy'] as const) {
      for (const known of [places.slice(0, 33), places.slice(10, 12), [...places].reverse(), []]) {
        let searches = 0;
        const onProgress = ({ step }: { step: string }): void => {
          searches += step === 'drive times' ? 1 : 0;
        };
        expect(tableOf(network, places, { method, known: tableOf(network, known), onProgress })).toEqual(fresh);
        const added = 40 - new Set(known).size;
        // One search per new place from it and one to it, and none where nothing is new.
        if (method === 'dijkstra') expect(searches).toBe(added === 40 ? 40 : added + Math.min(added, 40 - added));
      }
    }
    const other = roadNetwork(network.map, { ...WAITING, mostKmh: 20 });
    expect(tableOf(other, places, { known: fresh })).toEqual(tableOf(other, places));
  });

  it('hold -1 for places that are not joined to a road', async () => {
    const network = roadNetwork(await mapOf(randomTown(createRandom(2), 5)), PLAIN);
    const [one, two] = anywhere(network, 2, 2, false) as [Snap, Snap];
    const table = roadTable(network, [one, { kind: 'too-far', id: 'x', nearestM: 900 }, two]);
    if (!table.ok) throw new Error(table.error.detail);
    const known = [...table.value.durationDs].map((each) => each >= 0);
    expect(known).toEqual([true, false, true, false, false, false, true, false, true]);
  });

  it('are made by a hierarchy where there are many new places, and wherever one is built', async () => {
    const map = await mapOf(randomTown(createRandom(2), 6));
    const steps = (network: RoadNetwork, count: number): readonly string[] => {
      const seen = new Set<string>();
      const onProgress = ({ step, done, total }: { step: string; done: number; total: number }): void => {
        seen.add(step === 'drive times' ? `${step} of ${total}` : step);
        expect(done).toBeLessThanOrEqual(total);
      };
      tableOf(network, anywhere(network, 1, count, false), { onProgress });
      return [...seen];
    };
    const network = roadNetwork(map, PLAIN);
    expect(steps(network, 100)).toEqual(['drive times of 100']);
    expect(steps(network, 101)).toEqual(['shortcuts', 'drive times of 202']);
    expect(steps(network, 3)).toEqual(['drive times of 6']);
    expect(steps(roadNetwork(map, PLAIN), 3)).toEqual(['drive times of 3']);
  });

  it('stop when told to', async () => {
    const network = roadNetwork(await mapOf(randomTown(createRandom(2), 6)), PLAIN);
    for (const method of ['dijkstra', 'hierarchy'] as const) {
      for (const asks of [0, 3]) {
        let asked = 0;
        const signal = { stopped: () => asked++ >= asks };
        const table = roadTable(network, anywhere(network, 2, 20, false), { method, signal });
        expect(table).toMatchObject({ ok: false, error: { code: 'cancelled' } });
      }
    }
  });
});

describe('paths', () => {
  it('tell the seconds of driving apart from those of turns and signals', async () => {
    const lights = { highway: 'traffic_signals' };
    const town: Town = {
      nodes: { A: [0, 0], M: [500, 0, lights], B: [1000, 0, lights], C: [1000, 1000], D: [2000, 0] },
      ways: [['A M B', { highway: 'primary' }], ['B C', { highway: 'tertiary' }], ['B D']],
    };
    const { snapPlaces } = await import('../../../core/roads/index.ts');
    const network = roadNetwork(await mapOf(town), { ...PLAIN, turns: { ...PLAIN.turns, acrossSec: 6, signalSec: 8 } });
    const [from, to] = snapPlaces(network, [
      { id: 'from', at: at(0, 0) },
      { id: 'to', at: at(1000, 500) },
    ]) as [Snap, Snap];
    const path = roadPath(network, from, to);
    expect(path?.durationSec).toBeCloseTo(100 + 8 + 8 + 6 + 50, 0);
    expect(path?.turnSec).toBeCloseTo(22, 0);
    expect(path?.byClass).toEqual([
      { roadClass: 'primary', sec: expect.closeTo(100, 0), metres: expect.closeTo(1000, 0) },
      { roadClass: 'tertiary', sec: expect.closeTo(50, 0), metres: expect.closeTo(500, 0) },
    ]);
    expect(path?.entries).toBe(0);
  });

  it('take what the table says, and their corners lie along the roads', async () => {
    const town = randomTown(createRandom(21), 8);
    const network = roadNetwork(await mapOf(town), WAITING);
    const corners = Object.values(town.nodes).map(([x, y]) => at(x, y));
    const { snapPlaces } = await import('../../../core/roads/index.ts');
    const { distanceMetres } = await import('../../../core/geometry/index.ts');
    const random = createRandom(4);
    const places = snapPlaces(
      network,
      Array.from({ length: 14 }, (_, id) => ({ id: `${id}`, at: at(random.below(700), random.below(700)) })),
    ).filter((each): each is Snap => each.kind === 'snapped');
    expect(places.length).toBeGreaterThan(8);
    const table = tableOf(network, places);
    places.forEach((from, row) => {
      places.forEach((to, column) => {
        const path = roadPath(network, from, to);
        if (path === null) throw new Error('no path');
        const cell = row * places.length + column;
        expect([path.durationSec * 10, path.distanceM * 10]).toEqual([
          expect.closeTo(table.durationDs[cell]!, 6),
          expect.closeTo(table.distanceDm[cell]!, 6),
        ]);
        const length = path.positions.reduce(
          (sum, each, at) => sum + (at === 0 ? 0 : distanceMetres(path.positions[at - 1]!, each)),
          0,
        );
        expect(Math.abs(length - path.distanceM)).toBeLessThan(2);
        const ofClasses = path.byClass.reduce((sum, { metres }) => sum + metres, 0);
        expect(ofClasses).toBeCloseTo(path.distanceM, 0);
        const seconds = path.byClass.reduce((sum, { sec }) => sum + sec, 0);
        expect(Math.abs(seconds + path.turnSec - path.durationSec)).toBeLessThan(0.6);
        expect([path.positions[0], path.positions.at(-1)]).toEqual([from.at, to.at]);
        for (const position of path.positions.slice(1, -1)) {
          expect(corners.some((corner) => distanceMetres(corner, position) < 0.1)).toBe(true);
        }
      });
    });
  });
});
