import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');

const documents = [
  ...['README.md', 'DEVELOPERS.md'],
  ...readdirSync(path.join(root, 'docs'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.md'))
    .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)).split(path.sep).join('/')),
];
const tests = new Set(
  readdirSync(path.join(root, 'tests'), { recursive: true, withFileTypes: true }).map((entry) => entry.name),
);
const { scripts } = JSON.parse(read('package.json')) as { readonly scripts: Readonly<Record<string, string>> };

/** What stands between backticks outside of blocks of code. */
function quoted(text: string): readonly string[] {
  return [...text.replace(/^```[\s\S]*?^```/gm, '').matchAll(/`([^`\n]+)`/g)].map(([, words = '']) => words);
}

/** A path of this project, without a star or a placeholder in it. */
const isPath = (words: string): boolean =>
  /^(core|electron|renderer|tests|docs|sample-routes)\/[\w./-]*$/.test(words) && !/NAME|YYYY/.test(words);

describe('the documents', () => {
  test.each(documents)('%s: folders and files that it names are there, and so are its commands', (file) => {
    const words = quoted(read(file));
    const missing = words.filter(isPath).filter((each) => !existsSync(path.join(root, each)) && !isSource(each));
    expect(missing).toEqual([]);
    const tested = words.filter((each) => /^[\w.-]+\.test\.ts$/.test(each)).filter((each) => !tests.has(each));
    expect(tested).toEqual([]);
    const commands = words.flatMap((each) => /^npm run ([\w:-]+)/.exec(each)?.[1] ?? []);
    expect(commands.filter((each) => scripts[each] === undefined)).toEqual([]);
  });

  test.each(documents)('%s: pages and pictures that it leads to are there', (file) => {
    const links = [...read(file).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target.split('#')[0] ?? '');
    const own = links.filter((each) => each !== '' && !/^[a-z]+:/.test(each));
    const missing = own.filter((each) => !existsSync(path.join(root, path.dirname(file), each)));
    expect(missing).toEqual([]);
  });

  /** A module may be named without its ending. */
  function isSource(name: string): boolean {
    return ['.ts', '.tsx', '.md'].some((ending) => existsSync(path.join(root, `${name}${ending}`)));
  }

  const rowsOf = (file: string, heading: RegExp): readonly string[] => {
    const lines = read(file).split('\n');
    const begin = lines.findIndex((line) => heading.test(line));
    const end = lines.findIndex((line, index) => index > begin && !line.startsWith('|'));
    return begin < 0 ? [] : lines.slice(begin + 2, end);
  };

  test.each<readonly [string, RegExp, number]>([
    ['docs/reliability.md', /^\| promise \|/, 12],
    ['docs/security.md', /^\| danger \|/, 7],
  ])('%s: each promise of its table names the test that proves it', (file, heading, least) => {
    const rows = rowsOf(file, heading);
    expect(rows.length).toBeGreaterThanOrEqual(least);
    const unproved = rows.filter((row) => {
      const proof = quoted(row.split('|').at(-2) ?? '');
      return !proof.some((each) => each.endsWith('.test.ts'));
    });
    expect(unproved).toEqual([]);
  });

  test('docs/accessibility.md: each criterion has one of the states, what holds says by what, and the rest what is missing', () => {
    const rows = rowsOf('docs/accessibility.md', /^\| criterion \|/).map((row) =>
      row.split('|').map((part) => part.trim()),
    );
    expect(rows.length).toBeGreaterThan(35);
    const states = ['holds', 'in part', 'looked at', 'not known', 'none in it'];
    const faults = rows.filter(([, criterion = '', state = '', shown = '', missing = '']) => {
      const isSaid =
        state === 'holds' || state === 'looked at' ? shown !== '' : missing !== '' || state === 'none in it';
      return !(/^\d\.\d/.test(criterion) && states.includes(state) && isSaid);
    });
    expect(faults).toEqual([]);
  });
});
