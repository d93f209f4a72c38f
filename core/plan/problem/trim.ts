import type { Book, HandMethod } from '../../book/index.ts';
import { treatingMinutes, trimTool } from '../../reach/index.ts';
import { drawsOn } from './draws.ts';
import type { Option, TaskFacts, Trim } from './options.ts';
import type { EquippedRig } from './rigs.ts';
import { minutesToMs } from './scale.ts';

/** A hand method of the rig that could do the whole task, and by how much it delivers more than the mix asks for. */
export type Tool = { readonly hand: HandMethod; readonly option: Option; readonly factor: number };

/**
 * What a machine leaves, treated by a hand tool of the same rig: see `trimTool`. A tool on a tank of the rig draws on that tank. Null
 * where the rig has no tool that may be used there.
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
  const machine = equipped.machines.find((each) => each.id === option.machineIds[0]);
  const head = machine?.heads.find((each) => each.id === option.headId);
  const best = machine === undefined || head === undefined ? null : trimTool(machine, head, tools);
  if (best === null) return null;
  const { tool, source } = best;
  const compartment = (source === 'machine' ? option : tool.option).draws[0]?.compartment ?? -1;
  const draws = drawsOn(compartment, facts.demand, (tool.factor * leftUnits) / wholeUnits);
  const minutes = treatingMinutes(book, tool.option.method, leftUnits, facts.demand.passes, facts.farthestFt);
  if (draws === null || minutes === null) return null;
  const { method, handMethodId } = tool.option;
  return { method, handMethodId, areaUnits: leftUnits, serviceMs: minutesToMs(minutes), draws };
}
