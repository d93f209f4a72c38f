import path from 'node:path';
import { stripSource } from './imports.ts';

type Sources = ReadonlyMap<string, string>;

/** What a file hands on under its own name: where a name is declared in it, and what it takes from other files. */
type Exports = {
  /** Line of each declaration, from 0. */
  readonly declared: ReadonlyMap<string, number>;
  /** Names by the file that they come from; null for all of its names. */
  readonly passedOn: readonly { readonly from: string; readonly names: readonly string[] | null }[];
};

/** Parts whose doors are asked. */
const PARTS = ['core/', 'electron/'] as const;

const DECLARATION =
  /^export\s+(?:async\s+|abstract\s+|declare\s+)*(?:function\s*\*?|const|let|class|type|interface)\s+([\w$]+)/gm;
const PASSED_ON = /^export\s+(?:type\s+)?(?:\*|\{([^{}]*)\})\s*from\s*"#(\d+)#"/gm;

const exportsOf = (file: string, text: string): Exports => {
  const { code, strings } = stripSource(text);
  const declared = new Map(
    [...code.matchAll(DECLARATION)].map(({ 1: name = '', index }) => [
      name,
      code.slice(0, index).split('\n').length - 1,
    ]),
  );
  const passedOn = [...code.matchAll(PASSED_ON)].map(({ 1: list, 2: mark = '' }) => ({
    from: path.posix.join(path.posix.dirname(file), strings[Number(mark)] ?? ''),
    names: list === undefined ? null : namesIn(list),
  }));
  return { declared, passedOn };
};

/** The names that `a, type B, c as d` takes, as they are declared. */
const namesIn = (list: string): readonly string[] =>
  list
    .split(',')
    .map((each) => each.trim().replace(/^type\s+/, ''))
    .map((each) => each.split(/\s+as\s+/)[0] ?? '')
    .filter((name) => name !== '');

/** Whether a docstring with words in it ends on the line before. */
const isTold = (lines: readonly string[], declaration: number): boolean => {
  if (!lines[declaration - 1]?.trimEnd().endsWith('*/')) return false;
  const above = lines.slice(0, declaration).join('\n');
  return /[a-z]/i.test(above.slice(above.lastIndexOf('/**')));
};

/** What the doors of core and electron export without saying what it is, a line each. */
export const checkDocstrings = (sources: Sources): readonly string[] => {
  const known = new Map<string, Exports>();
  const read = (file: string): Exports => {
    const exports = known.get(file) ?? exportsOf(file, sources.get(file) ?? '');
    known.set(file, exports);
    return exports;
  };
  const untold = new Set<string>();
  const ask = (file: string, names: readonly string[] | null): void => {
    const { declared, passedOn } = read(file);
    const lines = (sources.get(file) ?? '').split('\n');
    for (const [name, line] of declared) {
      if (names !== null && !names.includes(name)) continue;
      if (!isTold(lines, line))
        untold.add(`${file}:${line + 1} may not export ${name} untold; allowed: with a docstring`);
    }
    const rest = names?.filter((name) => !declared.has(name)) ?? null;
    for (const { from, names: passed } of passedOn) {
      const wanted = rest === null ? passed : (passed?.filter((name) => rest.includes(name)) ?? rest);
      if (sources.has(from) && wanted?.length !== 0) ask(from, wanted);
    }
  };
  for (const file of sources.keys()) {
    if (PARTS.some((part) => file.startsWith(part)) && file.endsWith('/index.ts')) ask(file, null);
  }
  return [...untold];
};
