import type { PlanFill, PlanStockFill } from '../../../../core/plan/result/index.ts';
import { levelAfter, materialAfter, stockAfter, weightAfter } from './contents.ts';
import {
  type DayFacts,
  type Fault,
  ms,
  opOf,
  PART,
  type Pour,
  parts,
  stationOf,
  stockNumber,
  stockOfFill,
  stockParts,
  sum,
  TIME,
  WEIGHT,
} from './day-facts.ts';
import { drawsFit } from './visits.ts';

type Code = Fault['code'];

/** Faults of what is drawn, filled, carried and supplied on a day: parts 5 to 8 of the page. */
export function contentFaults(facts: DayFacts): readonly Fault[] {
  return [
    ...compartmentFaults(facts),
    ...leftFaults(facts),
    ...facts.day.activities.flatMap((_, index) => [
      ...drawFaults(facts, index),
      ...supplyFaults(facts, index),
      ...carriedFaults(facts, index),
    ]),
  ];
}

function fault(code: Code, index: number, words: string): Fault {
  return { code, where: `activity ${index + 1}`, words };
}

/** Levels and materials of compartments after every single change. */
function compartmentFaults(facts: DayFacts): readonly Fault[] {
  const { changes } = facts;
  return changes.flatMap((change, count): Fault[] => {
    const { index, compartment } = change;
    const vessel = facts.rig.compartments.find((each) => each.id === compartment);
    const level = levelAfter(changes, count + 1, compartment);
    const held = materialAfter(changes, count, compartment);
    const found: Fault[] = [];
    if (level < -PART) found.push(fault('level-below-empty', index, `${compartment} at ${level} parts`));
    if (level > (vessel?.capacityParts ?? 0) + PART) found.push(fault('level-above-capacity', index, compartment));
    if (change.kind === 'fill' && change.parts < -PART)
      found.push(fault('level-below-empty', index, 'a fill that takes out'));
    const swapped = vessel?.pours !== undefined && levelAfter(changes, count, compartment) <= PART;
    if (change.kind !== 'rinse' && held !== '' && held !== change.materialId && !(swapped && change.kind === 'fill'))
      found.push(fault('mixed-materials', index, `${held} and ${change.materialId} in ${compartment}`));
    return found;
  });
}

/** What is left of a material before a rinse and at the end of the day is at most what may be. */
function leftFaults({ problem, rig, changes, day }: DayFacts): readonly Fault[] {
  const over = (count: number, compartment: string): boolean => {
    const material = problem.materials.find((each) => each.id === materialAfter(changes, count, compartment));
    return levelAfter(changes, count, compartment) > (material?.reserveParts ?? Number.POSITIVE_INFINITY) + PART;
  };
  const rinsed = changes.flatMap(({ kind, compartment, index }, count) =>
    kind === 'rinse' && over(count, compartment) ? [fault('too-much-left', index, compartment)] : [],
  );
  const atEnd = rig.compartments
    .filter((each) => over(changes.length, each.id))
    .map((each) => fault('too-much-left', day.activities.length - 1, each.id));
  return [...rinsed, ...atEnd];
}

/** A piece of work is one that the rig has, and draws what its op does, of the material that it applies. */
function drawFaults(facts: DayFacts, index: number): readonly Fault[] {
  const piece = facts.day.activities[index];
  if (piece?.kind !== 'treat') return [];
  const op = opOf(facts, index);
  if (op === null) return [fault('out-of-reach', index, 'the rig has no such way to do it')];
  const material = facts.problem.materials[op.material]?.id ?? '';
  const ids = facts.rig.compartments.map((each) => each.id);
  const stranger = piece.draws.some((draw) => !ids.includes(draw.compartmentId) && amountOf(draw) > 1.05);
  return [
    ...(piece.draws.some((draw) => draw.materialId !== material)
      ? [fault('mixed-materials', index, 'draws another material')]
      : []),
    ...(stranger || !drawsFit(op, facts.rig, piece) ? [fault('figure-differs', index, 'draws another amount')] : []),
  ];
}

function amountOf(draw: { readonly volumeGal: number; readonly weightLb: number }): number {
  return Math.abs(parts(draw.volumeGal)) + Math.abs(parts(draw.weightLb));
}

/** What is filled exists, goes where it is put, and is to be had where it is filled, while that is open. */
function supplyFaults(facts: DayFacts, index: number): readonly Fault[] {
  const { problem, rig } = facts;
  const activity = facts.day.activities[index];
  if (activity?.kind === 'pour') return pourFaults(facts, activity, index);
  if (activity?.kind !== 'morning' && activity?.kind !== 'refill') return [];
  const found = [
    ...activity.fills.flatMap((fill) => strangeFill(facts, index, fill)),
    ...activity.stock.flatMap((fill) => strangeStock(facts, index, fill)),
  ];
  const wanted = [
    ...activity.fills.map((fill) => stockOfFill(facts, fill)),
    ...activity.stock.map((fill) => stockNumber(problem, fill)),
  ].filter((stock) => stock >= 0);
  const lacks = (msPerPart: readonly number[]): boolean => wanted.some((stock) => (msPerPart[stock] ?? -1) < 0);
  const lacking = (words: string): Fault => fault('fill-point-lacks-material', index, words);
  if (activity.kind === 'morning') {
    if (rig.begins !== undefined) return [...found, ...aboardFaults(facts, rig.begins, index)];
    if (lacks(problem.stations[rig.home]?.msPerPart ?? [])) found.push(lacking('home has none of it'));
    return found;
  }
  if (activity.fillPointId === '') {
    if (activity.stock.some((fill) => stockNumber(problem, fill) >= 0)) found.push(lacking('no fill point is here'));
    return found;
  }
  const station = stationOf(facts, activity);
  if (station === undefined) return [...found, lacking('no such fill point')];
  if (lacks(station.msPerPart)) found.push(lacking('the fill point has none of it'));
  if (ms(activity.startSec) < station.openMs - TIME || ms(activity.endSec) > station.closeMs + TIME)
    found.push(fault('fill-point-closed', index, 'outside the hours'));
  return found;
}

/** A rig under way begins with just what it has aboard. */
function aboardFaults(
  facts: DayFacts,
  begins: NonNullable<DayFacts['rig']['begins']>,
  index: number,
): readonly Fault[] {
  const { problem, rig, changes } = facts;
  const count = changes.filter((each) => each.index <= index).length;
  const wrong = rig.compartments.filter(({ id }, c) => {
    const should = begins.parts[c] ?? 0;
    const material = problem.materials[begins.materials[c] ?? -1]?.id ?? '';
    if (should > 0 && materialAfter(changes, count, id) !== material) return true;
    return Math.abs(levelAfter(changes, count, id) - should) > PART;
  });
  const stocks = problem.stocks.filter(
    (_, s) => Math.abs(stockAfter(facts, index, s) - (begins.stockParts[s] ?? 0)) > PART,
  );
  return [...wrong, ...stocks].map(() => fault('aboard-differs', index, 'begins with something else aboard'));
}

/** Bags that ride on the machine are poured into their own hopper. */
function pourFaults(facts: DayFacts, pour: Pour, index: number): readonly Fault[] {
  const { compartments } = facts.rig;
  const bags = compartments.find((each) => each.id === pour.fromCompartmentId);
  const hopper = compartments[bags?.pours?.into ?? -1]?.id;
  return [
    ...pour.fills.flatMap((fill) => strangeFill(facts, index, fill)),
    ...(hopper === undefined ? [fault('level-below-empty', index, 'no bags that are poured')] : []),
    ...(pour.fills.some((fill) => hopper !== undefined && fill.compartmentId !== hopper)
      ? [fault('mixed-materials', index, 'poured into something else')]
      : []),
  ];
}

function strangeFill(facts: DayFacts, index: number, fill: PlanFill): readonly Fault[] {
  if (!facts.rig.compartments.some((each) => each.id === fill.compartmentId))
    return [fault('level-above-capacity', index, 'fills what the rig does not have')];
  return stockOfFill(facts, fill) < 0 ? [fault('mixed-materials', index, 'that does not go in there')] : [];
}

function strangeStock(facts: DayFacts, index: number, fill: PlanStockFill): readonly Fault[] {
  if (stockNumber(facts.problem, fill) < 0) return [fault('mixed-materials', index, 'no such stock')];
  return stockParts(fill) < -PART ? [fault('stock-below-empty', index, 'stock that is taken out')] : [];
}

/** Nurse tank, bags and weight when the activity is over, and rinses of what is not there. */
function carriedFaults(facts: DayFacts, index: number): readonly Fault[] {
  const { problem, rig } = facts;
  const activity = facts.day.activities[index];
  if (activity?.kind !== 'morning' && activity?.kind !== 'refill') return [];
  const levels = problem.stocks.map((_, stock) => stockAfter(facts, index, stock));
  const bags = problem.stocks.map((each, stock) => {
    const level = levels[stock] ?? 0;
    return each.kind === 'dry' && level > PART ? Math.ceil((level - PART) / each.bagParts) : 0;
  });
  const water = problem.stocks.findIndex((each) => each.kind === 'water');
  const unknown =
    activity.kind === 'refill' &&
    activity.rinsedCompartmentIds.some((id) => !rig.compartments.some((each) => each.id === id));
  const count = facts.changes.filter((each) => each.index <= index).length;
  const mixed = rig.compartments.some(({ id, pours }) => {
    const inHopper = materialAfter(facts.changes, count, rig.compartments[pours?.into ?? -1]?.id ?? '');
    const inBags = materialAfter(facts.changes, count, id);
    return pours !== undefined && levelAfter(facts.changes, count, id) > PART && inHopper !== '' && inHopper !== inBags;
  });
  return [
    ...(mixed ? [fault('mixed-materials', index, 'bags of another product than their hopper holds')] : []),
    ...(levels.some((level) => level < -PART) ? [fault('stock-below-empty', index, levels.join(', '))] : []),
    ...((levels[water] ?? 0) > rig.nurseParts + PART ? [fault('stock-above-capacity', index, 'nurse tank')] : []),
    ...(sum(bags) > rig.bagPlaces ? [fault('stock-above-capacity', index, 'bags')] : []),
    ...(weightAfter(facts, index) > rig.cargoLimit + WEIGHT ? [fault('over-payload', index, 'too heavy')] : []),
    ...(unknown ? [fault('mixed-materials', index, 'rinses what the rig does not have')] : []),
  ];
}
