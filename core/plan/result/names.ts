import type { Book, Head, Mix, Product } from '../../book/index.ts';
import type { Problem } from '../problem/index.ts';
import { fromParts } from './amounts.ts';

/** Looks up the records of a book by id, once per plan. */
export type Names = {
  readonly property: (id: string) => string;
  readonly zone: (propertyId: string, zoneId: string) => string;
  readonly method: (machineOrHandId: string) => string;
  readonly head: (machineId: string, headId: string) => Head | undefined;
  readonly place: (id: string) => string;
  readonly rig: (id: string) => string;
  readonly treatment: (id: string) => string;
  readonly product: (id: string) => Product | undefined;
  readonly mix: (id: string) => Mix | undefined;
  /** Plain name of a compartment, "Ride-on 36 tank". */
  readonly compartment: (compartmentId: string) => string;
  readonly material: (id: string) => string;
  /** Weight of one full bag of a product, lb; 0 where the plan has none of it. */
  readonly bagLb: (productId: string) => number;
};

export function namesOf(book: Book, problem: Problem): Names {
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  const methods = new Map([...book.machines, ...book.handMethods].map((each) => [each.id, each.name]));
  const places = new Map([...book.fillPoints, ...book.properties].map((each) => [each.id, each.name]));
  const rigs = new Map(book.rigs.map((each) => [each.id, each.name]));
  const treatments = new Map(book.treatments.map((each) => [each.id, each.name]));
  const products = new Map(book.products.map((each) => [each.id, each]));
  const mixes = new Map(book.mixes.map((each) => [each.id, each]));
  const compartments = new Map(
    problem.rigs.flatMap((rig) => rig.compartments.map((each) => [each.id, compartmentName(book, each.id)])),
  );
  const bags = new Map(
    problem.stocks.flatMap((each) =>
      each.kind === 'dry' ? [[each.productId, fromParts(each.bagParts)] as const] : [],
    ),
  );
  return {
    property: (id) => properties.get(id)?.name ?? id,
    zone: (propertyId, zoneId) => properties.get(propertyId)?.zones.find((each) => each.id === zoneId)?.name ?? zoneId,
    method: (id) => methods.get(id) ?? id,
    head: (machineId, headId) =>
      book.machines.find((each) => each.id === machineId)?.heads.find((each) => each.id === headId),
    place: (id) => places.get(id) ?? id,
    rig: (id) => rigs.get(id) ?? id,
    treatment: (id) => treatments.get(id) ?? id,
    product: (id) => products.get(id),
    mix: (id) => mixes.get(id),
    compartment: (id) => compartments.get(id) ?? id,
    material: (id) => mixes.get(id)?.name ?? products.get(id)?.name ?? id,
    bagLb: (id) => bags.get(id) ?? 0,
  };
}

function compartmentName(book: Book, id: string): string {
  const [ownerId = '', parts = ''] = id.split('/');
  const machine = book.machines.find((each) => each.id === ownerId);
  if (machine === undefined) return book.handMethods.find((each) => each.id === ownerId)?.name ?? id;
  const names = parts.split('+').map((part) => machine.compartments.find((each) => each.id === part)?.name ?? part);
  return `${machine.name}, ${names.join(' and ')}`;
}
