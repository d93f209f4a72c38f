/** One import found in a source text. */
export type FoundImport = {
  readonly specifier: string;
  /** True when only types come over: nothing of it is left at run time. */
  readonly typeOnly: boolean;
  readonly line: number;
};

/** A source text with comments blanked out and every string replaced by a numbered mark; line breaks are kept. */
type Stripped = { readonly code: string; readonly strings: readonly string[] };

/** A slash after one of these begins a regular expression; after anything else it divides or closes a tag. */
const BEFORE_PATTERN = /(?:^|=>|[(,=:[!&|?{;+\-*%~^\n]|\b(?:return|typeof|case|of|in|void|delete|await|yield))\s*$/;

const endOfPattern = (text: string, start: number): number | null => {
  let inClass = false;
  for (let at = start + 1; at < text.length; at += 1) {
    const letter = text[at];
    if (letter === '\n') return null;
    if (letter === '\\') at += 1;
    else if (letter === '[') inClass = true;
    else if (letter === ']') inClass = false;
    else if (letter === '/' && !inClass) return at + 1;
  }
  return null;
};

/** The end of a quoted string: just behind the closing quote, or at the line end when it is not closed. */
const endOfString = (text: string, start: number): number => {
  for (let at = start + 1; at < text.length; at += 1) {
    if (text[at] === '\\') at += 1;
    else if (text[at] === text[start]) return at + 1;
    else if (text[at] === '\n') return at;
  }
  return text.length;
};

const blank = (text: string): string => text.replace(/[^\n]/g, ' ');

/** Reads source text once, left to right; a small scanner, not a parser. */
class Scanner {
  private code = '';
  private readonly strings: string[] = [];
  private at = 0;
  /** For each open template hole, the depth of braces inside it. */
  private readonly holes: number[] = [];

  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  scan(): Stripped {
    while (this.at < this.text.length) this.step();
    return { code: this.code, strings: this.strings };
  }

  private step(): void {
    const two = this.text.slice(this.at, this.at + 2);
    const letter = two.charAt(0);
    if (two === '//') this.skipTo(this.text.indexOf('\n', this.at));
    else if (two === '/*') this.skipTo(this.text.indexOf('*/', this.at + 2), 2);
    else if (letter === "'" || letter === '"') this.takeString();
    else if (letter === '`') this.takeTemplate(this.at + 1);
    else if (letter === '/' && BEFORE_PATTERN.test(this.code.slice(-20))) this.takePattern();
    else if (letter === '{' || letter === '}') this.brace(letter);
    else this.copy();
  }

  private copy(): void {
    this.code += this.text[this.at];
    this.at += 1;
  }

  private skipTo(found: number, extra = 0): void {
    const end = found < 0 ? this.text.length : found + extra;
    this.code += blank(this.text.slice(this.at, end));
    this.at = end;
  }

  private takeString(): void {
    const end = endOfString(this.text, this.at);
    this.code += `"#${this.strings.length}#"`;
    this.strings.push(this.text.slice(this.at + 1, end - 1));
    this.at = end;
  }

  private takePattern(): void {
    const end = endOfPattern(this.text, this.at);
    if (end === null) this.copy();
    else this.skipTo(end);
  }

  /** Reads template text from a position to its end or its next hole; a template without holes counts as a string. */
  private takeTemplate(start: number): void {
    for (let at = start; at < this.text.length; at += 1) {
      const letter = this.text[at];
      if (letter === '\\') at += 1;
      else if (letter === '`' || (letter === '$' && this.text[at + 1] === '{')) {
        const chunk = this.text.slice(start, at);
        if (letter === '`' && this.text[start - 1] === '`') {
          this.code += `"#${this.strings.length}#"`;
          this.strings.push(chunk);
        }
        this.code += blank(chunk).replace(/ /g, '');
        this.at = at + (letter === '`' ? 1 : 2);
        if (letter === '$') this.holes.push(0);
        return;
      }
    }
    this.at = this.text.length;
  }

  private brace(letter: string): void {
    const depth = this.holes.at(-1);
    if (depth === undefined) this.copy();
    else if (letter === '}' && depth === 0) {
      this.holes.pop();
      this.takeTemplate(this.at + 1);
    } else {
      this.holes[this.holes.length - 1] = depth + (letter === '{' ? 1 : -1);
      this.copy();
    }
  }
}

/** Source text without comments, regular expressions and string contents. */
export const stripSource = (text: string): Stripped => new Scanner(text).scan();

/** The address form counts for source files alone. */
const SOURCE_ADDRESS = /\.(?:ts|tsx|mjs)$/;

const IMPORT_FORMS = [
  // import x from, import { a, type B } from, import type C from, export { a } from, export * as b from, export type { D } from
  /\b(?:import|export)\s+(?<clause>(?:type\s+)?(?:[\w$\s,*]|\{[^{}]*\})*?)\s*\bfrom\s*"#(?<mark>\d+)#"/g,
  // import 'x'
  /\bimport\s*"#(?<mark>\d+)#"/g,
  // import('x') and require('x'); import('x').T in a type is counted too, as if it carried code
  /\b(?:import|require)\s*\(\s*"#(?<mark>\d+)#"/g,
  // new URL('./worker.ts', import.meta.url); addresses of other files are no imports
  /\bnew\s+URL\s*\(\s*"#(?<mark>\d+)#"\s*,\s*import\.meta\.url/g,
];

/** True for `type X`, `type { A }` and `{ type A, type B }`. */
const isTypeClause = (clause: string): boolean => {
  if (/^type\s+[\w{*]/.test(clause)) return true;
  const names = /^\{([^{}]*)\}$/.exec(clause.trim())?.[1];
  if (names === undefined) return false;
  const parts = names
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return parts.length > 0 && parts.every((name) => /^type\s/.test(name));
};

/** Every import of a TypeScript text, in order of line: static, re-export, dynamic, require and worker address. */
export const findImports = (text: string): readonly FoundImport[] => {
  const { code, strings } = stripSource(text);
  const found = IMPORT_FORMS.flatMap((form) =>
    [...code.matchAll(form)].flatMap((match) => {
      const { clause = '', mark = '' } = match.groups ?? {};
      if (match[0].startsWith('new') && !SOURCE_ADDRESS.test(strings[Number(mark)] ?? '')) return [];
      return {
        specifier: strings[Number(mark)] ?? '',
        typeOnly: isTypeClause(clause),
        line: code.slice(0, match.index).split('\n').length,
      };
    }),
  );
  return found.sort((a, b) => a.line - b.line);
};
