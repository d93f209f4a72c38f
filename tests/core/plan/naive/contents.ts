import {
  type Change,
  type DayFacts,
  drawParts,
  fillParts,
  opOf,
  type Pour,
  type Refill,
  stationOf,
  stockNumber,
  stockOfFill,
  stockParts,
} from './day-facts.ts';

/** Everything that happens to compartments on a day. Fills of compartments that do not exist are not among them. */
export function changesOf(facts: Omit<DayFacts, 'changes'>): readonly Change[] {
  const known = (id: string): boolean => facts.rig.compartments.some((each) => each.id === id);
  return facts.day.activities.flatMap((activity, index): Change[] => {
    const fills = activity.kind === 'morning' || activity.kind === 'refill' ? activity.fills : [];
    const rinsed = activity.kind === 'refill' ? activity.rinsedCompartmentIds.filter(known) : [];
    const draws = activity.kind === 'treat' ? activity.draws.filter((draw) => known(draw.compartmentId)) : [];
    return [
      ...rinsed.map((compartment): Change => ({ index, compartment, kind: 'rinse', parts: 0, materialId: '' })),
      ...fills
        .filter((fill) => stockOfFill(facts, fill) >= 0)
        .map(
          (fill): Change => ({
            index,
            compartment: fill.compartmentId,
            kind: 'fill',
            parts: fillParts(facts, fill),
            materialId: fill.materialId,
          }),
        ),
      ...(activity.kind === 'pour' ? pouredChanges(facts, activity, index) : []),
      ...draws.map((draw): Change => {
        const amount = drawParts(facts.rig, draw);
        return { index, compartment: draw.compartmentId, kind: 'draw', parts: amount, materialId: draw.materialId };
      }),
    ];
  });
}

/** Bags that ride on the machine give what their hopper takes. */
function pouredChanges(facts: Omit<DayFacts, 'changes'>, pour: Pour, index: number): readonly Change[] {
  const known = facts.rig.compartments.some((each) => each.id === pour.fromCompartmentId);
  const fills = pour.fills.filter((fill) => known && stockOfFill(facts, fill) >= 0);
  return fills.flatMap((fill): Change[] => {
    const change = { index, parts: fillParts(facts, fill), materialId: fill.materialId };
    return [
      { ...change, kind: 'draw', compartment: pour.fromCompartmentId },
      { ...change, kind: 'fill', compartment: fill.compartmentId },
    ];
  });
}

/** Level of a compartment after the first so many changes: what went in less what came out since it was last rinsed. parts */
export function levelAfter(changes: readonly Change[], count: number, compartment: string): number {
  const own = changes.slice(0, count).filter((each) => each.compartment === compartment);
  const since = own.slice(own.findLastIndex((each) => each.kind === 'rinse') + 1);
  return since.reduce((level, each) => level + (each.kind === 'fill' ? each.parts : -each.parts), 0);
}

/** Material in a compartment after the first so many changes; '' where it is clean. */
export function materialAfter(changes: readonly Change[], count: number, compartment: string): string {
  const last = changes.slice(0, count).findLast((each) => each.compartment === compartment && each.kind !== 'draw');
  return last?.kind === 'fill' ? last.materialId : '';
}

/** Materials that come out of the compartments that a refill rinses. */
export function rinsedMaterials(facts: DayFacts, index: number): readonly string[] {
  const refill = facts.day.activities[index];
  if (refill?.kind !== 'refill') return [];
  const { changes } = facts;
  const before = changes.filter((each) => each.index < index).length;
  return [...new Set(refill.rinsedCompartmentIds)]
    .map((id) => materialAfter(changes, before, id))
    .filter((id) => id !== '');
}

export function rinseWater(facts: DayFacts, index: number): number {
  const ids = rinsedMaterials(facts, index);
  return ids.reduce((all, id) => all + (facts.problem.materials.find((each) => each.id === id)?.rinseParts ?? 0), 0);
}

/** Whether a refill rinses with the rig's own water: from the rig, or at a station that has none. */
export function rinsesFromRig(facts: DayFacts, refill: Refill): boolean {
  if (refill.fillPointId === '') return true;
  const station = stationOf(facts, refill);
  const water = facts.problem.stocks.findIndex((each) => each.kind === 'water');
  return station !== undefined && (station.msPerPart[water] ?? -1) < 0;
}

/** What each stock holds when an activity is over: all that was taken on less all that was given since the morning. parts */
export function stockAfter(facts: DayFacts, index: number, stock: number): number {
  const { problem, day } = facts;
  const water = problem.stocks.findIndex((each) => each.kind === 'water');
  return day.activities.slice(0, index + 1).reduce((level, activity, at) => {
    if (activity.kind !== 'morning' && activity.kind !== 'refill') return level;
    const taken = activity.stock
      .filter((fill) => stockNumber(problem, fill) === stock)
      .reduce((all, fill) => all + stockParts(fill), 0);
    if (activity.kind === 'morning') return level + taken;
    const given =
      activity.fillPointId === ''
        ? activity.fills
            .filter((fill) => stockOfFill(facts, fill) === stock)
            .reduce((all, fill) => all + fillParts(facts, fill), 0)
        : 0;
    const rinsed = stock === water && rinsesFromRig(facts, activity) ? rinseWater(facts, at) : 0;
    return level + taken - given - rinsed;
  }, 0);
}

/** Weight of everything in stock and compartments when an activity is over, ten-thousandths of a pound. */
export function weightAfter(facts: DayFacts, index: number): number {
  const { problem, rig } = facts;
  const { changes } = facts;
  const count = changes.filter((each) => each.index <= index).length;
  const stocks = problem.stocks.map((each, stock) => Math.max(0, stockAfter(facts, index, stock)) * each.weightPerPart);
  const vessels = rig.compartments.map((each) => {
    const id = materialAfter(changes, count, each.id);
    const stock = problem.materials.find((material) => material.id === id)?.stock ?? -1;
    return Math.max(0, levelAfter(changes, count, each.id)) * (problem.stocks[stock]?.weightPerPart ?? 0);
  });
  return [...stocks, ...vessels].reduce((all, each) => all + each, 0);
}

/** Ground that treats out of a compartment cover between two activities. ft2 */
export function coveredBetween(facts: DayFacts, compartment: string, from: number, to: number): number {
  return facts.day.activities.reduce((all, activity, index) => {
    if (index < from || index >= to || activity.kind !== 'treat') return all;
    if (!activity.draws.some((draw) => draw.compartmentId === compartment)) return all;
    const op = opOf(facts, index);
    const left = op === null ? 0 : ((op.ground?.leftUnits ?? 0) * activity.areaSqFt) / op.areaUnits;
    return all + activity.areaSqFt - left;
  }, 0);
}
