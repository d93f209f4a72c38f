import { spawnSync } from 'node:child_process';
import { copyFileSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../../electron/cli/index.ts';
import { withReference } from '../../../electron/tools/cli-page.ts';
import { buildFirst, here, jsonOf, root, sampleFile, scratchFolder, swardway } from './support.ts';

const page = readFileSync(path.join(root, 'docs/cli.md'), 'utf8');

beforeAll(buildFirst, 120_000);

describe('help', () => {
  test('names every command and its exit codes', async () => {
    const width = Math.max(...COMMANDS.map(({ name }) => name.length));
    for (const words of [['--help'], ['help'], ['-h']]) {
      const { code, out, remarks } = await here(words);
      expect(code).toBe(0);
      expect(remarks).toBe('');
      for (const { name, summary } of COMMANDS) expect(out).toContain(`${name.padEnd(width)}  ${summary}`);
    }
  });

  test.each(COMMANDS.map((each) => [each.name, each] as const))('%s explains itself', async (name, command) => {
    const { code, out } = await here([name, '--help']);
    expect(code).toBe(0);
    expect(out).toContain(`Usage: swardway ${name}`);
    for (const { name: operand } of command.operands) expect(out).toContain(`  ${operand} `);
    for (const { name: option } of command.options) expect(out).toContain(`  --${option}`);
    expect((await here(['help', name])).out).toBe(out);
  });

  test('the version is the one of the package', () => {
    const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string };
    expect(swardway(['--version']).out.trim()).toBe(version);
  });
});

describe('a wrong command line ends with 2, a usage line and nothing on standard output', () => {
  test.each([
    [[], 'Usage: swardway COMMAND'],
    [['mow'], 'There is no command "mow"'],
    [['measure'], 'FILE is missing'],
    [['judge', 'book.json'], 'PLAN is missing'],
    [['measure', 'a', 'b'], '"b" is one word too many'],
    [['plan', 'book.json', '--fast'], "Unknown option '--fast'"],
    [['plan', 'book.json', '--seed', 'x'], '--seed needs a whole number'],
    [['plan', 'book.json', '--seed=-1'], '--seed needs a whole number'],
    [['plan', 'book.json', '--seed', '-1'], '--seed needs a whole number from 0 to 4294967295, not "-1"'],
    [['plan', 'book.json', '--seconds', '-3'], '--seconds needs a number above 0 and up to 3600, not "-3"'],
    [['plan', 'book.json', '--seconds', '-.5'], '--seconds needs a number above 0'],
    [['plan', 'book.json', '--iterations', '-1e3'], '--iterations needs a whole number'],
    [['plan', 'book.json', '--date', '-3'], '--date needs a date like'],
    [['plan', 'book.json', '--out', '--progress'], '--out needs a value, but "--progress" follows'],
    [['plan', 'book.json', '--balance', '-1'], '--balance needs a number of dollars from 0 to 1000, not "-1"'],
    [['plan', 'book.json', '--balance', '1001'], '--balance needs a number of dollars from 0 to 1000'],
    [['plan', 'book.json', '--seconds', '0'], '--seconds needs a number above 0'],
    [['plan', 'book.json', '--iterations', '1.5'], '--iterations needs a whole number'],
    [['plan', 'book.json', '--date', '16.3.2027'], '--date needs a date like'],
    [['plan', 'book.json', '--out='], '--out needs a value'],
    [['import', 'lawns.csv', '--into', 'book.json'], '--out is missing'],
    [['report', 'book.json', 'plan.json', '--sheet', 'poster'], 'run-sheet'],
    [['report', 'book.json'], 'PLAN is missing: sheets of a day are made from a plan'],
    [['report', 'book.json', 'plan.json', '--paper', 'foolscap'], 'Choose letter or a4.'],
  ] as const)('%j', async (words, told) => {
    const run = await here(words);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.remarks).toContain(told);
  });

  test('as the program that is started says it', () => {
    expect(swardway(['mow'])).toMatchObject({
      code: 2,
      out: '',
      remarks: expect.stringContaining('There is no command "mow"'),
    });
  });

  test('with --json the same is one object', () => {
    const run = swardway(['plan', 'book.json', '--seed', 'x', '--json']);
    expect(run.code).toBe(2);
    const { error } = jsonOf<{ error: { code: string } }>(run, 'failure');
    expect(error.code).toBe('request-invalid');
  });
});

describe('a fault in the program', () => {
  test('is told in one line, with exit code 70', () => {
    const scratch = scratchFolder();
    // A copy without the worker that plans: something no input can bring about.
    copyFileSync(path.join(root, 'dist/electron/cli.cjs'), scratch.at('cli.cjs'));
    const words = [scratch.at('cli.cjs'), 'plan', sampleFile('residential-day'), '--iterations', '3', '--json'];
    const environment = { ...process.env, NODE_PATH: path.join(root, 'node_modules') };
    const run = spawnSync(process.execPath, words, { encoding: 'utf8', env: environment });
    scratch.remove();
    expect(run.status).toBe(70);
    expect(run.stderr).not.toMatch(/\n\s+at .+:\d+/);
    expect(JSON.parse(run.stdout)).toMatchObject({ error: { code: 'internal' } });
  });

  test('a reader that goes away is no fault', () => {
    const script = `"$0" "$@" | head -n 1`;
    const words = ['-c', script, process.execPath, path.join(root, 'dist/electron/cli.cjs'), 'measure'];
    const run = spawnSync('sh', [...words, sampleFile('four-day-round')], { encoding: 'utf8' });
    expect(run.stdout).toMatch(/^property/);
    expect(run.stderr).toBe('');
  });
});

describe('docs/cli.md', () => {
  test('its reference is the table of commands (npm run schemas)', () => {
    expect(withReference(page)).toBe(page);
  });

  test('every command has a published schema', () => {
    for (const { schema } of COMMANDS) {
      expect(readdirSync(path.join(root, 'docs/schemas'))).toContain(`${schema}.schema.json`);
    }
  });

  test('lists a code once under a heading', () => {
    const sections = page.split(/^#{2,3} /m).filter((each) => each.includes('| code |'));
    let found = 0;
    for (const section of sections) {
      const codes = [...section.matchAll(/^\| (`.*?) \|/gm)].flatMap((row) =>
        [...(row[1] ?? '').matchAll(/`([a-z0-9-]+)`/g)].map((match) => match[1]),
      );
      found += codes.length;
      expect(codes.filter((code, at) => codes.indexOf(code) !== at)).toEqual([]);
    }
    expect(found).toBeGreaterThan(80);
  });

  test('lists every code that the sources give', () => {
    const listed = new Set([...page.matchAll(/`([a-z0-9-]+)`/g)].map((match) => match[1]));
    const codes = sourceCodes();
    expect(codes.size).toBeGreaterThan(80);
    expect([...codes].filter((code) => !listed.has(code)).sort()).toEqual([]);
  });
});

/** Codes of errors, issues, reasons and violations, read from the sources. */
function sourceCodes(): ReadonlySet<string> {
  const files = ['core', 'electron/cli'].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => path.join(root, folder, name)),
  );
  const codes = new Set<string>();
  const take = (text: string, pattern: RegExp): void => {
    for (const match of text.matchAll(pattern)) codes.add(match[1] ?? '');
  };
  for (const file of files) {
    const text = readFileSync(file, 'utf8');
    take(text, /\bissue\(\s*'(?:error|warning|note)',\s*'([a-z0-9-]+)'/g);
    take(text, /\berr\(\s*'([a-z0-9-]+)'/g);
    take(text, /\b(?:bad|refuse|reject|fault)\(\s*'([a-z0-9-]+)',/g);
    take(text, /\brigId, code: '([a-z0-9-]+)'/g);
    for (const union of text.matchAll(
      /(?:ErrorCode|ReachReason) =((?:\s*\| '[a-z-]+')+)|readonly code:((?:\s*\| '[a-z-]+')+)/g,
    )) {
      take(union[0], /'([a-z-]+)'/g);
    }
  }
  return codes;
}
