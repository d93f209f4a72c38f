import { malformed } from './faults.ts';

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
/** Longest reference between "&" and ";", with zeros in front of a number. */
const LONGEST = 10;

/**
 * A text with the references of XML 1.0 (sections 4.1 and 4.6) put in. An "&" before a blank, as careless programs write it in
 * names, stands for itself; any other throws an `XmlFault`.
 */
export function withReferences(text: string): string {
  let start = text.indexOf('&');
  if (start < 0) return text;
  const parts: string[] = [];
  let at = 0;
  for (; start >= 0; start = text.indexOf('&', at)) {
    if (text[start + 1] === ' ') {
      parts.push(text.slice(at, start + 1));
      at = start + 1;
      continue;
    }
    const name = nameAt(text, start + 1);
    parts.push(text.slice(at, start), characterOf(name));
    at = start + name.length + 2;
  }
  parts.push(text.slice(at));
  return parts.join('');
}

/** What stands between "&" and ";". */
function nameAt(text: string, start: number): string {
  const [name, ...more] = text.slice(start, start + LONGEST + 1).split(';', 2);
  return more.length === 0 ? '' : (name ?? '');
}

function characterOf(name: string): string {
  const named = Object.hasOwn(NAMED, name) ? NAMED[name] : undefined;
  if (named !== undefined) return named;
  const [, hexadecimal, decimal] = /^#(?:x([\da-fA-F]{1,8})|(\d{1,9}))$/.exec(name) ?? [];
  if (hexadecimal === undefined && decimal === undefined) {
    throw malformed('an "&" that is not the start of &amp; or the like');
  }
  const point = hexadecimal === undefined ? Number(decimal) : Number.parseInt(hexadecimal, 16);
  const isSurrogate = point >= 0xd800 && point <= 0xdfff;
  if (point === 0 || point > 0x10ffff || isSurrogate)
    throw malformed(`a character number ${point}, which does not exist`);
  return String.fromCodePoint(point);
}
