export {
  COMMAND_GROUPS,
  type Command,
  type CommandGroup,
  commandForKey,
  GROUP_TITLES,
  IS_MAC,
  isCharacterKey,
  type KeyPress,
  keyName,
  keyWords,
  searchCommands,
} from './command.ts';
export { CommandButton } from './command-button.tsx';
export { CommandMenu } from './command-menu.tsx';
export { useCommandKeys } from './keys.ts';
export { COMMANDS, commandNamed } from './registry.ts';
export { SUBJECT_MENUS, type Subject, subjectAt } from './subjects.ts';
export { runCommand, useOffer } from './use-command.ts';
