import type { Estimate, Prices } from '../book/index.ts';
import { formatMoney, formatProductAmount, formatShare, formatVolume, type UnitSystem } from '../units/index.ts';
import { plain } from './price.ts';
import type { LawnWork, MoneyLine } from './types.ts';

/** What one visit costs, line by line, with the minutes that are paid for. */
export type VisitCost = { readonly minutes: number; readonly lines: readonly MoneyLine[]; readonly dollars: number };

/**
 * Cost of one visit with one treatment from the owner's own figures: work, miles, product, carrier, and overhead as a share
 * of all these. What nobody entered counts as nothing, and its line says so.
 */
export function visitCost(work: LawnWork, prices: Prices, estimate: Estimate, system: UnitSystem): VisitCost {
  const driving = estimate.drivingMinPerVisit;
  const minutes = work.treatingMin + work.handTrimMin + work.setUpMin + work.stopMin + driving;
  const direct = [
    workLine(work, minutes, driving),
    milesLine(estimate.milesPerVisit, prices.perMile),
    ...work.products.map((each) => productLine(each, system)),
    ...(work.volumeGal > 0 ? [carrierLine(work.volumeGal, estimate.carrierDollarsPerGal, system)] : []),
  ];
  const sum = direct.reduce((total, each) => total + each.dollars, 0);
  const overhead: MoneyLine = {
    what: 'Overhead',
    arithmetic: `${formatShare(estimate.overheadShare)} of ${formatMoney(sum)}`,
    dollars: estimate.overheadShare * sum,
  };
  return { minutes, lines: [...direct, overhead], dollars: sum + overhead.dollars };
}

function workLine(work: LawnWork, minutes: number, driving: number): MoneyLine {
  const { wagePerHour } = work;
  const trim = work.handTrimMin > 0 ? ` + ${plain(work.handTrimMin)} hand trim` : '';
  const parts = `${plain(work.treatingMin)} treating${trim} + ${plain(work.setUpMin)} set-up + ${plain(work.stopMin)} at the stop + ${plain(driving)} driving`;
  const crew = work.crew === 1 ? '' : ` × crew of ${work.crew}`;
  const wage = wagePerHour === 0 ? 'no wage entered' : `${formatMoney(wagePerHour)} per hour`;
  return {
    what: 'Work',
    arithmetic: `${parts} = ${plain(minutes)} min × ${wage}${crew}`,
    dollars: (minutes / 60) * wagePerHour * work.crew,
  };
}

function milesLine(miles: number, perMile: number): MoneyLine {
  const arithmetic = miles === 0 ? 'no miles entered' : `${plain(miles)} mi × ${formatMoney(perMile)}`;
  return { what: 'Miles', arithmetic, dollars: miles * perMile };
}

function productLine(
  { name, amount, unit, pricePerUnit }: LawnWork['products'][number],
  system: UnitSystem,
): MoneyLine {
  const price = pricePerUnit === 0 ? 'no price entered' : `${formatMoney(pricePerUnit)} per ${unit.replace('-', ' ')}`;
  return {
    what: name,
    arithmetic: `${formatProductAmount(amount, unit, system)} × ${price}`,
    dollars: amount * pricePerUnit,
  };
}

function carrierLine(volumeGal: number, perGal: number, system: UnitSystem): MoneyLine {
  const price = perGal === 0 ? 'no price entered' : `${formatMoney(perGal)} per gal`;
  return { what: 'Carrier', arithmetic: `${formatVolume(volumeGal, system)} × ${price}`, dollars: volumeGal * perGal };
}
