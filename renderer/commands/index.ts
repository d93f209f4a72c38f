export {
  COMMAND_GROUPS,
  type Command,
  type CommandGroup,
  commandForKey,
  isCharacterKey,
  type KeyPress,
  keyName,
  keyWords,
  searchCommands,
} from './command.ts';
export { IS_MAC, useCommandKeys } from './keys.ts';
export { offerPrinting } from './printing.ts';
export { COMMANDS } from './registry.ts';
export { runCommand } from './run.ts';
