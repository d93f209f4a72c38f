import type { Book } from '../book/index.ts';
import type { PlanFill, PlanLoad, PlanProductAmount, PlanTask } from '../plan/result/index.ts';
import { formatProductAmount, formatVolume, formatWeight } from '../units/index.ts';

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
    .join(' and ')}`;
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

export function productWord(book: Book, amount: PlanProductAmount, units: Units): string {
  return `${formatProductAmount(amount.amount, amount.unit, units)} ${materialWord(book, amount.productId)}`;
}

/** "18.0 gal" or "150 lb" of a fill or load. */
export function amountWord(fill: Pick<PlanFill | PlanLoad, 'volumeGal' | 'weightLb'>, units: Units): string {
  return fill.volumeGal > 0 ? formatVolume(fill.volumeGal, units) : formatWeight(fill.weightLb, units);
}
