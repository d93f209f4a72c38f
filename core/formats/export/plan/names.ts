import type { Book } from '../../../book/index.ts';
import type { PlanTask } from '../../../plan/result/index.ts';

type Named = { readonly id: string; readonly name: string };

/** The name of what has this id; the id itself where the book no longer has it. */
export function nameOf(list: readonly Named[], id: string): string {
  return list.find((each) => each.id === id)?.name ?? id;
}

/** Machine and head, or the hand method. */
export function methodName({ machines, handMethods }: Book, method: PlanTask['method']): string {
  if (method.kind === 'hand') return nameOf(handMethods, method.handMethodId);
  const machine = machines.find((each) => each.id === method.machineId);
  return `${machine?.name ?? method.machineId}, ${nameOf(machine?.heads ?? [], method.headId)}`;
}

/** What a compartment of a load is called: machine and tank, hand method, or the bare id. */
export function compartmentName(book: Book, id: string): string {
  const [owner = '', parts = ''] = id.split('/');
  const machine = book.machines.find((each) => each.id === owner);
  if (machine === undefined) return nameOf(book.handMethods, id);
  const names = parts.split('+').map((part) => nameOf(machine.compartments, part));
  return `${machine.name}, ${names.join(' and ')}`;
}

export function materialName({ mixes, products }: Book, id: string): string {
  return nameOf([...mixes, ...products], id);
}
