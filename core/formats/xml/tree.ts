import { SaxesParser, type SaxesTagPlain } from 'saxes';
import type { XmlElement } from './element.ts';
import { malformed, tooMuch, XmlFault } from './faults.ts';

/** Outlines lie some ten elements deep. */
const MOST_DEPTH = 60;
const MOST_ATTRIBUTES = 200;
/** Tags, comments and attributes together; as many are read in about two seconds (measured on two cores). */
const MOST_PIECES = 3_000_000;

type OpenElement = {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  readonly line: number;
  text: string;
};

/**
 * Reads an XML text without document types into elements; namespaces are left out, and prefixes need not be declared. An "&"
 * before a blank, as careless programs write it in names, stands for itself. `lineOf` tells where a fault was, after one was
 * thrown.
 */
export function createTreeReader(text: string): { readonly read: () => XmlElement; readonly lineOf: () => number } {
  const parser = new SaxesParser({ xmlns: false });
  const open: OpenElement[] = [];
  let root: XmlElement | null = null;
  let pieces = 0;
  const count = (more: number): void => {
    pieces += more;
    if (pieces > MOST_PIECES) throw tooMuch('elements and details');
  };
  const addText = (more: string): void => {
    const element = open.at(-1);
    if (element !== undefined) element.text += more;
  };

  parser.on('error', (error) => {
    throw malformed(error.message.replace(/^\d+:\d+:\s*/, '').replace(/\.$/, ''));
  });
  parser.on('doctype', () => {
    throw new XmlFault('not-allowed', 'The file defines a document type or entities, which is not allowed.');
  });
  parser.on('comment', () => count(1));
  parser.on('processinginstruction', () => count(1));
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('opentag', (tag) => {
    if (open.length >= MOST_DEPTH) throw tooMuch('levels of elements inside each other');
    const attributes = attributesOf(tag);
    count(1 + attributes.size);
    open.push({ name: localName(tag.name), attributes, children: [], line: parser.line, text: '' });
  });
  parser.on('closetag', () => {
    const element = open.pop();
    if (element === undefined) return;
    const done: XmlElement = { ...element, text: element.text.trim() };
    const parent = open.at(-1);
    if (parent === undefined) root = done;
    else parent.children.push(done);
  });

  const read = (): XmlElement => {
    parser.write(withBareAmpersands(text)).close();
    if (root === null) throw malformed('it has no elements');
    return root;
  };
  return { read, lineOf: () => parser.line };
}

const NO_ATTRIBUTES: ReadonlyMap<string, string> = new Map();

function attributesOf({ attributes }: SaxesTagPlain): ReadonlyMap<string, string> {
  const names = Object.keys(attributes);
  if (names.length === 0) return NO_ATTRIBUTES;
  if (names.length > MOST_ATTRIBUTES) throw tooMuch('attributes in one element');
  return new Map(names.map((name) => [localName(name), attributes[name] ?? '']));
}

function localName(fullName: string): string {
  return fullName.slice(fullName.indexOf(':') + 1);
}

/** Writes an "&" before a blank as it should have been written; character data is left as it is. */
function withBareAmpersands(text: string): string {
  if (!text.includes('& ')) return text;
  const parts: string[] = [];
  let at = 0;
  while (at < text.length) {
    const start = text.indexOf('<![CDATA[', at);
    const end = start < 0 ? -1 : text.indexOf(']]>', start);
    const plainEnd = end < 0 ? text.length : start;
    parts.push(text.slice(at, plainEnd).replaceAll('& ', '&amp; '));
    if (end >= 0) parts.push(text.slice(start, end));
    at = end < 0 ? text.length : end;
  }
  return parts.join('');
}
