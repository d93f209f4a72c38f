import { epsgDefinition } from './projection-epsg.ts';
import { DEGREES } from './projection-maker.ts';

/** What a well-known text names, ready for proj4, or why it cannot be used. */
export type WktReading =
  | { readonly kind: 'known'; readonly name: string; readonly definition: string }
  | { readonly kind: 'unknown'; readonly why: string };

/** Well-known texts are a few hundred characters long; a longer one is none. */
const LONGEST_WKT = 10_000;
const LONGEST_NAME = 80;

/**
 * Datums that lie within two metres of WGS84: NAD83 and its realisations, ETRS89, GDA, NZGD2000, SIRGAS, the ITRF. Common
 * practice for maps of lawns; the shift is the same for all corners, so that no area changes.
 */
const NEAR_WGS84 =
  /^(?:D_)?(?:WGS_?(?:19)?84|World_Geodetic_System_1984|NAD_?(?:19)?83|North_American_(?:Datum_)?(?:of_)?1983|NAD83|ETRS_?(?:19)?89|European_Terrestrial_Reference_System_1989|GDA_?(?:19)?94|GDA_?2020|Geocentric_Datum_of_Australia|NZGD_?2000|New_Zealand_Geodetic_Datum_2000|SIRGAS|Sistema_de_Referencia_Geocentrico|ITRF|International_Terrestrial_Reference_Frame)/i;

/** Looks a well-known text over before proj4 sees it: kind of system, datum, prime meridian and unit of angles. Never throws. */
export function readWkt(text: string): WktReading {
  const wkt = text.replace(/^\uFEFF/, '').trim();
  if (wkt === '') return unknown('The description of the coordinates is empty.');
  if (wkt.length > LONGEST_WKT || wkt.includes('__proto__'))
    return unknown('The description of the coordinates is no WKT.');
  const projected = cutOut(wkt, /\bPROJ(?:CS|CRS|ECTEDCRS)\s*\[/i);
  const system = projected ?? cutOut(wkt, /\bGEO(?:GCS|GCRS|DCRS|GRAPHICCRS|DETICCRS)\s*\[/i);
  if (system === null) {
    return unknown(`The description "${shorten(wkt)}" names neither a map projection nor longitude and latitude.`);
  }
  const name = quoted(system, /^\w+/) ?? 'a system without a name';
  const datum = quoted(system, /\b(?:DATUM|ENSEMBLE|TRF)/i) ?? '';
  if (!NEAR_WGS84.test(datum.replaceAll(' ', '_')) && !/\bTOWGS84\s*\[/i.test(system)) {
    return unknown(`How "${shorten(datum)}" (the datum of "${name}") is shifted against WGS84 is not known here.`);
  }
  return projected === null ? readDegrees(system, name) : readProjected(system, name);
}

/** A geographic system is used as it is: degrees from Greenwich. */
function readDegrees(system: string, name: string): WktReading {
  const meridian = numberAfter(system, /\bPRIMEM\s*\[\s*"[^"]*"/i) ?? 0;
  const unit = quoted(system, /\b(?:ANGLE)?UNIT(?=\s*\[\s*"(?!met|m"))/i) ?? 'degree';
  if (meridian !== 0) return unknown(`The longitudes of "${name}" do not count from Greenwich.`);
  if (!/^(?:decimal[ _])?deg/i.test(unit))
    return unknown(`The angles of "${name}" are in "${shorten(unit)}", not in degrees.`);
  if (/\bTOWGS84\s*\[(?!\s*0(?:\.0*)?\s*(?:,\s*0(?:\.0*)?\s*)*\])/i.test(system)) {
    return unknown(`The longitudes and latitudes of "${name}" are on another datum than WGS84.`);
  }
  return { kind: 'known', name, definition: DEGREES };
}

function readProjected(system: string, name: string): WktReading {
  // Programs differ in the words for Web Mercator, and proj4 knows some of them only.
  const isWebMercator = /Web_Mercator|Pseudo.Mercator|Mercator_Auxiliary_Sphere|Google.*Mercator/i.test(system);
  const definition = isWebMercator ? epsgDefinition(3857)?.definition : system;
  return { kind: 'known', name, definition: definition ?? system };
}

/** The part of a text from a keyword to the bracket that closes it; null where there is none or it is never closed. */
function cutOut(wkt: string, keyword: RegExp): string | null {
  const from = wkt.search(keyword);
  if (from < 0) return null;
  let depth = 0;
  let isQuoted = false;
  for (let at = from; at < wkt.length; at += 1) {
    const letter = wkt[at];
    if (letter === '"') isQuoted = !isQuoted;
    else if (isQuoted) continue;
    else if (letter === '[') depth += 1;
    else if (letter === ']') {
      depth -= 1;
      if (depth === 0) return wkt.slice(from, at + 1);
    }
  }
  return null;
}

function quoted(text: string, before: RegExp): string | null {
  const found = new RegExp(`${before.source}\\s*\\[\\s*"([^"]*)"`, before.flags).exec(text);
  return found?.[1] === undefined ? null : shorten(found[1]);
}

function numberAfter(text: string, before: RegExp): number | null {
  const found = new RegExp(`${before.source}\\s*,\\s*([-+0-9.eE]+)`, before.flags).exec(text);
  return found?.[1] === undefined ? null : Number(found[1]);
}

function shorten(text: string): string {
  return text.length <= LONGEST_NAME ? text : `${text.slice(0, LONGEST_NAME)}…`;
}

function unknown(why: string): WktReading {
  return { kind: 'unknown', why };
}
