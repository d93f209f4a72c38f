import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import type { Book, BookRoads, Visit } from '../../../../core/book/index.ts';
import { bookSchema } from '../../../../core/book/index.ts';
import type { RoadMap } from '../../../../core/roads/index.ts';
import {
  driveFactors,
  drivenRoads,
  drivePositions,
  driveTable,
  learnFromDrives,
  roadSettingsOf,
  waysAlong,
} from '../../../../core/travel/by-road/index.ts';
import { sampleBook } from '../../reach/sample.ts';
import { at, mapOf, type Town } from '../../roads/town.ts';

/**
 * A square of 1,000 m: the south side is a primary road, the others are residential, and so is a dead end
 * at the corner C, where a truck can turn round; far off there is an island.
 */
const TOWN: Town = {
  nodes: {
    A: [0, 0],
    B: [1000, 0],
    C: [1000, 1000],
    D: [0, 1000],
    E: [1100, 1000],
    I: [3000, 0],
    J: [3200, 0],
  },
  ways: [['A B', { highway: 'primary' }], ['B C'], ['C D'], ['D A'], ['C E'], ['I J']],
};

const NO_TURNS = { nearSec: 0, acrossSec: 0, roundSec: 0, signalSec: 0 };
const base = sampleBook();
const [lawn] = base.properties;
const [shop] = base.fillPoints;
if (lawn === undefined || shop === undefined) throw new Error('the sample lacks a lawn or a fill point');

function bookWith(
  roads: Partial<BookRoads>,
  places: readonly (readonly [number, number])[],
  visits: readonly Visit[] = [],
): Book {
  const whole = v.parse(bookSchema.entries.roads, { turns: NO_TURNS, ...roads });
  return {
    ...base,
    fillPoints: [{ ...shop, at: at(0, 0) } as Book['fillPoints'][number]],
    rigs: base.rigs.map((rig) => ({ ...rig, homeId: shop?.id ?? '', shiftStartMin: 480, shiftMin: 480 })),
    properties: places.map(
      ([x, y], index) => ({ ...lawn, id: `p${index}`, parking: at(x, y) }) as Book['properties'][number],
    ),
    visits,
    roads: whole as BookRoads,
  };
}

function tableOf(map: RoadMap, book: Book, known?: Parameters<typeof driveTable>[2]) {
  const found = driveTable(drivenRoads(map, book), drivePositions(book), known);
  if (!found.ok) throw new Error(found.error.detail);
  return found.value;
}

/** Seconds for metres at so many miles an hour. */
const seconds = (metres: number, mph: number): number => metres / ((mph * 1609.344) / 3600);

describe('drive times of a book by road', () => {
  it('go by the speeds of the book, and by those of the program where it tells none', async () => {
    const map = await mapOf(TOWN);
    const book = bookWith(
      {
        speeds: [
          { roadClass: 'primary', mph: 30 },
          { roadClass: 'nonsense', mph: 5 },
        ],
      },
      [
        [1000, 0],
        [0, 500],
      ],
    );
    const table = tableOf(map, book);
    expect(table.at).toEqual([at(0, 0), at(1000, 0), at(0, 500)]);
    expect(Math.abs((table.durationSec[1] ?? 0) - seconds(1000, 30))).toBeLessThan(1.2);
    // The program's own table has 28 km/h on residential roads.
    expect(Math.abs((table.durationSec[2] ?? 0) - 500 / (28 / 3.6))).toBeLessThan(1.2);
    expect(Math.abs((table.distanceM[2] ?? 0) - 500)).toBeLessThan(1.2);
  });

  it('places off the road have no times and are told with the reason', async () => {
    const map = await mapOf(TOWN);
    const table = tableOf(
      map,
      bookWith({}, [
        [500, 450],
        [3100, 0],
        [90_000, 0],
      ]),
    );
    // 450 and 2,100 m on the plane of the test; the roads are measured on the ellipsoid, with a squeezed degree.
    expect(table.offRoad).toEqual([
      { row: 1, kind: 'too-far', nearestM: 451 },
      { row: 2, kind: 'island', nearestM: 2095 },
      { row: 3, kind: 'outside', nearestM: null },
    ]);
    expect([...table.durationSec.slice(1, 4)]).toEqual([-1, -1, -1]);
    const farther = tableOf(map, bookWith({ mostFt: 2000 }, [[500, 450]]));
    expect(farther.offRoad).toEqual([]);
  });

  it('only new places are searched for, and the answers are those of a fresh table', async () => {
    const map = await mapOf(TOWN);
    const before = tableOf(
      map,
      bookWith({}, [
        [1000, 0],
        [0, 500],
      ]),
    );
    const book = bookWith({}, [
      [0, 500],
      [1000, 700],
      [1000, 0],
    ]);
    const steps: number[] = [];
    const after = tableOf(map, book, { known: before, onProgress: ({ total }) => steps.push(total) });
    const fresh = tableOf(map, book);
    expect([...after.durationSec]).toEqual([...fresh.durationSec]);
    expect([...after.distanceM]).toEqual([...fresh.distanceM]);
    // One new place: its row, and its column from the others.
    expect(Math.max(...steps)).toBeLessThanOrEqual(2);
    const nothingNew = tableOf(map, book, { known: after, onProgress: () => steps.push(99) });
    expect(steps).not.toContain(99);
    expect(nothingNew.madeFrom).toBe(after.madeFrom);
  });

  it('any setting that changes a time makes another table', async () => {
    const map = await mapOf(TOWN);
    const made = (roads: Partial<BookRoads>): string => tableOf(map, bookWith(roads, [[1000, 0]])).madeFrom;
    const plain = made({});
    expect(made({})).toBe(plain);
    const others: readonly Partial<BookRoads>[] = [
      { speeds: [{ roadClass: 'primary', mph: 30 }] },
      { truck: { heightFt: 11, trailer: false, heavy: false } },
      { kerbSide: true },
      { mostFt: 500 },
      { times: [{ name: 'rush', fromMin: 480, toMin: 540, factor: 1.5 }] },
      { learned: { use: true, on: '2027-01-01', factors: [{ roadClass: 'primary', trips: 30, timeFactor: 1.2 }] } },
      {
        avoid: [
          {
            id: 'a',
            name: 'school',
            area: {
              type: 'Polygon',
              coordinates: [[[...at(400, -50)], [...at(600, -50)], [...at(600, 50)], [...at(400, -50)]]],
            },
          },
        ],
      },
    ];
    const marks = others.map(made);
    expect(new Set([plain, ...marks]).size).toBe(others.length + 1);
    // Learned corrections that are switched off change nothing.
    expect(
      made({
        learned: { use: false, on: '2027-01-01', factors: [{ roadClass: 'primary', trips: 30, timeFactor: 1.2 }] },
      }),
    ).toBe(plain);
  });

  it('an area that is avoided is driven round', async () => {
    const map = await mapOf(TOWN);
    const area = {
      type: 'Polygon' as const,
      coordinates: [
        [at(400, -50), at(600, -50), at(600, 50), at(400, 50), at(400, -50)].map(
          (each) => [...each] as [number, number],
        ),
      ],
    };
    const from = (roads: Partial<BookRoads>): number => {
      const book = bookWith(roads, [[1000, 100]]);
      const moved = { ...book, fillPoints: book.fillPoints.map((each) => ({ ...each, at: at(0, 100) })) };
      return tableOf(map, moved).distanceM[1] ?? 0;
    };
    expect(Math.abs(from({}) - 1200)).toBeLessThan(3);
    expect(Math.abs(from({ avoid: [{ id: 'a', name: 'market', area }] }) - 2800)).toBeLessThan(5);
  });

  it('hours count with their share of the shift: 8 to 16, of which 8 to 10 take twice as long', async () => {
    const book = bookWith(
      { times: [{ name: 'school', fromMin: 420, toMin: 600, factor: 2, roadClasses: ['primary'] }] },
      [[1000, 0]],
    );
    expect(driveFactors(book).primary).toBeCloseTo(1.25, 6);
    expect(driveFactors(book).residential).toBeCloseTo(1, 6);
    const map = await mapOf(TOWN);
    const plain = tableOf(map, bookWith({}, [[1000, 0]])).durationSec[1] ?? 0;
    expect(Math.abs((tableOf(map, book).durationSec[1] ?? 0) - 1.25 * plain)).toBeLessThan(2);
  });

  it('limits of the truck are turned into metres and kilograms', () => {
    const { truck } = roadSettingsOf(
      bookWith({ truck: { heightFt: 10, weightLb: 1000, trailer: true, heavy: false } }, []).roads,
    );
    expect(truck).toEqual({ heightM: 3.048, widthM: 0, weightKg: 453.59237, trailer: true, heavy: false });
  });

  it('the way is told for the map, and none where there is none', async () => {
    const roads = drivenRoads(await mapOf(TOWN), bookWith({}, []));
    const ways = waysAlong(roads, [at(0, 0), at(1000, 500), at(3100, 0)]);
    expect(ways[0]?.length).toBeGreaterThanOrEqual(3);
    expect(ways[0]?.[1]).toEqual(at(1000, 0).map((each) => Math.round(each * 1e7) / 1e7));
    expect(ways[1]).toBeNull();
  });
});

describe('learning from drives along roads', () => {
  it('residential roads that are driven 20 % slower are found within 3 % after 200 drives', async () => {
    const map = await mapOf(TOWN);
    const spots: readonly (readonly [number, number])[] = [
      [1000, 0],
      [1000, 600],
      [600, 1000],
      [0, 700],
      [500, 0],
    ];
    const plain = bookWith({}, spots);
    const truth = tableOf(
      map,
      bookWith(
        {
          learned: {
            use: true,
            on: '2027-01-01',
            factors: [{ roadClass: 'residential', trips: 99, timeFactor: 1.25 }],
          },
        },
        spots,
      ),
    );
    const random = createRandom(7);
    const visits = Array.from({ length: 40 }, (_, day) => {
      const order = spots.map((__, index) => index).sort(() => random.unit() - 0.5);
      return order.map((spot, number): Visit => {
        const from = number === 0 ? 0 : (order[number - 1] ?? 0) + 1;
        const real = truth.durationSec[from * (spots.length + 1) + spot + 1] ?? 0;
        return {
          id: `${day} ${number}`,
          on: `2027-${String(1 + Math.floor(day / 28)).padStart(2, '0')}-${String(1 + (day % 28)).padStart(2, '0')}`,
          roundId: 'r',
          rigId: base.rigs[0]?.id ?? '',
          propertyId: `p${spot}`,
          outcome: { kind: 'done', tasks: [] },
          arriveMin: 500 + number * 30,
          drivenMin: (real * (1 + 0.1 * (random.unit() - 0.5))) / 60,
          note: '',
        };
      });
    }).flat();
    const learnt = learnFromDrives(map, { ...plain, visits });
    expect([learnt.drives, learnt.used]).toEqual([200, 200]);
    const residential = learnt.classes.find((each) => each.roadClass === 'residential');
    expect(Math.abs((residential?.timeFactor ?? 0) / 1.25 - 1)).toBeLessThan(0.03);
    const primary = learnt.classes.find((each) => each.roadClass === 'primary');
    expect(Math.abs((primary?.timeFactor ?? 0) - 1)).toBeLessThan(0.05);
  });
});
