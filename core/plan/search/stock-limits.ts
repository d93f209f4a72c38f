import type { JobTable, RigTable } from './tables.ts';

/** What the rig's store of each stock holds, the payload taken into account. parts */
export function stockLimits(table: JobTable, rigIndex: number): Float64Array {
  const { stocks } = table.problem;
  const { rig } = table.rigs[rigIndex] as RigTable;
  const vessels = rig.compartments.reduce(
    (sum, each) => sum + each.capacityParts * (each.kind === 'tank' ? 834 : 100),
    0,
  );
  const free = Math.max(0, rig.cargoLimit - vessels);
  return Float64Array.from(stocks, (stock) => {
    const room = stock.kind === 'water' ? rig.nurseParts : rig.bagPlaces * stock.bagParts;
    return Math.min(room, Math.floor(free / stock.weightPerPart));
  });
}
