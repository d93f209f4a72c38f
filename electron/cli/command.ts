import path from 'node:path';
import type { AppError, Result } from '../../core/base/index.ts';

/** A word that a command takes by its place; only the last ones may be left out. */
export type Operand = { readonly name: string; readonly words: string; readonly optional?: true };
/**
 * A word that a command takes by its name; `value` names what follows it, null where nothing does. One that is `many` may be
 * given more than once.
 */
export type Option = {
  readonly name: string;
  readonly value: string | null;
  readonly words: string;
  readonly many?: true;
};

/** What was typed, taken apart. */
export type Typed = {
  /** Without those that were left out. */
  readonly operands: Readonly<Record<string, string>>;
  readonly options: Readonly<Record<string, string>>;
  /** Values of options that may be given more than once. */
  readonly lists: Readonly<Record<string, readonly string[]>>;
  readonly flags: ReadonlySet<string>;
};

/** What a command may use of the world besides files. */
export type World = {
  /** Folder of the built bundles. */
  readonly bundleFolder: string;
  /** Writes one line for people while the command works. */
  readonly tell: (line: string) => void;
  /** Calls back once when the user asks to stop; the returned function takes that back. */
  readonly onInterrupt: (stop: () => void) => () => void;
};

/** What a command answers. */
export type Answer = {
  /** The one object of --json. */
  readonly json: object;
  /** The same for people. */
  readonly text: () => string;
  /** Remarks for standard error, in both forms: warnings, where a file went. */
  readonly remarks: readonly string[];
  /** Set where there is an answer and the run still counts as failed. */
  readonly failure?: { readonly code: 1 | 3; readonly error: AppError };
};

export type Command = {
  readonly name: string;
  /** One sentence. */
  readonly summary: string;
  /** What it does in detail, for the help of this command and for docs/cli.md. One paragraph each. */
  readonly details: readonly string[];
  readonly operands: readonly Operand[];
  readonly options: readonly Option[];
  /** Options without which the command makes no sense. */
  readonly required?: readonly string[];
  /** What follows the name in the line of usage, where the list of options would be too long to read. */
  readonly usage?: string;
  /** File of docs/schemas that describes the object of --json. */
  readonly schema: string;
  readonly example: string;
  readonly run: (typed: Typed, world: World) => Promise<Result<Answer>>;
};

/** Options that every command takes. */
export const COMMON_OPTIONS: readonly Option[] = [
  { name: 'json', value: null, words: 'print exactly one JSON object instead of tables' },
  { name: 'help', value: null, words: 'explain the command' },
];

/** A command line that makes no sense: exit code 2. */
export class UsageFault extends Error {}

/** The file that an operand or an option names, with its whole path, so that messages can tell its folder. */
export function fileOf(typed: Typed, name: string): string {
  return path.resolve(typed.operands[name] ?? typed.options[name] ?? '');
}
