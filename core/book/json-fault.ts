/** Where a text stops being JSON, and what could have stood there. */
export type JsonFault = { readonly position: number; readonly expected: string };

const SPACE = /[ \t\n\r]*/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const SCALAR = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])|true\b|false\b|null\b/y;

/** What the walker waits for. */
type State = 'value' | 'first-item' | 'first-key' | 'key' | 'after-value';

/**
 * Walks a text by the grammar of RFC 8259 and gives the first place where it breaks. Open brackets are kept on a list instead of
 * the call stack, so that any nesting can be walked. For a text that is JSON the position is its end.
 */
export function findJsonFault(text: string): JsonFault {
  const open: ('[' | '{')[] = [];
  let state: State = 'value';
  let position = skip(SPACE, text, 0);
  while (!(state === 'after-value' && open.length === 0)) {
    const step = advance(text, position, state, open);
    if ('expected' in step) return step;
    state = step.state;
    position = skip(SPACE, text, step.position);
  }
  return { position, expected: position < text.length ? 'the end of the file' : 'nothing more' };
}

type Step = { readonly state: State; readonly position: number } | JsonFault;

function advance(text: string, position: number, state: State, open: ('[' | '{')[]): Step {
  const character = text[position];
  if (state === 'after-value') return afterValue(text, position, open);
  if (state === 'first-key' || state === 'key') {
    if (character === '}' && state === 'first-key') return close(position, open);
    return readKey(text, position, state);
  }
  if (character === ']' && state === 'first-item') return close(position, open);
  if (character === '{' || character === '[') {
    open.push(character);
    return { state: character === '{' ? 'first-key' : 'first-item', position: position + 1 };
  }
  return readScalar(text, position);
}

function afterValue(text: string, position: number, open: ('[' | '{')[]): Step {
  const inside = open.at(-1);
  const character = text[position];
  if (character === ',') return { state: inside === '{' ? 'key' : 'value', position: position + 1 };
  if (character === (inside === '{' ? '}' : ']')) return close(position, open);
  return { position, expected: inside === '{' ? '"," or "}"' : '"," or "]"' };
}

function close(position: number, open: ('[' | '{')[]): Step {
  open.pop();
  return { state: 'after-value', position: position + 1 };
}

function readKey(text: string, position: number, state: State): Step {
  if (text[position] !== '"') {
    const expected = state === 'first-key' ? 'a name in quotation marks or "}"' : 'a name in quotation marks';
    return { position, expected };
  }
  const name = readText(text, position, 'the end of a name');
  if ('expected' in name) return name;
  const colon = skip(SPACE, text, name.position);
  return text[colon] === ':' ? { state: 'value', position: colon + 1 } : { position: colon, expected: '":"' };
}

function readScalar(text: string, position: number): Step {
  if (text[position] === '"') return readText(text, position, 'the end of a text');
  const end = skip(SCALAR, text, position);
  return end > position ? { state: 'after-value', position: end } : { position, expected: 'a value' };
}

/** Walks over a text in quotation marks, character by character, so that its length does not matter. */
function readText(text: string, start: number, expected: string): Step {
  let position = start + 1;
  while (position < text.length) {
    const code = text.charCodeAt(position);
    if (code === QUOTATION_MARK) return { state: 'after-value', position: position + 1 };
    if (code < FIRST_PRINTABLE) return { position, expected };
    const end = code === BACKSLASH ? skip(ESCAPE, text, position) : position + 1;
    if (end === position) return { position: position + 1, expected: 'an escape of JSON such as \\n' };
    position = end;
  }
  return { position, expected };
}

const QUOTATION_MARK = 0x22;
const BACKSLASH = 0x5c;
const FIRST_PRINTABLE = 0x20;

/** The position behind a match of a sticky expression, or the same position without one. */
function skip(expression: RegExp, text: string, position: number): number {
  expression.lastIndex = position;
  return expression.test(text) ? expression.lastIndex : position;
}
