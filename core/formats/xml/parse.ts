import { ok, type Result } from '../../base/index.ts';
import { decodeLatin } from '../text/index.ts';
import type { XmlElement } from './element.ts';
import { decodeXml } from './encoding.ts';
import { refusal, XmlFault } from './faults.ts';
import { createTreeReader } from './tree.ts';

/**
 * Parses the bytes of an XML file and gives its first element. Errors: those of `decodeXml`; `not-allowed` for document types
 * and entities, `file-too-large` for deep nesting and masses of elements, `format-invalid` where it is not well-formed, each
 * with the line.
 */
export function parseXml(bytes: Uint8Array, where: string): Result<XmlElement> {
  const text = decodeXml(bytes, where);
  if (!text.ok) return text;
  const reader = createTreeReader(text.value);
  try {
    return ok(reader.read());
  } catch (fault) {
    if (!(fault instanceof XmlFault)) throw fault;
    return refusal(fault, `${where}, line ${reader.lineOf()}`);
  }
}

/** The name of the first element, read without parsing; null where the bytes do not begin as XML. */
export function rootName(bytes: Uint8Array): string | null {
  const start = decodeLatin(bytes.subarray(0, 4000))
    .replaceAll('\0', '')
    .replace(/^[\u00ef\u00bb\u00bf\u00ff\u00fe]+/, '');
  const body = start.replace(/<\?[\s\S]*?\?>|<!--[\s\S]*?-->/g, '').trimStart();
  return /^<(?:[A-Za-z_][\w.-]*:)?([A-Za-z_][\w.-]*)/.exec(body)?.[1] ?? null;
}
