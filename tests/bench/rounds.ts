import { readFileSync } from 'node:fs';
import { createRandom, type Random } from '../../core/base/index.ts';
import { type Book, type Position, type Property, readBook } from '../../core/book/index.ts';
import { localPlane } from '../../core/geometry/index.ts';

/** Lawns of one neighbourhood, and how far a town and a neighbourhood reach from their middle, metres. */
const NEIGHBOURHOOD = 16;
const NEIGHBOURHOOD_M = 350;
const TOWN_M = 3000;
const MS_PER_DAY = 86_400_000;

export type RoundShape = {
  readonly lawns: number;
  /** A stand-on and a ride-on rig take turns. */
  readonly rigs: number;
  readonly days: number;
};

/**
 * An invented round with the shed of the mixed day of the samples: lawns of a stated area in neighbourhoods around a town that grows
 * with their number, a third of them behind a gate that keeps the ride-on out, one in ten with hours of its own, and a due date two
 * thirds through the days.
 */
export function inventRound({ lawns, rigs, days }: RoundShape, seed: number): Book {
  const text = readFileSync(new URL('../../sample-routes/mixed-day.json', import.meta.url), 'utf8');
  const read = readBook(text, 'mixed-day.json');
  if (!read.ok) throw new Error(read.error.detail);
  const { book } = read.value;
  const [round] = book.rounds;
  const shop = book.fillPoints[0]?.at;
  if (round === undefined || shop === undefined) throw new Error('the mixed day has no round or no shop');
  const random = createRandom(seed);
  const numbers = Array.from({ length: rigs }, (_, index) => index);
  const dates = Array.from({ length: days }, (_, day) =>
    new Date(Date.UTC(2027, 2, 1) + day * MS_PER_DAY).toISOString().slice(0, 10),
  );
  const fleet = numbers.map((index) => {
    const rig = book.rigs[index % book.rigs.length];
    if (rig === undefined) throw new Error('the mixed day has no rig');
    return {
      ...rig,
      id: `rig-${index}`,
      machines: rig.machines.map((each) => ({ ...each, machineId: `${each.machineId} ${index}` })),
    };
  });
  const dueDate = dates[Math.floor((2 * days) / 3)];
  return {
    ...book,
    properties: inventTown(shop, lawns, random),
    machines: numbers.flatMap((index) => book.machines.map((each) => ({ ...each, id: `${each.id} ${index}` }))),
    rigs: fleet,
    rounds: [{ ...round, dates, rigIds: fleet.map((each) => each.id), ...(dueDate === undefined ? {} : { dueDate }) }],
  };
}

function inventTown(shop: Position, lawns: number, random: Random): readonly Property[] {
  const plane = localPlane(shop);
  // The town grows so that it stays as dense, whatever the number of lawns.
  const half = TOWN_M * Math.max(1, Math.sqrt(lawns / 640));
  const spread = (reach: number): number => reach * (2 * random.unit() - 1);
  let middle = { x: 0, y: 0 };
  return Array.from({ length: lawns }, (_, index): Property => {
    if (index % NEIGHBOURHOOD === 0) middle = { x: spread(half), y: spread(half) };
    const at = { x: middle.x + spread(NEIGHBOURHOOD_M), y: middle.y + spread(NEIGHBOURHOOD_M) };
    const narrow = random.unit() < 1 / 3;
    const opens = 480 + 30 * random.below(10);
    return {
      id: `lawn-${index}`,
      name: `Lawn ${index}`,
      address: '',
      parking: plane.toDegrees(at),
      noTrailer: false,
      gates: narrow ? [{ id: 'side', name: 'side gate', clearWidthIn: 40, locked: false }] : [],
      zones: [
        {
          id: 'all',
          name: 'all',
          shape: { kind: 'stated', areaSqFt: Math.round(6000 + 18000 * random.unit() ** 2), method: 'invented' },
          slopeDeg: 0,
          gateIds: narrow ? ['side'] : [],
        },
      ],
      exclusions: [],
      cautions: [],
      note: '',
      ...(random.unit() < 0.1 ? { hours: { openMin: opens, closeMin: opens + 180 } } : {}),
    };
  });
}
