import type { XmlElement } from './element.ts';
import { malformed, tooMuch, XmlFault } from './faults.ts';
import { withReferences } from './references.ts';

/** Outlines lie some ten elements deep. */
const MOST_DEPTH = 60;
const MOST_ATTRIBUTES = 200;
/** Tags, comments and attributes together; as many are read in about two seconds (measured on two cores). */
const MOST_PIECES = 3_000_000;

type OpenElement = {
  /** With its prefix, as the end tag has to repeat it. */
  readonly fullName: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  readonly line: number;
  text: string;
};

/** Where reading is, and what is open. */
type Reader = {
  readonly text: string;
  at: number;
  pieces: number;
  line: number;
  /** Place of the end of the current line; the length of the text where it is the last one. */
  lineEnd: number;
  readonly open: OpenElement[];
  root: XmlElement | null;
};

/** Blanks and names as XML 1.0 has them (sections 2.2 and 2.3); those of JavaScript would let more pass. */
const BLANK = '[ \\t\\n]';
const NAME_START =
  'A-Za-z_:\\u00c0-\\u00d6\\u00d8-\\u00f6\\u00f8-\\u02ff\\u0370-\\u037d\\u037f-\\u1fff\\u200c\\u200d\\u2070-\\u218f\\u2c00-\\u2fef\\u3001-\\udfff\\uf900-\\ufdcf\\ufdf0-\\ufffd';
const NAME_TEXT = `[${NAME_START}][${NAME_START}.\\-0-9\\u00b7\\u0300-\\u036f\\u203f\\u2040]*`;
const NAME = new RegExp(NAME_TEXT, 'y');
const ATTRIBUTE = new RegExp(`${BLANK}+(${NAME_TEXT})${BLANK}*=${BLANK}*(?:"([^"<]*)"|'([^'<]*)')`, 'y');
const TAG_END = new RegExp(`${BLANK}*(/?)>`, 'y');
const NO_ATTRIBUTES: ReadonlyMap<string, string> = new Map();

/**
 * Reads an XML text without document types (XML 1.0, fifth edition; namespaces are left out). Each character is looked at a
 * fixed number of times, so that no text takes long. `lineOf` tells where a fault was, after one was thrown.
 */
export function createTreeReader(text: string): { readonly read: () => XmlElement; readonly lineOf: () => number } {
  const body = text.replace(/\r\n?/g, '\n');
  const lineEnd = endOfLine(body, 0);
  const reader: Reader = { text: body, at: 0, pieces: 0, line: 1, lineEnd, open: [], root: null };
  return { read: () => readTree(reader), lineOf: () => lineAt(reader) };
}

function readTree(reader: Reader): XmlElement {
  for (let next = nextTag(reader); next >= 0; next = nextTag(reader)) {
    takeText(reader, reader.text.slice(reader.at, next));
    reader.at = next;
    countPieces(reader, 1);
    takeMarkup(reader);
  }
  const [inner] = reader.open.slice(-1);
  if (inner !== undefined) throw malformed(`the element "${inner.fullName.slice(0, 40)}" is not closed`);
  takeText(reader, reader.text.slice(reader.at));
  if (reader.root === null) throw malformed('it has no elements');
  return reader.root;
}

function nextTag({ text, at }: Reader): number {
  return text.indexOf('<', at);
}

function takeText(reader: Reader, raw: string): void {
  const element = reader.open.at(-1);
  if (element !== undefined) {
    if (raw !== '') element.text += withReferences(raw);
  } else if (raw.trim() !== '' && raw.trim() !== '\ufeff') throw malformed('text outside of its elements');
}

function takeMarkup(reader: Reader): void {
  const { text, at } = reader;
  if (text.startsWith('</', at)) takeEnd(reader);
  else if (text.startsWith('<!--', at)) passTo(reader, 4, '-->');
  else if (text.startsWith('<?', at)) passTo(reader, 2, '?>');
  else if (text.startsWith('<![CDATA[', at)) takeData(reader);
  else if (text.startsWith('<!', at)) {
    throw new XmlFault('not-allowed', 'The file defines a document type or entities, which is not allowed.');
  } else takeStart(reader);
}

/** Passes to the end mark of a comment, an instruction or character data; gives what is between. */
function passTo(reader: Reader, skip: number, mark: string): string {
  const end = reader.text.indexOf(mark, reader.at + skip);
  if (end < 0) throw malformed('a tag or comment that begins here does not end');
  const between = reader.text.slice(reader.at + skip, end);
  reader.at = end + mark.length;
  return between;
}

function takeData(reader: Reader): void {
  const element = reader.open.at(-1);
  if (element === undefined) throw malformed('text outside of its elements');
  element.text += passTo(reader, 9, ']]>');
}

function takeStart(reader: Reader): void {
  if (reader.open.length === 0 && reader.root !== null) throw malformed('a second element beside the first one');
  if (reader.open.length >= MOST_DEPTH) throw tooMuch('levels of elements inside each other');
  const line = lineAt(reader);
  const start = reader.at;
  reader.at += 1;
  const fullName = match(reader, NAME)?.[0];
  if (fullName === undefined) throw malformed('a "<" that does not begin a tag');
  const attributes = takeAttributes(reader);
  const end = match(reader, TAG_END);
  if (end === null) {
    reader.at = start;
    throw malformed(`the tag of "${fullName.slice(0, 40)}" is damaged or does not end`);
  }
  reader.open.push({ fullName, attributes, children: [], line, text: '' });
  if (end[1] === '/') close(reader);
}

function takeAttributes(reader: Reader): ReadonlyMap<string, string> {
  let found = match(reader, ATTRIBUTE);
  if (found === null) return NO_ATTRIBUTES;
  const attributes = new Map<string, string>();
  const fullNames = new Set<string>();
  for (; found !== null; found = match(reader, ATTRIBUTE)) {
    const [, name = '', double, single] = found;
    if (fullNames.has(name)) throw malformed(`the attribute "${name.slice(0, 40)}" is given twice`);
    if (fullNames.size >= MOST_ATTRIBUTES) throw tooMuch('attributes in one element');
    fullNames.add(name);
    attributes.set(localName(name), withReferences((double ?? single ?? '').replace(/[\n\t]/g, ' ')));
  }
  countPieces(reader, fullNames.size);
  return attributes;
}

function takeEnd(reader: Reader): void {
  const name = passTo(reader, 2, '>').trimEnd();
  const element = reader.open.at(-1);
  if (element?.fullName !== name) {
    const expected = element === undefined ? 'no tag' : `the end of "${element.fullName.slice(0, 40)}"`;
    throw malformed(`the end of "${name.slice(0, 40)}" where ${expected} should be`);
  }
  close(reader);
}

function close(reader: Reader): void {
  const element = reader.open.pop();
  if (element === undefined) return;
  const { fullName, attributes, children, line, text } = element;
  const done: XmlElement = { name: localName(fullName), attributes, children, text: text.trim(), line };
  const parent = reader.open.at(-1);
  if (parent === undefined) reader.root = done;
  else parent.children.push(done);
}

function localName(fullName: string): string {
  return fullName.slice(fullName.indexOf(':') + 1);
}

/** Matches at the place where reading is, and moves on behind it. */
function match(reader: Reader, pattern: RegExp): RegExpExecArray | null {
  pattern.lastIndex = reader.at;
  const found = pattern.exec(reader.text);
  if (found !== null) reader.at = pattern.lastIndex;
  return found;
}

function countPieces(reader: Reader, count: number): void {
  reader.pieces += count;
  if (reader.pieces > MOST_PIECES) throw tooMuch('elements and details');
}

function lineAt(reader: Reader): number {
  while (reader.lineEnd < reader.at) {
    reader.line += 1;
    reader.lineEnd = endOfLine(reader.text, reader.lineEnd + 1);
  }
  return reader.line;
}

function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end;
}
