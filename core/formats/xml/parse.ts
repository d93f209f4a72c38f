import { DOMParser, type Element, type Node, ParseError } from '@xmldom/xmldom';
import { err, type Issue, issue, ok, type Result } from '../../base/index.ts';
import { decodeLatin } from '../text/index.ts';
import type { XmlElement } from './element.ts';
import { decodeXml } from './encoding.ts';
import { guardXml, type XmlFacts } from './guard.ts';

export type XmlDocument = {
  readonly root: XmlElement;
  /** What the parser put right, as warnings. */
  readonly issues: readonly Issue[];
};

/** Stands for the namespace of a prefix that the file does not declare, as some trackers' files do not. */
const UNDECLARED = 'urn:prefix-not-declared';
const MOST_WARNINGS = 3;
const ELEMENT = 1;
const TEXT = 3;
const CDATA = 4;

/**
 * Parses the bytes of an XML file. Errors: those of `decodeXml` and `guardXml`; `format-invalid` with the line where it is
 * not well-formed.
 */
export function parseXml(bytes: Uint8Array, where: string): Result<XmlDocument> {
  const text = decodeXml(bytes, where);
  if (!text.ok) return text;
  const facts = guardXml(text.value, where);
  if (!facts.ok) return facts;
  const warnings: string[] = [];
  const root = parseText(text.value, facts.value, where, warnings);
  if (!root.ok) return root;
  const issues = warnings
    .slice(0, MOST_WARNINGS)
    .map((each) => issue('warning', 'xml-repaired', where, `The XML is not quite right: ${each}. Check the outlines.`));
  return ok({ root: root.value, issues });
}

function parseText(text: string, facts: XmlFacts, where: string, warnings: string[]): Result<XmlElement> {
  const parser = new DOMParser({
    locator: true,
    xmlns: Object.fromEntries(
      [...facts.prefixes].filter((each) => !/^xml/i.test(each)).map((each) => [each, UNDECLARED]),
    ),
    onError: (level, message) => {
      if (level !== 'warning') throw new Error(message);
      warnings.push(plain(message));
    },
  });
  try {
    const root = parser.parseFromString(text.replace(/^\s+/, ''), 'text/xml').documentElement;
    return root === null ? malformed(where, 'it has no elements') : ok(lightElement(root));
  } catch (problem) {
    if (!(problem instanceof Error)) throw problem;
    const line = problem instanceof ParseError ? lineOf(problem.locator) : null;
    return malformed(line === null ? where : `${where}, line ${line}`, plain(problem.message));
  }
}

function lineOf(locator: unknown): number | null {
  const isPlace = typeof locator === 'object' && locator !== null && 'lineNumber' in locator;
  return isPlace && typeof locator.lineNumber === 'number' ? locator.lineNumber : null;
}

function malformed(where: string, what: string): Result<never> {
  return err('format-invalid', where, `The file is no sound XML: ${what}.`, 'Export it again.');
}

/** A parser's message on one line and short; it may quote the file at any length. */
function plain(message: string): string {
  const quoted = /"([^"]{3,})"/.exec(message.slice(0, 300))?.[1] ?? message;
  return quoted.slice(0, 300).replace(/\s+/g, ' ').trim().replace(/\.$/, '').slice(0, 80);
}

function lightElement(element: Element): XmlElement {
  const children: XmlElement[] = [];
  const texts: string[] = [];
  for (let node: Node | null = element.firstChild; node !== null; node = node.nextSibling) {
    if (node.nodeType === ELEMENT) children.push(lightElement(node as Element));
    else if (node.nodeType === TEXT || node.nodeType === CDATA) texts.push(node.nodeValue ?? '');
  }
  const attributes = new Map<string, string>();
  for (const each of element.attributes) attributes.set(each.localName ?? each.name, each.value);
  const name = element.localName ?? element.nodeName;
  return { name, attributes, children, text: texts.join('').trim(), line: element.lineNumber ?? 0 };
}

/** The name of the first element, read without parsing; null where the bytes do not begin as XML. */
export function rootName(bytes: Uint8Array): string | null {
  const start = decodeLatin(bytes.subarray(0, 4000))
    .replaceAll('\0', '')
    .replace(/^[\u00ef\u00bb\u00bf\u00ff\u00fe]+/, '');
  const body = start.replace(/<\?[\s\S]*?\?>|<!--[\s\S]*?-->/g, '').trimStart();
  return /^<(?:[A-Za-z_][\w.-]*:)?([A-Za-z_][\w.-]*)/.exec(body)?.[1] ?? null;
}
