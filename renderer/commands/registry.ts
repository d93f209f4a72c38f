import type { Command } from './command.ts';
import { bookCommands } from './groups/book.ts';
import { dayCommands } from './groups/day.ts';
import { drawCommands } from './groups/draw.ts';
import { editCommands } from './groups/edit.ts';
import { goCommands } from './groups/go.ts';
import { helpCommands } from './groups/help.ts';
import { paperCommands } from './groups/paper.ts';
import { roundCommands } from './groups/round.ts';
import { shedCommands } from './groups/shed.ts';
import { viewCommands } from './groups/view.ts';

/** Every command of the program, in the order of menu and help: a file for each group. */
export const COMMANDS: readonly Command[] = [
  ...bookCommands,
  ...editCommands,
  ...drawCommands,
  ...shedCommands,
  ...roundCommands,
  ...dayCommands,
  ...paperCommands,
  ...goCommands,
  ...viewCommands,
  ...helpCommands,
];

const byId = new Map(COMMANDS.map((command) => [command.id, command]));

/** The command with this id. A name that no command has is a fault of the program. */
export function commandNamed(id: string): Command {
  const command = byId.get(id);
  if (command === undefined) throw new Error(`no command is called ${id}`);
  return command;
}
