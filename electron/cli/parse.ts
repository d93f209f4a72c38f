import { parseArgs } from 'node:util';
import { COMMON_OPTIONS, type Command, type Typed, UsageFault } from './command.ts';

/** Takes the words after a command's name apart. Throws UsageFault. */
export function parseWords(command: Command, words: readonly string[]): Typed {
  const known = [...command.options, ...COMMON_OPTIONS];
  const { values, positionals } = split(known, words);
  const options: Record<string, string> = {};
  const lists: Record<string, readonly string[]> = {};
  const flags = new Set<string>();
  for (const [name, value] of Object.entries(values)) {
    if (typeof value === 'string') options[name] = value;
    else if (Array.isArray(value)) lists[name] = value.map(String);
    else if (value === true) flags.add(name);
  }
  if (flags.has('help')) return { operands: {}, options, lists, flags };
  return { operands: namedOperands(command, positionals, options), options, lists, flags };
}

function split(known: Command['options'], words: readonly string[]) {
  try {
    return parseArgs({
      args: joinValues(known, words),
      options: Object.fromEntries(
        known.map(({ name, value, many }) => [
          name,
          { type: value === null ? ('boolean' as const) : ('string' as const), multiple: many === true },
        ]),
      ),
      allowPositionals: true,
      strict: true,
    });
  } catch (cause) {
    // The parser's own words name the option; only their first sentence is of use to people.
    const told = cause instanceof Error ? (cause.message.split(/[.\n]/, 1)[0] ?? '') : '';
    throw new UsageFault(`${told}.`);
  }
}

/**
 * Writes "--seconds -3" as "--seconds=-3", so that a number below 0 reaches the option that judges it. Throws UsageFault where
 * another option follows instead of the value.
 */
function joinValues(known: Command['options'], words: readonly string[]): string[] {
  const end = words.indexOf('--');
  const named = end < 0 ? words : words.slice(0, end);
  const joined: string[] = [];
  for (let at = 0; at < named.length; at += 1) {
    const word = named[at] ?? '';
    const value = named[at + 1];
    const takesValue = known.some((each) => each.value !== null && word === `--${each.name}`);
    if (!takesValue || value === undefined) {
      joined.push(word);
      continue;
    }
    const isOption = /^-./.test(value) && !/^-[\d.]/.test(value);
    if (isOption) throw new UsageFault(`${word} needs a value, but "${value}" follows.`);
    joined.push(`${word}=${value}`);
    at += 1;
  }
  return [...joined, ...words.slice(named.length)];
}

function namedOperands(
  command: Command,
  given: readonly string[],
  options: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const missing = command.operands[given.length];
  if (missing !== undefined && missing.optional !== true)
    throw new UsageFault(`${missing.name} is missing: ${missing.words}.`);
  if (given.length > command.operands.length) {
    throw new UsageFault(`"${given[command.operands.length]}" is one word too many.`);
  }
  for (const [name, value] of Object.entries(options)) {
    if (value === '') throw new UsageFault(`--${name} needs a value.`);
  }
  const empty = given.indexOf('');
  if (empty >= 0) throw new UsageFault(`${command.operands[empty]?.name} is empty.`);
  for (const name of command.required ?? []) {
    if (options[name] === undefined) throw new UsageFault(`--${name} is missing.`);
  }
  return Object.fromEntries(given.map((word, index) => [command.operands[index]?.name ?? '', word]));
}

/** The whole number after an option; undefined where it was not given. */
export function wholeNumber(typed: Typed, name: string, least: number, most: number): number | undefined {
  const text = typed.options[name];
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^-?\d+$/.test(text) || value < least || value > most) {
    throw new UsageFault(`--${name} needs a whole number from ${least} to ${most}, not "${text}".`);
  }
  return value;
}

/** The number of seconds after an option; undefined where it was not given. */
export function secondsOf(typed: Typed, name: string, most: number): number | undefined {
  const text = typed.options[name];
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^\d*\.?\d+$/.test(text) || value <= 0 || value > most) {
    throw new UsageFault(`--${name} needs a number above 0 and up to ${most}, not "${text}".`);
  }
  return value;
}

/** The amount of dollars after an option; undefined where it was not given. */
export function dollarsOf(typed: Typed, name: string, most: number): number | undefined {
  const text = typed.options[name];
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^\d*\.?\d+$/.test(text) || value > most) {
    throw new UsageFault(`--${name} needs a number of dollars from 0 to ${most}, not "${text}".`);
  }
  return value;
}

/** The date after an option, YYYY-MM-DD; undefined where it was not given. */
export function dateOf(typed: Typed, name: string): string | undefined {
  const text = typed.options[name];
  if (text === undefined) return undefined;
  if (!/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(text)) {
    throw new UsageFault(`--${name} needs a date like 2027-03-16, not "${text}".`);
  }
  return text;
}
