import type { Book, HandMethod } from '../../book/index.ts';
import { treatingMinutes } from '../../reach/index.ts';
import { drawsOn } from './draws.ts';
import type { Option, TaskFacts, Trim } from './options.ts';
import type { EquippedRig } from './rigs.ts';
import { minutesToMs } from './scale.ts';

/** A hand method of the rig that could do the whole task, and by how much it delivers more than the mix asks for. */
export type Tool = { readonly hand: HandMethod; readonly option: Option; readonly factor: number };

/**
 * What a machine leaves, treated by a hand tool of the same rig: one that is filled out of what the machine draws on where there is
 * one, else the quickest. A tool on a tank of the rig draws on that tank. Null where the rig has no tool that may be used there.
 *
 * @param leftUnits ground that the machine leaves, whole ft2; `wholeUnits` is that of the task
 */
export function trimmedBy(
  book: Book,
  { equipped, facts }: { readonly equipped: EquippedRig; readonly facts: TaskFacts },
  option: Option,
  tools: readonly Tool[],
  leftUnits: number,
  wholeUnits: number,
): Trim | null {
  const ways = tools.flatMap((tool): readonly { readonly tool: Tool; readonly compartment: number }[] => {
    const compartment = drawnFrom(equipped, option, tool);
    return compartment === null ? [] : [{ tool, compartment }];
  });
  const own = option.draws[0]?.compartment;
  const [best] = ways.toSorted(
    (left, right) =>
      Number(right.compartment === own) - Number(left.compartment === own) ||
      left.tool.hand.minutesPer1000SqFt - right.tool.hand.minutesPer1000SqFt,
  );
  if (best === undefined) return null;
  const { tool, compartment } = best;
  const draws = drawsOn(compartment, facts.demand, (tool.factor * leftUnits) / wholeUnits);
  const minutes = treatingMinutes(book, tool.option.method, leftUnits, facts.demand.passes, facts.farthestFt);
  if (draws === null || minutes === null) return null;
  const { method, handMethodId } = tool.option;
  return { method, handMethodId, areaUnits: leftUnits, serviceMs: minutesToMs(minutes), draws };
}

/** Compartment that a tool draws on when it trims after a machine; null where that is another machine's, or another of its tanks. */
function drawnFrom(equipped: EquippedRig, option: Option, { hand, option: own }: Tool): number | null {
  const machines = option.draws[0]?.compartment;
  const tools = own.draws[0]?.compartment;
  if (machines === undefined || tools === undefined) return null;
  switch (hand.drawsFrom.kind) {
    case 'machine':
      return tools === machines ? machines : null;
    case 'rig':
      return tools;
    default:
      // Carried: filled at the machine, where the vessel holds what the machine's holds.
      return equipped.compartments[tools]?.kind === equipped.compartments[machines]?.kind ? machines : null;
  }
}
