import type { Problem } from '../../../../core/plan/problem/index.ts';
import * as field from '../../../../core/plan/refills/labels.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { smallProblem } from '../judge/small-problem.ts';

export const [TANK, HOPPER, BAGS] = [0, 1, 2];
export const [WATER, SEED, LIME] = [0, 1, 2];
export const [SHOP, HYDRANT] = [0, 1];

/**
 * The small problem with bags of 3,000 parts beside a hopper of 1,000, poured at 4 ms a part, two bag places, and lime in bags of 2,000,
 * which nothing needs; a label with everything aboard at seven o'clock, and the places of its fields.
 */
export function setUp(change: (problem: Problem) => Problem = (problem) => problem) {
  const small = smallProblem();
  const bags = {
    id: 'bags',
    kind: 'dry' as const,
    capacityParts: 3000,
    fillMsPerPart: 0,
    pours: { into: HOPPER, msPerPart: 4 },
  };
  const problem: Problem = {
    ...small,
    stocks: [...small.stocks, { kind: 'dry', productId: 'lime', weightPerPart: 100, bagParts: 2000 }],
    stations: small.stations.map((each) => ({
      ...each,
      openMs: 0,
      closeMs: 86_400_000,
      msPerPart: [...each.msPerPart, -1],
    })),
    rigs: small.rigs.map((each) => ({
      ...each,
      bagPlaces: 2,
      cargoLimit: 1e9,
      compartments: [
        ...each.compartments.map((one, c) => (c === HOPPER ? { ...one, capacityParts: 1000 } : one)),
        bags,
      ],
    })),
  };
  const search = new RefillSearch(change(problem), 0);
  const { chain, labels, stores, steps } = search;
  chain.load([0, 1, 2], [0, 0, 0], 3);
  const at = labels.first(chain, 25_200_000, 0);
  const vessel = (c: number, name: number): number => at + labels.compartmentsAt + c * field.PER_COMPARTMENT + name;
  const stock = (s: number, name: number): number => at + labels.stocksAt + s * field.PER_STOCK + name;
  const set = (place: number, value: number): void => {
    labels.data[place] = value;
  };
  const get = (place: number): number => labels.data[place] as number;
  const moment = (m: number): number => at + labels.momentsAt + m;
  return { at, stores, steps, vessel, stock, moment, set, get };
}

export type Label = ReturnType<typeof setUp>;
