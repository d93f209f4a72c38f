import type { Book, Property, Rig, Treatment, Zone } from '../book/index.ts';
import { demandFor, totalDemand, type ZoneDemand } from '../demand/index.ts';
import { bandAreaSqFt, farthestFt, type PropertyMeasure, standsFor, type ZoneMeasure } from '../measure/index.ts';
import type { PassesOf } from '../passes/index.ts';
import { type FitRow, fitTable, type Method } from '../reach/index.ts';
import type { LawnWork, MethodFit, ProductUse, ZoneWork } from './types.ts';

/** What each of the treatments takes on a lawn, by the rig that does the most of it in the least time. */
export function lawnWork(
  book: Book,
  property: Property,
  measure: PropertyMeasure,
  treatments: readonly Treatment[],
  passes: PassesOf,
): readonly LawnWork[] {
  return treatments.map((treatment) => {
    const taken = demands(book, property, measure, treatment);
    const rigs: readonly (Rig | null)[] = book.rigs.length === 0 ? [null] : book.rigs;
    const ways = rigs.map((rig) => workWith(book, property, measure, treatment, rig, passes));
    const best = ways.toSorted(betterWay)[0] ?? workWith(book, property, measure, treatment, null, passes);
    return withDemands(book, best, taken.demands, taken.remarks);
  });
}

type Way = Omit<LawnWork, 'volumeGal' | 'products'>;

/** More zones first, then fewer minutes. */
function betterWay(left: Way, right: Way): number {
  const done = (way: Way): number => way.zones.filter((each) => each.chosen !== null).length;
  const minutes = (way: Way): number => (way.treatingMin + way.handTrimMin + way.setUpMin + way.stopMin) * way.crew;
  return done(right) - done(left) || minutes(left) - minutes(right);
}

function workWith(
  book: Book,
  property: Property,
  measure: PropertyMeasure,
  treatment: Treatment,
  rig: Rig | null,
  passes: PassesOf,
): Way {
  const part: Book = { ...book, properties: [property] };
  const { coverage } = treatment;
  const treatedSqFt = (lawn: Property, zone: Zone, of: ZoneMeasure): number => {
    if (coverage.kind === 'band') return bandAreaSqFt(lawn, zone, coverage.widthFt, coverage.along);
    return (of.areaSqFt ?? 0) * (coverage.kind === 'spot' ? coverage.share : 1);
  };
  const site = { farthestFt, stands: standsFor, treatedSqFt, passes };
  const table = fitTable(part, [measure], treatment, rig, site);
  const zones = table.rows.map((row) => zoneWork(property, row, table.columns));
  const chosen = zones.flatMap((each) => each.chosen ?? []);
  const trims = chosen.flatMap((each) => each.trim ?? []);
  const used = new Set([
    ...chosen.map((each) => methodKey(each.answer.method)),
    ...trims.map(({ handMethodId }) => methodKey({ kind: 'hand', handMethodId })),
  ]);
  const handTrimMin = trims.reduce((sum, each) => sum + each.minutes, 0);
  return {
    treatmentId: treatment.id,
    name: treatment.name,
    rigName: rig?.name ?? '',
    crew: rig?.crew ?? 1,
    wagePerHour: rig?.wagePerHour ?? book.prices.wagePerHour,
    zones,
    treatingMin: chosen.reduce((sum, each) => sum + (each.minutes ?? 0), 0) - handTrimMin,
    handTrimMin,
    handTrimSqFt: trims.reduce((sum, each) => sum + each.areaSqFt, 0),
    notReachedSqFt: chosen.reduce((sum, each) => sum + each.notReachedSqFt, 0),
    setUpMin: [...used].reduce((sum, key) => sum + setUpMinutes(book, rig, key), 0),
    stopMin: rig?.stopMin ?? 0,
    remarks: zones
      .filter((each) => each.chosen === null)
      .map((each) => `${each.zoneName}: ${each.fits[0]?.answer.words ?? 'the shed has nothing made for it'}`),
  };
}

function zoneWork(property: Property, row: FitRow, columns: readonly { readonly name: string }[]): ZoneWork {
  const fits = row.cells.map((cell, index): MethodFit => ({ name: columns[index]?.name ?? '', ...cell }));
  const able = fits.filter((each) => each.minutes !== null && Number.isFinite(each.minutes));
  return {
    zoneId: row.zoneId,
    zoneName: property.zones.find((each) => each.id === row.zoneId)?.name ?? row.zoneId,
    treatedSqFt: row.treatedSqFt,
    fits,
    chosen: able.toSorted((left, right) => (left.minutes ?? 0) - (right.minutes ?? 0))[0] ?? null,
  };
}

/** A machine is unloaded once whichever of its heads are used. */
function methodKey(method: Method): string {
  return method.kind === 'hand' ? `hand ${method.handMethodId}` : `machine ${method.machineId}`;
}

function setUpMinutes(book: Book, rig: Rig | null, key: string): number {
  const hand = book.handMethods.find((each) => `hand ${each.id}` === key);
  if (hand !== undefined) return hand.setUpMin;
  const carried = rig?.machines.find((each) => `machine ${each.machineId}` === key);
  return carried === undefined ? 0 : carried.unloadMin + carried.loadMin;
}

type Taken = { readonly demands: readonly ZoneDemand[]; readonly remarks: readonly string[] };

function demands(book: Book, property: Property, measure: PropertyMeasure, treatment: Treatment): Taken {
  const { coverage } = treatment;
  const results = property.zones.flatMap((zone) => {
    const zoneMeasure = measure.zones.find((each) => each.zoneId === zone.id);
    if (zoneMeasure === undefined || zoneMeasure.areaSqFt === null) return [];
    const bandSqFt = coverage.kind === 'band' ? bandAreaSqFt(property, zone, coverage.widthFt, coverage.along) : null;
    return [demandFor({ book, property, zone, zoneMeasure, treatment, bandSqFt })];
  });
  const remarks = results.flatMap((each) => each.issues.filter((one) => one.severity !== 'note'));
  return {
    demands: results.flatMap((each) => each.demands),
    remarks: [...new Set(remarks.map((each) => each.message))],
  };
}

function withDemands(book: Book, way: Way, taken: readonly ZoneDemand[], remarks: readonly string[]): LawnWork {
  const totals = totalDemand(taken);
  const products = totals.products.map((each): ProductUse => {
    const product = book.products.find(({ id }) => id === each.productId);
    return {
      name: product?.name ?? each.productId,
      amount: each.amount,
      unit: each.unit,
      pricePerUnit: product?.pricePerUnit ?? 0,
    };
  });
  return { ...way, volumeGal: totals.volumeGal, products, remarks: [...way.remarks, ...remarks] };
}
