import type { Op, Problem, ProblemRig } from '../problem/index.ts';
import type { PlanFill, PlanStockFill } from '../result/index.ts';
import type { Ledger } from './ledger.ts';
import { compartmentOf, type Lookup } from './lookup.ts';
import { amountWords, LEVEL_SLACK_PARTS, partsOf, WEIGHT_SLACK } from './tolerance.ts';

/** A rig that begins its day under way has aboard just what the problem says. */
export function checkAboard({ vessels, rig, lookup, ledger }: VesselContext, where: string): void {
  const { begins } = rig;
  if (begins === undefined) return;
  const differs = (has: number, should: number): boolean => Math.abs(has - should) > LEVEL_SLACK_PARTS;
  rig.compartments.forEach((vessel, c) => {
    const should = begins.parts[c] ?? 0;
    const wrong = should > 0 && vessels.materials[c] !== begins.materials[c];
    if (!wrong && !differs(vessels.levels[c] ?? 0, should)) return;
    const words = `${vessel.id} begins with ${amountWords(vessels.levels[c] ?? 0)}, it holds ${amountWords(should)}`;
    ledger.add('aboard-differs', where, words);
  });
  lookup.problem.stocks.forEach((stock, s) => {
    const should = begins.stockParts[s] ?? 0;
    if (!differs(vessels.stocks[s] ?? 0, should)) return;
    const name = stock.productId || 'water';
    const words = `the rig begins with ${amountWords(vessels.stocks[s] ?? 0)} of ${name}, it has ${amountWords(should)}`;
    ledger.add('aboard-differs', where, words);
  });
}

/** What a rig holds at one moment. Levels in parts; materials by number, -1 where a compartment is clean. */
export type Vessels = {
  readonly levels: number[];
  readonly materials: number[];
  readonly stocks: number[];
};

/** Everything the handling of vessels needs to know and to write to. */
export type VesselContext = {
  readonly lookup: Lookup;
  readonly rig: ProblemRig;
  readonly ledger: Ledger;
  readonly vessels: Vessels;
};

export function cleanVessels(problem: Problem, rig: ProblemRig): Vessels {
  return {
    levels: rig.compartments.map(() => 0),
    materials: rig.compartments.map(() => -1),
    stocks: problem.stocks.map(() => 0),
  };
}

/** A fill with its names turned into numbers. `parts` of `material` into `compartment`. */
export type ReadFill = { readonly compartment: number; readonly material: number; readonly parts: number };

/** Reads fills; those that name what the rig or the problem does not have are reported and left out. */
export function readFills(context: VesselContext, fills: readonly PlanFill[], where: string): ReadFill[] {
  return fills.flatMap((fill) => {
    const compartment = compartmentOf(context.rig, fill.compartmentId);
    const vessel = context.rig.compartments[compartment];
    if (vessel === undefined) {
      context.ledger.add('level-above-capacity', where, `the rig has no compartment "${fill.compartmentId}" to fill`);
      return [];
    }
    const material = context.lookup.materialOf.get(fill.materialId) ?? -1;
    const stock = stockOfMaterial(context.lookup.problem, material);
    if (stock === undefined || (stock.kind === 'water') !== (vessel.kind === 'tank')) {
      context.ledger.add('mixed-materials', where, `"${fill.materialId}" cannot go into ${vessel.id}`);
      return [];
    }
    const parts = partsOf(vessel.kind === 'tank' ? fill.volumeGal : fill.weightLb);
    if (parts < -LEVEL_SLACK_PARTS) {
      context.ledger.add('level-below-empty', where, `a fill of ${amountWords(parts)} into ${vessel.id} takes out`);
    }
    return [{ compartment, material, parts }];
  });
}

export type ReadStockFill = { readonly stock: number; readonly parts: number };

export function readStockFills(
  context: VesselContext,
  fills: readonly PlanStockFill[],
  where: string,
): ReadStockFill[] {
  return fills.flatMap((fill) => {
    const stock = context.lookup.stockOf.get(fill.stock === 'water' ? '' : fill.productId);
    if (stock === undefined || context.lookup.problem.stocks[stock]?.kind !== fill.stock) {
      context.ledger.add('mixed-materials', where, `"${fill.productId}" is no stock of this problem`);
      return [];
    }
    const parts = partsOf(fill.stock === 'water' ? fill.volumeGal : fill.weightLb);
    if (parts < -LEVEL_SLACK_PARTS) {
      context.ledger.add('stock-below-empty', where, `taking on ${amountWords(parts)} takes out`);
    }
    return [{ stock, parts }];
  });
}

export function stockOfMaterial(problem: Problem, material: number) {
  return problem.stocks[problem.materials[material]?.stock ?? -1];
}

export function stockName(context: VesselContext, stock: number): string {
  return context.lookup.problem.stocks[stock]?.productId || 'water';
}

/** Parts by stock that fills and stock fills move together. */
export function stocksMoved(
  context: VesselContext,
  fills: readonly ReadFill[],
  taken: readonly ReadStockFill[],
): ReadonlyMap<number, number> {
  const moved = new Map<number, number>();
  const add = (stock: number, parts: number): void => {
    moved.set(stock, (moved.get(stock) ?? 0) + Math.max(0, parts));
  };
  for (const fill of fills) add(context.lookup.problem.materials[fill.material]?.stock ?? -1, fill.parts);
  for (const fill of taken) add(fill.stock, fill.parts);
  return moved;
}

/** Empties compartments for another material. Returns the material that came out of each that held one. */
export function rinse(context: VesselContext, ids: readonly string[], where: string): number[] {
  const out: number[] = [];
  for (const id of ids) {
    const compartment = compartmentOf(context.rig, id);
    const held = context.vessels.materials[compartment];
    if (held === undefined) {
      context.ledger.add('mixed-materials', where, `the rig has no compartment "${id}" to rinse`);
      continue;
    }
    if (held >= 0) out.push(held);
    checkLeft(context, compartment, where);
    context.vessels.levels[compartment] = 0;
    context.vessels.materials[compartment] = -1;
  }
  return out;
}

/** What a compartment still holds before a rinse or at the end of the day is at most what may be left of its material. */
export function checkLeft({ vessels, rig, lookup, ledger }: VesselContext, compartment: number, where: string): void {
  const most = lookup.problem.materials[vessels.materials[compartment] ?? -1]?.reserveParts;
  const left = vessels.levels[compartment] ?? 0;
  if (most === undefined || left <= most + LEVEL_SLACK_PARTS) return;
  const words = `${amountWords(left)} gal are left in ${rig.compartments[compartment]?.id ?? ''}, ${amountWords(most)} may be`;
  const subjectId = rig.compartments[compartment]?.id ?? '';
  ledger.add('too-much-left', where, words, { subjectId, limit: most / 100, found: left / 100, unit: 'gal' });
}

export function pourIn(context: VesselContext, fill: ReadFill, where: string): void {
  const { vessels, rig, ledger } = context;
  const vessel = rig.compartments[fill.compartment];
  const held = vessels.materials[fill.compartment] ?? -1;
  if (vessel === undefined) return;
  // Bags of one product are taken off for those of another as soon as they are empty.
  const swapped = vessel.pours !== undefined && (vessels.levels[fill.compartment] ?? 0) <= LEVEL_SLACK_PARTS;
  if (held >= 0 && held !== fill.material && !swapped) {
    ledger.add('mixed-materials', where, `${vessel.id} is filled with another material without a rinse`);
    vessels.levels[fill.compartment] = 0;
  }
  vessels.materials[fill.compartment] = fill.material;
  const level = (vessels.levels[fill.compartment] ?? 0) + fill.parts;
  vessels.levels[fill.compartment] = level;
  if (level > vessel.capacityParts + LEVEL_SLACK_PARTS) {
    const words = `${vessel.id} would hold ${amountWords(level)} of ${amountWords(vessel.capacityParts)}`;
    const unit = vessel.kind === 'tank' ? 'gal' : 'lb';
    const excess = { subjectId: vessel.id, limit: vessel.capacityParts / 100, found: level / 100, unit } as const;
    ledger.add('level-above-capacity', where, words, excess);
  }
}

export function takeFromStock(context: VesselContext, stock: number, parts: number, where: string): void {
  const { vessels, ledger } = context;
  const level = (vessels.stocks[stock] ?? 0) - parts;
  vessels.stocks[stock] = level;
  if (level < -LEVEL_SLACK_PARTS) {
    const name = stockName(context, stock);
    const { kind = 'water', productId = '' } = context.lookup.problem.stocks[stock] ?? {};
    const excess = {
      subjectId: productId,
      limit: 0,
      found: level / 100,
      unit: kind === 'water' ? 'gal' : 'lb',
    } as const;
    ledger.add('stock-below-empty', where, `the rig's stock of ${name} is short by ${amountWords(-level)}`, excess);
    vessels.stocks[stock] = 0;
  }
}

export function addToStock(context: VesselContext, fill: ReadStockFill): void {
  context.vessels.stocks[fill.stock] = (context.vessels.stocks[fill.stock] ?? 0) + fill.parts;
}

/** Nurse tank, bag places and payload; asked after everything that brings something aboard. */
export function checkLoad(context: VesselContext, where: string): void {
  const { vessels, rig, lookup, ledger } = context;
  let bags = 0;
  lookup.problem.stocks.forEach((stock, index) => {
    const level = vessels.stocks[index] ?? 0;
    if (stock.kind === 'dry') bags += bagsOf(level, stock.bagParts);
    else if (level > rig.nurseParts + LEVEL_SLACK_PARTS) {
      const words = `the nurse tank would hold ${amountWords(level)} of ${amountWords(rig.nurseParts)} gal`;
      const excess = { subjectId: '', limit: rig.nurseParts / 100, found: level / 100, unit: 'gal' } as const;
      ledger.add('stock-above-capacity', where, words, excess);
    }
  });
  if (bags > rig.bagPlaces) {
    const excess = { subjectId: '', limit: rig.bagPlaces, found: bags, unit: 'bags' } as const;
    ledger.add('stock-above-capacity', where, `${bags} bags in ${rig.bagPlaces} bag places`, excess);
  }
  const aboard = weightAboard(context);
  if (aboard > rig.cargoLimit + WEIGHT_SLACK) {
    const words = `${pounds(aboard)} lb of material aboard, ${pounds(rig.cargoLimit)} lb allowed`;
    const excess = { subjectId: '', limit: rig.cargoLimit / 10_000, found: aboard / 10_000, unit: 'lb' } as const;
    ledger.add('over-payload', where, words, excess);
  }
}

function bagsOf(parts: number, bagParts: number): number {
  if (parts <= LEVEL_SLACK_PARTS) return 0;
  return bagParts > 0 ? Math.ceil((parts - LEVEL_SLACK_PARTS) / bagParts) : 1;
}

function weightAboard({ vessels, lookup }: VesselContext): number {
  let weight = 0;
  lookup.problem.stocks.forEach((stock, index) => {
    weight += Math.max(0, vessels.stocks[index] ?? 0) * stock.weightPerPart;
  });
  vessels.levels.forEach((level, index) => {
    const stock = stockOfMaterial(lookup.problem, vessels.materials[index] ?? -1);
    weight += Math.max(0, level) * (stock?.weightPerPart ?? 0);
  });
  return weight;
}

function pounds(weight: number): string {
  return (weight / 10_000).toFixed(1);
}

/** Draws what an op takes for the ground from `from` to `to` ft2. */
export function drawForOp(context: VesselContext, op: Op, from: number, to: number, where: string): void {
  for (const draw of op.draws) {
    const vessel = context.rig.compartments[draw.compartment];
    const held = context.vessels.materials[draw.compartment] ?? -1;
    if (vessel === undefined) continue;
    if (held >= 0 && held !== op.material) {
      context.ledger.add('mixed-materials', where, `${vessel.id} holds another material than this work needs`);
    }
    const level = (context.vessels.levels[draw.compartment] ?? 0) - drawnParts(op, draw.parts, from, to);
    context.vessels.levels[draw.compartment] = level;
    if (level < -LEVEL_SLACK_PARTS) {
      const words = `${vessel.id} runs dry, short by ${amountWords(-level)} ${vessel.kind === 'tank' ? 'gal' : 'lb'}`;
      const unit = vessel.kind === 'tank' ? 'gal' : 'lb';
      context.ledger.add('level-below-empty', where, words, {
        subjectId: vessel.id,
        limit: 0,
        found: level / 100,
        unit,
      });
      context.vessels.levels[draw.compartment] = 0;
    }
  }
}

/** Parts drawn between two marks of an op: after x of X ft2, ceil(parts * x / X). */
export function drawnParts(op: Op, parts: number, from: number, to: number): number {
  return drawnAfter(op, parts, to) - drawnAfter(op, parts, from);
}

function drawnAfter(op: Op, parts: number, units: number): number {
  return Math.ceil((parts * units) / op.areaUnits - 1e-9);
}

/** Time of an op between two marks: floor(serviceMs * x / X). */
export function serviceBetween(op: Op, from: number, to: number): number {
  const after = (units: number): number => Math.floor((op.serviceMs * units) / op.areaUnits);
  return after(to) - after(from);
}
