import type { AppError } from '../../core/base/index.ts';
import { PROGRAM_VERSION } from '../program.ts';
import { type Answer, UsageFault, type World } from './command.ts';
import { COMMANDS } from './commands/index.ts';
import { helpFor, helpForAll, usageOf } from './help.ts';
import { parseWords } from './parse.ts';

/** What a run leaves behind: texts for both streams and the exit code. */
export type Outcome = { readonly code: number; readonly out: string; readonly remarks: readonly string[] };

const USAGE = 2;

/** Runs one command line. Rejects only where the program has a fault. */
export async function runLine(words: readonly string[], world: World): Promise<Outcome> {
  const [first, ...rest] = words;
  const wantsJson = words.includes('--json');
  if (first === undefined) return { code: USAGE, out: '', remarks: [helpForAll(COMMANDS)] };
  if (first === '--help' || first === '-h' || first === 'help') return helpOn(rest[0], wantsJson);
  if (first === '--version') return { code: 0, out: PROGRAM_VERSION, remarks: [] };
  const command = COMMANDS.find(({ name }) => name === first);
  if (command === undefined) return unknownCommand(first, wantsJson);
  try {
    const typed = parseWords(
      command,
      rest.map((word) => (word === '-h' ? '--help' : word)),
    );
    if (typed.flags.has('help')) return { code: 0, out: helpFor(command), remarks: [] };
    const answer = await command.run(typed, world);
    if (!answer.ok) return failed(command.name, answer.error, wantsJson);
    return answered(command.name, answer.value, wantsJson);
  } catch (cause) {
    if (!(cause instanceof UsageFault)) throw cause;
    const hint = `Usage: ${usageOf(command)}`;
    return usage({ code: 'request-invalid', where: 'command line', detail: cause.message, hint }, wantsJson);
  }
}

function helpOn(name: string | undefined, wantsJson: boolean): Outcome {
  const command = COMMANDS.find((each) => each.name === name);
  if (command !== undefined) return { code: 0, out: helpFor(command), remarks: [] };
  if (name !== undefined && !name.startsWith('-')) return unknownCommand(name, wantsJson);
  return { code: 0, out: helpForAll(COMMANDS), remarks: [] };
}

function unknownCommand(name: string, wantsJson: boolean): Outcome {
  const detail = `There is no command "${name}".`;
  const hint = `Commands: ${COMMANDS.map((each) => each.name).join(', ')}; swardway --help explains them.`;
  return usage({ code: 'request-invalid', where: 'command line', detail, hint }, wantsJson);
}

function usage(error: AppError, wantsJson: boolean): Outcome {
  return {
    code: USAGE,
    out: wantsJson ? toJson({ error }) : '',
    remarks: [`swardway: ${error.detail}`, error.hint],
  };
}

function failed(command: string, error: AppError, wantsJson: boolean): Outcome {
  // A fault of the program that a helper thread told about is no fault of the input.
  const code = error.code === 'internal' ? 70 : 1;
  return { code, out: wantsJson ? toJson({ error }) : '', remarks: errorLines(command, error) };
}

function answered(command: string, answer: Answer, wantsJson: boolean): Outcome {
  const { failure } = answer;
  return {
    code: failure?.code ?? 0,
    out: wantsJson ? toJson(answer.json) : answer.text(),
    remarks: [...answer.remarks, ...(failure === undefined ? [] : errorLines(command, failure.error))],
  };
}

/** File and place, what is wrong, what to do. */
function errorLines(command: string, error: AppError): readonly string[] {
  return [`swardway ${command}: ${error.where}: ${error.detail} [${error.code}]`, `  ${error.hint}`];
}

function toJson(value: object): string {
  return JSON.stringify(value, null, 1);
}

/** What is printed when the program itself is at fault. */
export function faultLine(cause: unknown): string {
  const told = cause instanceof Error ? `${cause.name}: ${cause.message}` : String(cause);
  return `swardway: a fault in the program stopped it (${told.replace(/\s+/g, ' ')}). Nothing was changed by this; please report it with the command you typed.`;
}
