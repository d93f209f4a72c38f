import wellknown from 'wellknown';
import { readSourceGeometry, type SourceGeometry } from '../geojson/index.ts';

/** An outline as well-known text, with the EPSG code in front of it where there is one. */
export type WktReading = { readonly reading: SourceGeometry; readonly epsg: number | null };

const TYPES = /^(?:MULTI)?(?:POINT|LINESTRING|POLYGON)$|^GEOMETRYCOLLECTION$/;
/** Collections inside each other are read by recursion. */
const MOST_BRACKETS = 20;

/**
 * Reads well-known text (OGC 06-103r4, section 7), also with "SRID=4326;" in front and with heights, which are left out.
 * Never throws: what cannot be read is told in words.
 */
export function readWkt(text: string): WktReading {
  const [, srid, body = ''] = /^\s*(?:SRID\s*=\s*(\d{1,6})\s*;)?\s*([\s\S]*)$/i.exec(text) ?? [];
  const epsg = srid === undefined ? null : Number(srid);
  return { reading: readBody(body), epsg };
}

/** True for a cell that begins as well-known text does, of any type. */
export function looksLikeWkt(text: string): boolean {
  return /^\s*(?:SRID\s*=\s*\d{1,6}\s*;\s*)?[A-Z]{4,25}(?:\s+(?:Z|M|ZM))?\s*(?:\(|EMPTY\b)/i.test(text.slice(0, 80));
}

function readBody(body: string): SourceGeometry {
  const type = /^[A-Z]{0,40}/i.exec(body)?.[0].toUpperCase() ?? '';
  const plainType = type.replace(/(?<=[A-Z]{4})(?:ZM|Z|M)$/, '');
  if (!TYPES.test(plainType)) return bad(type === '' ? 'no well-known text' : `a ${type}, which is not read`);
  const rest = body.slice(type.length).replace(/^\s*(?:ZM|Z|M)(?![A-Z])/i, '');
  if (/^\s*EMPTY\s*$/i.test(rest)) return bad(`an empty ${plainType}`);
  const fault = bracketFault(rest);
  if (fault !== null) return bad(fault);
  const geometry = wellknown(`${plainType} ${tidy(rest)}`);
  return geometry === null ? bad(`a ${plainType} with numbers or commas that are not in order`) : checked(geometry);
}

/** A corner of less than two numbers must not pass for an outline that has no corners. */
function checked(geometry: unknown): SourceGeometry {
  const reading = readSourceGeometry(geometry);
  return reading.kind === 'none' ? bad('an outline without corners') : reading;
}

function bad(what: string): SourceGeometry {
  return { kind: 'bad', path: 'The well-known text', what };
}

function bracketFault(text: string): string | null {
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (character === '(') depth += 1;
    else if (character === ')') depth -= 1;
    if (depth > MOST_BRACKETS) return 'more brackets inside each other than are read';
    if (depth < 0 || (depth === 0 && character === ')' && text.slice(at + 1).trim() !== '')) {
      return 'something after its last bracket';
    }
  }
  return depth === 0 ? null : 'a bracket that is not closed';
}

/** One blank between numbers, none round brackets and commas, as the package wants it. */
function tidy(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/ ?([(),]) ?/g, '$1')
    .replace(/(?<![\d.])\.(?=\d)/g, '0.')
    .replace(/\.(?!\d)/g, '')
    .trim();
}
