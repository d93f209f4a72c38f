import { epsgDefinition } from './projection-epsg.ts';
import { type Projection, projectionOf } from './projection-maker.ts';
import { readWkt } from './projection-wkt.ts';

/** A projection, or why there is none. */
export type ProjectionReading =
  | { readonly kind: 'known'; readonly projection: Projection }
  | { readonly kind: 'unknown'; readonly why: string };

/**
 * The projection that a well-known text names: the content of a .prj file, or a definition out of a GeoPackage (WKT 1 of OGC or
 * Esri). NAD83, ETRS89 and the like count as WGS84, from which they differ by two metres at most and all corners of a lawn alike.
 * Never throws. Another datum is only known where the text gives its shift (TOWGS84).
 */
export function projectionFromWkt(text: string): ProjectionReading {
  const reading = readWkt(text);
  return reading.kind === 'unknown' ? reading : finish(reading.name, reading.definition);
}

/**
 * The projection of an EPSG code: longitude and latitude (4326, 4269 and kin), Web Mercator (3857), UTM on WGS84 and
 * NAD83, the State Plane zones of NAD83 in metres and in feet, and the Albers map of the contiguous states (5070). For
 * any other code the answer says why it is not known.
 */
export function projectionFromEpsg(code: number): ProjectionReading {
  const found = epsgDefinition(code);
  if (found !== null) return finish(`EPSG:${code} (${found.title})`, found.definition);
  const why = `EPSG:${code} is not among the systems that are known here (degrees, Web Mercator, UTM, State Plane of NAD83).`;
  return { kind: 'unknown', why };
}

function finish(name: string, definition: string): ProjectionReading {
  const projection = projectionOf(name, definition);
  if (projection !== null) return { kind: 'known', projection };
  return { kind: 'unknown', why: `The projection of "${name}" is not one that can be reckoned with.` };
}
