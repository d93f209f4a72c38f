import type { Book, FillPoint } from '../../book/index.ts';
import type { ZoneDemand } from '../../demand/index.ts';
import {
  bagToMsPerPart,
  capacityParts,
  DRY_WEIGHT_PER_PART,
  demandParts,
  flowToMsPerPart,
  minutesToMs,
  WATER_WEIGHT_PER_PART,
} from './scale.ts';
import type { Material, Station, Stock } from './types.ts';

/** A bag where the product does not say how large its bags are, lb. */
const USUAL_BAG_LB = 50;
const WATER: Stock = { kind: 'water', productId: '', weightPerPart: WATER_WEIGHT_PER_PART, bagParts: 0 };

export type Supplies = { readonly stocks: readonly Stock[]; readonly materials: readonly Material[] };

/** Everything the demands of a round draw on: water first, then each dry product, and the mixes and products themselves. */
export function suppliesOf(book: Book, demands: readonly ZoneDemand[]): Supplies {
  const stocks: Stock[] = [WATER];
  const materials: Material[] = [];
  const seen = new Set<string>();
  for (const demand of demands) {
    if (demand.materialId === '' || seen.has(demand.materialId)) continue;
    seen.add(demand.materialId);
    materials.push(
      demand.what === 'spray' ? mixMaterial(book, demand.materialId) : dryMaterial(demand.materialId, stocks.length),
    );
    if (demand.what !== 'spray') stocks.push(dryStock(book, demand.materialId));
  }
  return { stocks, materials };
}

export function mixMaterial(book: Book, mixId: string): Material {
  const mix = book.mixes.find((each) => each.id === mixId);
  return {
    id: mixId,
    stock: 0,
    rinseMs: minutesToMs(mix?.rinseMin ?? 0),
    rinseParts: demandParts(mix?.rinseGal ?? 0),
    reserveParts: capacityParts(mix?.reserveGal ?? 0),
  };
}

export function dryMaterial(productId: string, stock: number): Material {
  return { id: productId, stock, rinseMs: 0, rinseParts: 0 };
}

export function dryStock(book: Book, productId: string): Stock {
  const product = book.products.find((each) => each.id === productId);
  const bagParts = capacityParts(product?.bagLb ?? USUAL_BAG_LB);
  return { kind: 'dry', productId, weightPerPart: DRY_WEIGHT_PER_PART, bagParts };
}

/** The fill points of a book as stations. `placeOf` gives the place number of a fill point. */
export function stationsOf(book: Book, stocks: readonly Stock[], placeOf: (fillPointId: string) => number): Station[] {
  return book.fillPoints.map((point) => ({
    fillPointId: point.id,
    place: placeOf(point.id),
    openMs: minutesToMs(point.hours?.openMin ?? 0),
    closeMs: minutesToMs(point.hours?.closeMin ?? 1440),
    visitMs: minutesToMs(point.visitMin),
    msPerPart: stocks.map((stock) => supplyMsPerPart(point, stock)),
  }));
}

function supplyMsPerPart(point: FillPoint, stock: Stock): number {
  if (stock.kind === 'water') return point.waterGpm > 0 ? flowToMsPerPart(point.waterGpm) : -1;
  const held = point.products === 'all' || point.products.includes(stock.productId);
  return held ? bagToMsPerPart(point.minutesPerBag, stock.bagParts / 100) : -1;
}
