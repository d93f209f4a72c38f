import { COMMON_OPTIONS, type Command, type Option } from './command.ts';

const EXIT_CODES: readonly (readonly [string, string])[] = [
  ['0', 'done'],
  ['1', 'the input is wrong; the message names the file, the place and the remedy'],
  ['2', 'the command line is wrong'],
  ['3', 'no plan possible: not one visit could be placed'],
  ['70', 'a fault in the program'],
];

/** "swardway plan BOOK [--round ID] [--seed N]" */
export function usageOf(command: Command): string {
  if (command.usage !== undefined) return `swardway ${command.name} ${command.usage}`;
  const operands = command.operands.map(({ name, optional }) => (optional ? `[${name}]` : name));
  const required = new Set(command.required ?? []);
  const options = [...command.options, ...COMMON_OPTIONS.filter(({ name }) => name === 'json')].map((each) =>
    required.has(each.name) ? typedAs(each) : `[${typedAs(each)}]`,
  );
  return ['swardway', command.name, ...operands, ...options].join(' ');
}

/** "--round ID" */
export function typedAs({ name, value }: Option): string {
  return value === null ? `--${name}` : `--${name} ${value}`;
}

/** Help for all commands. */
export function helpForAll(commands: readonly Command[]): string {
  const width = Math.max(...commands.map(({ name }) => name.length));
  return [
    'Usage: swardway COMMAND ...',
    '',
    'Plans days of lawn treatment: areas, loads, refills, routes. Works without a network.',
    '',
    'Commands:',
    ...commands.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`),
    '',
    'BOOK is a book file (.swardway) or a book in its JSON form.',
    'Every command takes --json and --help; `swardway COMMAND --help` explains one.',
    '',
    'Exit codes:',
    ...EXIT_CODES.map(([code, words]) => `  ${code.padStart(2)}  ${words}`),
  ].join('\n');
}

/** Help for one command. */
export function helpFor(command: Command): string {
  const rows: (readonly [string, string])[] = [
    ...command.operands.map(({ name, words }) => [name, words] as const),
    ...[...command.options, ...COMMON_OPTIONS].map((each) => [typedAs(each), each.words] as const),
  ];
  const width = Math.max(...rows.map(([left]) => left.length));
  return [
    `Usage: ${usageOf(command)}`,
    '',
    command.summary,
    '',
    ...rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`),
    ...command.details.flatMap((each) => ['', ...wrap(each, 96)]),
    '',
    `Example: ${command.example}`,
  ].join('\n');
}

/** The reference part of docs/cli.md. */
export function referenceOf(commands: readonly Command[]): string {
  return commands.map(sectionOf).join('\n');
}

function sectionOf(command: Command): string {
  const rows = [
    ...command.operands.map(({ name, words }) => `| \`${name}\` | ${words} |`),
    ...[...command.options, ...COMMON_OPTIONS].map((each) => `| \`${typedAs(each)}\` | ${each.words} |`),
  ];
  return [
    `### ${command.name}`,
    '',
    command.summary,
    '',
    '```sh',
    usageOf(command),
    '```',
    '',
    '| word | meaning |',
    '| --- | --- |',
    ...rows,
    ...command.details.flatMap((each) => ['', ...wrap(each, 120)]),
    '',
    `Example: \`${command.example}\``,
    '',
    `Answer of \`--json\`: [${command.schema}.schema.json](schemas/${command.schema}.schema.json)`,
    '',
  ].join('\n');
}

function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
