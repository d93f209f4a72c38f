import { parseSync } from 'vite';

/** A node of the syntax tree, as far as it is looked at here. */
type Node = { readonly type: string; readonly start: number; readonly end: number } & Readonly<Record<string, unknown>>;

/** Attributes that people read or hear. */
const READ = new Set(
  'label title aria-label aria-valuetext aria-roledescription tip placeholder whyNot leftLabel rightLabel hint caption alt note'.split(
    ' ',
  ),
);

const LETTER = /\p{L}/u;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { readonly type?: unknown }).type === 'string';

const childrenOf = (node: Node): readonly Node[] =>
  Object.values(node).flatMap((value) => (Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : []));

/** Literals with letters that an expression may come to: its branches and texts with holes, not what it compares or calls. */
function literalsOf(node: Node): readonly Node[] {
  switch (node.type) {
    case 'Literal':
      return typeof node.value === 'string' && LETTER.test(node.value) ? [node] : [];
    case 'TemplateLiteral': {
      const quasis = node.quasis as readonly { readonly value: { readonly raw: string } }[];
      return quasis.some(({ value }) => LETTER.test(value.raw)) ? [node] : [];
    }
    case 'ConditionalExpression':
      return [node.consequent, node.alternate].filter(isNode).flatMap(literalsOf);
    case 'LogicalExpression':
      return [node.left, node.right].filter(isNode).flatMap(literalsOf);
    case 'ParenthesizedExpression':
    case 'JSXExpressionContainer':
      return isNode(node.expression) ? literalsOf(node.expression) : [];
    default:
      return [];
  }
}

function wordsAt(node: Node): readonly Node[] {
  if (node.type === 'JSXText') return LETTER.test(String(node.value)) ? [node] : [];
  if (node.type === 'JSXElement' || node.type === 'JSXFragment')
    return (node.children as readonly Node[])
      .filter(({ type }) => type === 'JSXExpressionContainer')
      .flatMap(literalsOf);
  if (node.type !== 'JSXAttribute' || !isNode(node.value)) return [];
  const name = node.name as { readonly name: string };
  return READ.has(name.name) ? literalsOf(node.value) : [];
}

/** What a file of words comes to: what its functions give back, and the values of its constants and tables. */
function givenAt(node: Node): readonly Node[] {
  const key = {
    ReturnStatement: 'argument',
    ArrowFunctionExpression: 'body',
    Property: 'value',
    VariableDeclarator: 'init',
  };
  const value = node[key[node.type as keyof typeof key] ?? ''];
  const given = value as Node | null | undefined;
  return given === null || given === undefined || !isNode(given) ? [] : literalsOf(given);
}

/**
 * Words for people that stand in a source text itself, each as `file:line says "…"`. Names of the program's parts in code are none. In a
 * file that puts texts together, `…words.ts`, what is given back counts as well.
 */
export function findWords(file: string, text: string): readonly string[] {
  const isWords = file.endsWith('words.ts');
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) return [`${file} cannot be parsed: ${errors[0]?.message}`];
  const found: string[] = [];
  const walk = (node: Node): void => {
    for (const each of isWords ? givenAt(node) : wordsAt(node)) {
      const said = text.slice(each.start, each.end).trim().replace(/\s+/g, ' ');
      const lead = text.slice(each.start).search(/\S/);
      const line = text.slice(0, each.start + Math.max(0, lead)).split('\n').length;
      found.push(`${file}:${line} says ${said}; allowed: words of renderer/texts`);
    }
    for (const child of childrenOf(node)) walk(child);
  };
  walk(program as unknown as Node);
  return found;
}
