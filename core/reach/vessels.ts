import type { Compartment, Head, Machine } from '../book/index.ts';

/** What each kind of work is done out of, the more fitting vessel first. */
const VESSELS: Readonly<Record<Head['purpose'], readonly Compartment['kind'][]>> = {
  spray: ['tank'],
  spread: ['hopper', 'seed-box'],
  seed: ['seed-box', 'hopper'],
  aerate: [],
};

/** The compartment that a head empties; undefined for none. A head may list others as well, such as the box of another use. */
export function drawnCompartment(machine: Machine, head: Head): Compartment | undefined {
  const listed = machine.compartments.filter((each) => head.compartmentIds.includes(each.id));
  return VESSELS[head.purpose].flatMap((kind) => listed.filter((each) => each.kind === kind))[0];
}

/** Groups the compartments of a machine that some head draws on at the same time: they run together, and count as one. */
export function joinedCompartments(machine: Machine): Compartment[][] {
  const groups = machine.compartments.map((each) => [each]);
  for (const head of machine.heads) {
    const [first, ...rest] = groups.filter((group) => group.some((each) => head.compartmentIds.includes(each.id)));
    if (first === undefined) continue;
    for (const other of rest.filter((group) => group[0]?.kind === first[0]?.kind)) {
      first.push(...other);
      groups.splice(groups.indexOf(other), 1);
    }
  }
  return groups;
}
