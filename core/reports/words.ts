import { type Book, namesWithFigures, readingOf } from '../book/index.ts';
import type { PlanFill, PlanLoad, PlanStockFill, PlanTask } from '../plan/result/index.ts';
import { asRead, formatClock, formatDate, formatVolume, formatWeight } from '../units/index.ts';
import { STOCK } from './texts/index.ts';

type Units = Book['units'];

export function methodWord(book: Book, method: PlanTask['method']): string {
  if (method.kind === 'hand')
    return book.handMethods.find((each) => each.id === method.handMethodId)?.name ?? method.handMethodId;
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  return machine === undefined ? method.machineId : `${machine.name}, ${head?.name ?? method.headId}`;
}

export function compartmentWord(book: Book, id: string): string {
  const [owner = '', parts = ''] = id.split('/');
  const machine = book.machines.find((each) => each.id === owner);
  if (machine === undefined) return book.handMethods.find((each) => each.id === owner)?.name ?? id;
  return `${machine.name}, ${parts
    .split('+')
    .map((part) => machine.compartments.find((each) => each.id === part)?.name ?? part)
    .join(STOCK.and)}`;
}

export function materialWord(book: Book, id: string): string {
  return book.mixes.find((each) => each.id === id)?.name ?? book.products.find((each) => each.id === id)?.name ?? id;
}

export function placeWord(book: Book, id: string): string {
  return (
    book.fillPoints.find((each) => each.id === id)?.name ?? book.properties.find((each) => each.id === id)?.name ?? id
  );
}

export function zoneWord(book: Book, propertyId: string, zoneId: string): string {
  const property = book.properties.find((each) => each.id === propertyId);
  return property?.zones.find((each) => each.id === zoneId)?.name ?? zoneId;
}

export function treatmentWord(book: Book, id: string): string {
  return book.treatments.find((each) => each.id === id)?.name ?? id;
}

/** "18.0 gal" or "150 lb" of a fill or load. */
export function amountWord(fill: Pick<PlanFill | PlanLoad, 'volumeGal' | 'weightLb'>, units: Units): string {
  return fill.volumeGal > 0 ? formatVolume(fill.volumeGal, units) : formatWeight(fill.weightLb, units);
}

/** What goes in for a load, with what stays below the reach of the pump: "18.5 gal" or "150 lb". */
export function loadWord({ volumeGal, sumpGal, weightLb }: PlanLoad, units: Units): string {
  return amountWord({ volumeGal: volumeGal + sumpGal, weightLb }, units);
}

/**
 * What is taken into the rig's own stock: "25.4 gal water into the nurse tank", "3 bags (150 lb) Granules onto the rig",
 * "3 bags (150 lb, 130 lb of it needed) Granules onto the rig" where the last bag is not used up.
 */
export function stockWord(book: Book, fill: PlanStockFill): string {
  if (fill.stock === 'water') return STOCK.water(formatVolume(fill.volumeGal, book.units));
  return STOCK.dry(STOCK.bags(fill.bags), bagWeightWord(book, fill), materialWord(book, fill.productId));
}

function bagWeightWord(book: Book, fill: PlanStockFill): string {
  const needed = formatWeight(fill.weightLb, book.units);
  const bagLb = book.products.find((each) => each.id === fill.productId)?.bagLb;
  const whole = bagLb === undefined ? needed : formatWeight(fill.bags * bagLb, book.units);
  return whole === needed ? whole : STOCK.partly(whole, needed);
}

/** Time of day by the clock that the book is read by. */
export function clockWord(book: Book, seconds: number): string {
  return formatClock(seconds, readingOf(book).clock);
}

/** A day of its own, "Tuesday, March 16, 2027". */
export function dateWord(book: Book, date: string): string {
  return formatDate(date, 'long', readingOf(book).dates);
}

/** A day in a table, "Tue Mar 16, 2027". */
export function shortDateWord(book: Book, date: string): string {
  return formatDate(date, 'table', readingOf(book).dates);
}

/** A sentence of a plan or of a check as the book is read: they are stored in US units. */
export function saidWord(book: Book, sentence: string): string {
  return asRead(sentence, readingOf(book), namesWithFigures(book));
}
