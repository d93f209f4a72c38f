import { err, ok, type Result } from '../../base/index.ts';

/** What is known of an XML text before it is parsed. */
export type XmlFacts = {
  /** Prefixes of elements and attributes, declared or not. */
  readonly prefixes: ReadonlySet<string>;
};

/** Outlines lie some ten elements deep. */
const MOST_DEPTH = 60;
/** Tags, comments and attributes together. As many are parsed in about a second (measured on two cores). */
const MOST_PIECES = 250_000;
const MOST_ATTRIBUTES = 200;

type Scan = { at: number; depth: number; pieces: number; readonly prefixes: Set<string> };
type Stop = {
  readonly at: number;
  readonly code: 'not-allowed' | 'file-too-large' | 'format-invalid';
  readonly detail: string;
};

/**
 * Passes once over the text and refuses what no honest map file holds: document types and entities, deep nesting, masses of
 * attributes, and more tags than can be parsed while somebody waits. Linear in the length of the text.
 * Errors: `not-allowed`, `file-too-large`, `format-invalid`, with the line.
 */
export function guardXml(text: string, where: string): Result<XmlFacts> {
  const scan: Scan = { at: 0, depth: 0, pieces: 0, prefixes: new Set() };
  for (let at = text.indexOf('<'); at >= 0; at = text.indexOf('<', scan.at)) {
    scan.at = at;
    const stop = passTag(text, scan);
    if (stop !== null) return refuse(text, where, stop);
  }
  return ok({ prefixes: scan.prefixes });
}

function passTag(text: string, scan: Scan): Stop | null {
  const { at } = scan;
  scan.pieces += 1;
  if (scan.pieces > MOST_PIECES) return tooMuch(at, 'elements and details');
  if (text.startsWith('<!--', at)) return passTo(text, scan, '-->', 4);
  if (text.startsWith('<![CDATA[', at)) return passTo(text, scan, ']]>', 9);
  if (text.startsWith('<?', at)) return passTo(text, scan, '?>', 2);
  if (text.startsWith('<!', at)) {
    return { at, code: 'not-allowed', detail: 'The file defines a document type or entities, which is not allowed.' };
  }
  if (text.startsWith('</', at)) {
    scan.depth -= 1;
    return passTo(text, scan, '>', 2);
  }
  return passStart(text, scan);
}

function passTo(text: string, scan: Scan, end: string, skip: number): Stop | null {
  const found = text.indexOf(end, scan.at + skip);
  if (found < 0) return unclosed(scan.at);
  scan.at = found + end.length;
  return null;
}

function passStart(text: string, scan: Scan): Stop | null {
  const start = scan.at;
  const end = endOfTag(text, start);
  if (end.at < 0) return unclosed(start);
  if (end.attributes > MOST_ATTRIBUTES) return tooMuch(start, 'attributes in one element');
  const tag = text.slice(start + 1, end.at);
  for (const [, prefix] of tag.matchAll(/(?:^|\s)([A-Za-z_][\w.-]*):[A-Za-z_]/g)) scan.prefixes.add(prefix ?? '');
  scan.pieces += end.attributes;
  if (!tag.endsWith('/')) scan.depth += 1;
  scan.at = end.at + 1;
  return scan.depth > MOST_DEPTH ? tooMuch(start, 'levels of elements inside each other') : null;
}

/** Where the start tag ends, with the number of its equal signs outside of quotation marks; -1 where it does not end. */
function endOfTag(text: string, start: number): { readonly at: number; readonly attributes: number } {
  let attributes = 0;
  for (let at = start + 1; at < text.length; at += 1) {
    const character = text[at];
    if (character === '>') return { at, attributes };
    if (character === '=') attributes += 1;
    if (character === '"' || character === "'") {
      const close = text.indexOf(character, at + 1);
      if (close < 0) break;
      at = close;
    }
  }
  return { at: -1, attributes };
}

function unclosed(at: number): Stop {
  return { at, code: 'format-invalid', detail: 'A tag or comment that begins here does not end.' };
}

function tooMuch(at: number, what: string): Stop {
  return { at, code: 'file-too-large', detail: `The file holds more ${what} than is read.` };
}

const HINTS: Readonly<Record<Stop['code'], string>> = {
  'not-allowed': 'Remove the lines with <!DOCTYPE and <!ENTITY, or export the file again.',
  'file-too-large': 'Export fewer outlines or fewer details at a time, or use a Shapefile or GeoPackage.',
  'format-invalid': 'The file was cut short or damaged. Export it again.',
};

function refuse(text: string, where: string, stop: Stop): Result<never> {
  return err(stop.code, `${where}, line ${lineAt(text, stop.at)}`, stop.detail, HINTS[stop.code]);
}

function lineAt(text: string, end: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < end; at = text.indexOf('\n', at + 1)) line += 1;
  return line;
}
