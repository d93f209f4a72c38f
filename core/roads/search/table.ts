import { err, NEVER_STOP, ok, type Progress, type Result, type StopSignal } from '../../base/index.ts';
import { contract, type Hierarchy } from '../hierarchy/index.ts';
import type { RoadNetwork } from '../network/index.ts';
import type { RoadTable, Snap, Snapping } from '../types.ts';
import { durationDsOf, lengthDmOf, NO_WAY } from '../weight.ts';
import { type Block, fillByDijkstra, fillByHierarchy, type GoesOn, type PutWeight } from './block.ts';

/** How a table of ways is made. */
export type TableOptions = {
  /** How ways are found; the answers are the same. Left out: by how many searches there would be. */
  readonly method?: 'dijkstra' | 'hierarchy';
  /** A table made before: pairs of places that it knows are taken from it, where it belongs to this network. */
  readonly known?: RoadTable;
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
};

/** For more plain searches than these a hierarchy is built first: it serves every later table as well; see docs/methods/roads.md. */
const HIERARCHY_FROM = 100;

/** Built once for a network and kept as long as it is. */
const HIERARCHIES = new WeakMap<RoadNetwork, Hierarchy>();

/**
 * The quickest ways between all places, both ways. Rows and columns of places that are not joined to a road hold -1, and so do
 * pairs without a way. Error: `cancelled`.
 */
export function roadTable(
  network: RoadNetwork,
  places: readonly Snapping[],
  options: TableOptions = {},
): Result<RoadTable> {
  const count = places.length;
  const durationDs = new Int32Array(count * count).fill(-1);
  const distanceDm = new Int32Array(count * count).fill(-1);
  const table: RoadTable = { places, network: network.fingerprint, durationDs, distanceDm };
  const { fresh, old } = takeKnown(table, options.known);
  const blocks = [
    { rows: fresh, columns: [...old, ...fresh] },
    { rows: old, columns: fresh },
  ].filter(({ rows, columns }) => rows.length > 0 && columns.length > 0);
  const fill = fillerFor(network, blocks, options);
  if (fill === null) return stopped();
  for (const { rows, columns } of blocks) {
    const put: PutWeight = (row, column, weight) => {
      if (weight >= NO_WAY) return;
      const cell = (rows[row] as number) * count + (columns[column] as number);
      durationDs[cell] = durationDsOf(weight);
      distanceDm[cell] = lengthDmOf(weight);
    };
    const snaps = (numbers: readonly number[]): readonly Snap[] => numbers.map((each) => places[each] as Snap);
    if (!fill({ rows: snaps(rows), columns: snaps(columns) }, put)) return stopped();
  }
  return ok(table);
}

function stopped(): Result<never> {
  return err('cancelled', 'road table', 'The drive times were stopped before all were known.', 'Start it again.');
}

type Numbers = { readonly rows: readonly number[]; readonly columns: readonly number[] };

/** How blocks are filled; null where it was told to stop. */
function fillerFor(
  network: RoadNetwork,
  blocks: readonly Numbers[],
  options: TableOptions,
): ((block: Block, put: PutWeight) => boolean) | null {
  const plain = blocks.reduce((sum, { rows, columns }) => sum + Math.min(rows.length, columns.length), 0);
  const least = HIERARCHIES.has(network) ? 0 : HIERARCHY_FROM;
  const isHigh = options.method === 'hierarchy' || (options.method === undefined && plain > least);
  if (!isHigh || plain === 0) {
    const goesOn = counting(plain, options);
    return (block, put) => fillByDijkstra(network, block, put, goesOn);
  }
  const hierarchy = hierarchyOf(network, options);
  if (hierarchy === null) return null;
  const climbs = blocks.reduce((sum, { rows, columns }) => sum + rows.length + columns.length, 0);
  const goesOn = counting(climbs, options);
  return (block, put) => fillByHierarchy(network, hierarchy, block, put, goesOn);
}

function hierarchyOf(network: RoadNetwork, { signal, onProgress }: TableOptions): Hierarchy | null {
  const known = HIERARCHIES.get(network);
  if (known !== undefined) return known;
  const total = network.arcEdge.length;
  const built = contract(network.next, signal, (done) =>
    onProgress?.({ step: 'shortcuts', done, total, bestSoFar: '' }),
  );
  if (built !== null) HIERARCHIES.set(network, built);
  return built;
}

function counting(total: number, { signal = NEVER_STOP, onProgress }: TableOptions): GoesOn {
  let done = 0;
  return () => {
    if (signal.stopped()) return false;
    onProgress?.({ step: 'drive times', done, total, bestSoFar: '' });
    done += 1;
    return true;
  };
}

/** Copies what an earlier table knows, and tells which joined places it knows and which are fresh. */
function takeKnown(
  table: RoadTable,
  known: RoadTable | undefined,
): { readonly fresh: readonly number[]; readonly old: readonly number[] } {
  const joined = table.places.flatMap((each, at) => (each.kind === 'snapped' ? [{ at, key: keyOf(each) }] : []));
  if (known === undefined || known.network !== table.network) return { fresh: joined.map(({ at }) => at), old: [] };
  const rowOf = new Map<string, number>();
  known.places.forEach((each, row) => {
    if (each.kind === 'snapped') rowOf.set(keyOf(each), row);
  });
  const fresh: number[] = [];
  const old: { readonly at: number; readonly row: number }[] = [];
  for (const { at, key } of joined) {
    const row = rowOf.get(key);
    if (row === undefined) fresh.push(at);
    else old.push({ at, row });
  }
  for (const from of old) {
    for (const to of old) {
      const cell = from.at * table.places.length + to.at;
      const before = from.row * known.places.length + to.row;
      table.durationDs[cell] = known.durationDs[before] ?? -1;
      table.distanceDm[cell] = known.distanceDm[before] ?? -1;
    }
  }
  return { fresh, old: old.map(({ at }) => at) };
}

/** Two places with the same key have the same ways. */
function keyOf({ edge, alongDm, directions }: Snap): string {
  return `${edge} ${alongDm} ${directions}`;
}
