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

/** What a hand method needs to draw from. */
const HAND_VESSEL = { hose: 'tank', backpack: 'tank', 'hand-spreader': 'hopper' } as const;

function handVessel(hand: HandMethod, machines: readonly Machine[]): readonly Issue[] {
  const vessel = vesselOf(hand, machines);
  const where = named('hand method', hand);
  if (vessel === null) return [];
  const wanted = HAND_VESSEL[hand.what];
  if (vessel.kind !== wanted) {
    return [
      unusable(where, `A ${hand.what} works from a ${wanted}, but it draws from a ${vessel.kind}; choose another.`),
    ];
  }
  if (vessel.kind !== 'tank') return [];
  const { capacityGal: capacity, sumpGal: sump } = vessel;
  if (sump >= capacity) {
    const message = `The pump leaves ${sump} gal of ${capacity} gal behind, so nothing can be used; correct one of the two.`;
    return [unusable(where, message)];
  }
  if (hand.leastVolumeGal <= capacity - sump) return [];
  const message = `It needs at least ${hand.leastVolumeGal} gal to work evenly, but its tank gives ${capacity - sump} gal; use a larger tank or correct the figure.`;
  return [unusable(where, message)];
}

type Vessel =
  | { readonly kind: 'tank'; readonly capacityGal: number; readonly sumpGal: number }
  | { readonly kind: 'hopper' | 'seed-box' };

/** The vessel that a hand method draws from; null where it is not in the book. */
function vesselOf(hand: HandMethod, machines: readonly Machine[]): Vessel | null {
  const from = hand.drawsFrom;
  if (from.kind === 'own-hopper') return { kind: 'hopper' };
  if (from.kind !== 'machine') return { kind: 'tank', capacityGal: from.capacityGal, sumpGal: from.sumpGal };
  const machine = machines.find((each) => each.id === from.machineId);
  return machine?.compartments.find((each) => each.id === from.compartmentId) ?? null;
}
