import type { Book } from '../../book/index.ts';
import type { Place } from '../../travel/index.ts';
import { dryMaterial, dryStock, mixMaterial, type Supplies } from './materials.ts';
import { capacityParts, minutesToMs } from './scale.ts';
import type { Aboard, ProblemRig, Station } from './types.ts';

const DAY_MIN = 1440;

/** A rig in the middle of its day: where it stands when, and what it has aboard. */
export type UnderWay = {
  readonly rigId: string;
  /** Minutes after midnight. */
  readonly nowMin: number;
  /** Where it stands. The id is that of a property or a fill point. */
  readonly at: Place;
  readonly hadBreak: boolean;
  /** Contents by the names of the problem's compartments; `materialId` is a mix or a product. What is not listed is clean. */
  readonly compartments: readonly {
    readonly compartmentId: string;
    readonly materialId: string;
    readonly volumeGal: number;
    readonly weightLb: number;
  }[];
  readonly waterGal: number;
  readonly bags: readonly { readonly productId: string; readonly weightLb: number }[];
};

/** The rest of a day under way: its rigs, and the properties that are left. */
export type RestOfDay = {
  readonly date: string;
  readonly propertyIds: readonly string[];
  readonly rigs: readonly UnderWay[];
};

/**
 * Supplies with what is aboard of rigs under way, though no work may need it any more: it has to be rinsed out, and bags take up room. What may
 * be left of a mix is not asked of a rig under way: what is there is there.
 */
export function withAboard(book: Book, supplies: Supplies, underWay: readonly UnderWay[]): Supplies {
  if (underWay.length === 0) return supplies;
  const stocks = [...supplies.stocks];
  const materials = supplies.materials.map(({ reserveParts: _, ...each }) => each);
  const known = (id: string): boolean => materials.some((each) => each.id === id);
  const aboard = underWay.flatMap((each) => [
    ...each.compartments.map(({ materialId }) => materialId),
    ...each.bags.map(({ productId }) => productId),
  ]);
  for (const id of aboard) {
    if (known(id)) continue;
    if (book.mixes.some((each) => each.id === id)) {
      const { reserveParts: _, ...mix } = mixMaterial(book, id);
      materials.push(mix);
    } else if (book.products.some((each) => each.id === id)) {
      materials.push(dryMaterial(id, stocks.length));
      stocks.push(dryStock(book, id));
    }
  }
  return { stocks, materials };
}

/** Places where rigs stand, as far as they are none of the places that are there already. */
export function placesUnderWay(places: readonly Place[], underWay: readonly UnderWay[]): readonly Place[] {
  const known = new Set(places.map((each) => each.id));
  const here = new Map(underWay.map((each) => [each.at.id, each.at]));
  return [...here.values()].filter((each) => !known.has(each.id));
}

/** The place where a rig stands, as the station that its day starts from: it gives nothing. */
export function stationHere(place: number, fillPointId: string, stocks: number): Station {
  return {
    fillPointId,
    place,
    openMs: 0,
    closeMs: minutesToMs(DAY_MIN),
    visitMs: minutesToMs(DAY_MIN),
    msPerPart: Array.from({ length: stocks }, () => -1),
  };
}

/** The rest of a rig's day: it begins now, with what is aboard, and the shift ends when it does. */
export function rigUnderWay(rig: ProblemRig, supplies: Supplies, now: UnderWay): ProblemRig {
  const startMs = minutesToMs(now.nowMin);
  const spentMs = startMs - rig.shiftStartMs;
  const shiftMs = Math.max(0, rig.shiftMs - spentMs);
  return {
    ...rig,
    shiftStartMs: startMs,
    shiftMs,
    overtimeMs: Math.max(0, rig.shiftMs + rig.overtimeMs - spentMs - shiftMs),
    morningMs: 0,
    breakAfterMs: now.hadBreak ? -1 : rig.breakAfterMs,
    costPerDay: 0,
    begins: aboardOf(rig, supplies, now),
  };
}

/** Rounded down: what is not there cannot be planned with. Never more than a vessel holds. */
function aboardOf(rig: ProblemRig, { stocks, materials }: Supplies, now: UnderWay): Aboard {
  const contents = rig.compartments.map(({ id, kind, capacityParts: most }) => {
    const found = now.compartments.find((each) => each.compartmentId === id);
    const material = materials.findIndex((each) => each.id === found?.materialId);
    if (found === undefined || material < 0) return { parts: 0, material: -1 };
    return { parts: Math.min(most, capacityParts(kind === 'tank' ? found.volumeGal : found.weightLb)), material };
  });
  let places = rig.bagPlaces;
  const stockParts = stocks.map((stock) => {
    if (stock.kind === 'water') return Math.min(rig.nurseParts, capacityParts(now.waterGal));
    const lb = now.bags.find((each) => each.productId === stock.productId)?.weightLb ?? 0;
    const parts = Math.min(places * stock.bagParts, capacityParts(lb));
    places -= Math.ceil(parts / stock.bagParts);
    return parts;
  });
  return { parts: contents.map((each) => each.parts), materials: contents.map((each) => each.material), stockParts };
}
