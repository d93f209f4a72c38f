import type { HandMethod, Head, Machine } from '../book/index.ts';
import { drawnCompartment, joinedCompartments } from './vessels.ts';

/** Out of what a hand tool treats what a machine leaves: out of what the machine draws on, or out of a tank of the rig. */
export type TrimSource = 'machine' | 'rig';

/** A tool that trims after a machine, with where its material comes from. */
export type TrimTool<Tool> = { readonly tool: Tool; readonly source: TrimSource };

/**
 * The tool that treats what a machine leaves: of those that may do the zone one that is filled out of what the machine draws on, where
 * there is one, else the quickest. Null where none may be used there.
 */
export function trimTool<Tool extends { readonly hand: HandMethod }>(
  machine: Machine,
  head: Head,
  tools: readonly Tool[],
): TrimTool<Tool> | null {
  const usable = tools.flatMap((tool): readonly TrimTool<Tool>[] => {
    const source = trimSource(machine, head, tool.hand);
    return source === null ? [] : [{ tool, source }];
  });
  const [best] = usable.toSorted(
    (left, right) =>
      Number(right.source === 'machine') - Number(left.source === 'machine') ||
      left.tool.hand.minutesPer1000SqFt - right.tool.hand.minutesPer1000SqFt,
  );
  return best ?? null;
}

/** Null where the tool draws on another machine, or on another of its tanks, or holds something else. */
function trimSource(machine: Machine, head: Head, { drawsFrom }: HandMethod): TrimSource | null {
  const drawn = drawnCompartment(machine, head);
  if (drawn === undefined) return null;
  switch (drawsFrom.kind) {
    case 'machine': {
      const joined = joinedCompartments(machine).find((group) => group.includes(drawn)) ?? [];
      const isSame = drawsFrom.machineId === machine.id && joined.some((each) => each.id === drawsFrom.compartmentId);
      return isSame ? 'machine' : null;
    }
    case 'rig':
      return 'rig';
    default:
      // Carried: filled at the machine, where the vessel holds what the machine's holds.
      return (drawsFrom.kind === 'own-hopper') === (drawn.kind !== 'tank') ? 'machine' : null;
  }
}
