import { refuse } from '../stores/index.ts';
import type { Command } from './command.ts';

/** Runs a command, or says on screen why it cannot be done. */
export function runCommand(command: Command): void {
  const reason = command.whyNot();
  if (reason === null) command.run();
  else refuse(`${command.title()}: ${reason}`);
}
