import type { Draw, Op, Problem, ProblemRig } from '../problem/index.ts';
import type { CompartmentFill, StockFill } from '../refills/index.ts';
import type { Names } from './names.ts';
import type { PlanFill, PlanProductAmount, PlanStockFill } from './types.ts';

const PARTS_PER_UNIT = 100;
const OUNCES_PER_POUND = 16;

/** Parts as gallons or pounds. */
export function fromParts(parts: number): number {
  return parts / PARTS_PER_UNIT;
}

export function toSeconds(ms: number): number {
  return ms / 1000;
}

/** What an op draws from one compartment while it goes from one ft2 to another. parts */
export function drawnParts(op: Op, draw: Draw, fromUnits: number, toUnits: number): number {
  return Math.ceil((draw.parts * toUnits) / op.areaUnits) - Math.ceil((draw.parts * fromUnits) / op.areaUnits);
}

/** The products in an amount of a material: shares of a mix by its carrier, or the dry product itself. */
export function productsIn(names: Names, materialId: string, amount: number): readonly PlanProductAmount[] {
  const mix = names.mix(materialId);
  if (mix !== undefined) {
    return mix.parts.map((part) => ({
      productId: part.productId,
      amount: (part.amountPer1000SqFt / mix.carrierGalPer1000SqFt) * amount,
      unit: names.product(part.productId)?.unit ?? 'fl-oz',
    }));
  }
  const unit = names.product(materialId)?.unit ?? 'lb';
  return [{ productId: materialId, amount: unit === 'oz' ? amount * OUNCES_PER_POUND : amount, unit }];
}

export function planFill(problem: Problem, rig: ProblemRig, names: Names, fill: CompartmentFill): PlanFill {
  const compartment = rig.compartments[fill.compartment];
  const materialId = problem.materials[fill.material]?.id ?? '';
  const amount = fromParts(fill.parts);
  const tank = compartment?.kind === 'tank';
  return {
    compartmentId: compartment?.id ?? '',
    materialId,
    volumeGal: tank ? amount : 0,
    weightLb: tank ? 0 : amount,
    products: productsIn(names, materialId, amount),
  };
}

export function planStockFill(problem: Problem, fill: StockFill): PlanStockFill {
  const stock = problem.stocks[fill.stock];
  const amount = fromParts(fill.parts);
  if (stock === undefined || stock.kind === 'water')
    return { stock: 'water', productId: '', volumeGal: amount, weightLb: 0, bags: 0 };
  return {
    stock: 'dry',
    productId: stock.productId,
    volumeGal: 0,
    weightLb: amount,
    bags: Math.ceil(fill.parts / stock.bagParts),
  };
}

/** Adds amounts up by product, in the order in which they first appear. */
export function sumProducts(lists: readonly (readonly PlanProductAmount[])[]): readonly PlanProductAmount[] {
  const sums = new Map<string, PlanProductAmount>();
  for (const each of lists.flat()) {
    const sum = sums.get(each.productId);
    sums.set(each.productId, sum === undefined ? each : { ...sum, amount: sum.amount + each.amount });
  }
  return [...sums.values()];
}
