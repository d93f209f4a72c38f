import { expect } from 'vitest';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import type { SampleName } from '../../support/samples.ts';
import { sampleBook } from '../../support/samples.ts';
import type { ReadDay } from './printed-sheets.ts';

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/** What is printed is rounded: to a tenth of a gallon, ounce or pound, and to whole square feet, on every line that is added up. */
export function expectDay(name: SampleName, day: PlanDay, read: ReadDay): void {
  const book = sampleBook(name);
  const { loads, activities } = day;
  expect(read.stops).toBe(day.stops.length);
  expect(read.loads).toBe(loads.length);
  expect(read.refills).toBe(activities.filter((each) => each.kind === 'refill').length);
  expect(Math.abs(read.startMin - day.startSec / 60)).toBeLessThanOrEqual(0.5);
  expect(Math.abs(read.homeMin - day.endSec / 60)).toBeLessThanOrEqual(0.5);
  expect(Math.abs(read.dayMin - day.paidSec / 60)).toBeLessThanOrEqual(0.5);

  const zones = new Map<string, number>();
  for (const stop of day.stops) {
    for (const task of stop.tasks) {
      const property = book.properties.find((each) => each.id === task.propertyId);
      const zone = `${stop.number} ${property?.zones.find((each) => each.id === task.zoneId)?.name}`;
      zones.set(zone, (zones.get(zone) ?? 0) + task.areaSqFt);
    }
  }
  expect([...read.zoneSqFt.keys()].sort()).toEqual([...zones.keys()].sort());
  const rows = activities.filter((each) => each.kind === 'treat').length;
  for (const [zone, sqFt] of zones)
    expect(Math.abs((read.zoneSqFt.get(zone) ?? 0) - sqFt), zone).toBeLessThan(rows / 2);
  expect(Math.abs(sum([...read.zoneSqFt.values()]) - sum([...zones.values()]))).toBeLessThan(rows / 2);
  expect(Math.abs(read.coveredSqFt - sum(loads.map((each) => each.coversSqFt)))).toBeLessThanOrEqual(loads.length / 2);
  expect([...read.loadsInUse].sort((a, b) => a - b)).toEqual(loads.map((each) => each.number));

  const mixGal = sum(loads.map((each) => each.volumeGal + each.sumpGal));
  expect(Math.abs(read.mixGal - mixGal)).toBeLessThanOrEqual(0.06 * loads.length);
  expect(Math.abs(read.dryLb - sum(loads.map((each) => each.weightLb)))).toBeLessThanOrEqual(0.06 * loads.length);
  const products = new Map<string, number>();
  for (const load of loads) {
    // What stays below the reach of the pump is mixed like the rest.
    const share = load.volumeGal > 0 ? 1 + load.sumpGal / load.volumeGal : 1;
    for (const { productId, amount } of load.products) {
      const product = book.products.find((each) => each.id === productId)?.name ?? '';
      products.set(product, (products.get(product) ?? 0) + amount * share);
    }
  }
  expect([...read.products.keys()].sort()).toEqual([...products.keys()].sort());
  for (const [product, amount] of products) {
    expect(Math.abs((read.products.get(product) ?? 0) - amount), product).toBeLessThanOrEqual(0.06 * loads.length);
  }
  const stock = activities.flatMap((each) => ('stock' in each ? each.stock : []));
  expect(read.bags).toBe(sum(stock.map((each) => each.bags)));
}
