import { type Issue, issue } from '../base/index.ts';
import type { HandMethod, Machine } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** Tanks that hold nothing usable, heads without the vessel that they need, guns that need more than their tank holds. */
export const vessels: Rule = {
  code: 'vessel-unusable',
  find: (book) => [
    ...book.machines.flatMap((machine) => [...sumps(machine), ...heads(machine)]),
    ...book.handMethods.flatMap((hand) => handVessel(hand, book.machines)),
  ],
};

function unusable(where: string, message: string): Issue {
  return issue('error', 'vessel-unusable', where, message);
}

function sumps(machine: Machine): readonly Issue[] {
  return machine.compartments.flatMap((each) =>
    each.kind === 'tank' && each.sumpGal >= each.capacityGal
      ? [
          unusable(
            `${named('machine', machine)}, ${each.name}`,
            `The pump leaves ${each.sumpGal} gal of ${each.capacityGal} gal behind, so nothing can be used; correct one of the two.`,
          ),
        ]
      : [],
  );
}

const VESSEL_OF = { spray: 'tank', spread: 'hopper', seed: 'seed-box' } as const;

function heads(machine: Machine): readonly Issue[] {
  return machine.heads.flatMap((head) => {
    if (head.purpose === 'aerate') return [];
    const kinds = machine.compartments.filter((each) => head.compartmentIds.includes(each.id)).map((each) => each.kind);
    const wanted = VESSEL_OF[head.purpose];
    const fits = kinds.some((kind) => kind === wanted || (head.purpose === 'seed' && kind === 'hopper'));
    return fits
      ? []
      : [
          unusable(
            `${named('machine', machine)}, head ${head.name}`,
            `It is to ${head.purpose} but draws on no ${wanted}; name the compartments it draws on.`,
          ),
        ];
  });
}

function handVessel(hand: HandMethod, machines: readonly Machine[]): readonly Issue[] {
  const [capacity, sump] = vesselOf(hand, machines);
  const where = named('hand method', hand);
  if (capacity === null) return [];
  if (sump >= capacity)
    return [
      unusable(
        where,
        `The pump leaves ${sump} gal of ${capacity} gal behind, so nothing can be used; correct one of the two.`,
      ),
    ];
  if (hand.leastVolumeGal > capacity - sump) {
    return [
      unusable(
        where,
        `It needs at least ${hand.leastVolumeGal} gal to work evenly, but its tank gives ${capacity - sump} gal; use a larger tank or correct the figure.`,
      ),
    ];
  }
  return [];
}

function vesselOf(hand: HandMethod, machines: readonly Machine[]): readonly [number | null, number] {
  const from = hand.drawsFrom;
  if (from.kind === 'own-hopper') return [null, 0];
  if (from.kind !== 'machine') return [from.capacityGal, from.sumpGal];
  const tank = machines
    .find((each) => each.id === from.machineId)
    ?.compartments.find((each) => each.id === from.compartmentId);
  return tank?.kind === 'tank' ? [tank.capacityGal, tank.sumpGal] : [null, 0];
}
