import { err, ok, type Result } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import { positionFault } from '../geometry/index.ts';
import { fieldReader, houseNumber, zipOf } from './street-fields.ts';

/** House numbers along one side of a street, in the direction of its line. */
export type NumberRange = readonly [from: number, to: number];

/** A piece of a street between two crossings, with the house numbers along it. */
export type StreetPiece = {
  /** The street as the file writes it. */
  readonly street: string;
  readonly left: NumberRange | null;
  readonly right: NumberRange | null;
  readonly zipLeft: string;
  readonly zipRight: string;
  readonly line: readonly Position[];
};

/** What was read from a file of streets. */
export type StreetFile = {
  readonly pieces: readonly StreetPiece[];
  /** Features in the file. */
  readonly found: number;
  /** Features without a name, a line or a single house number. */
  readonly unused: number;
};

type Feature = { readonly geometry?: unknown; readonly properties?: unknown };

/**
 * Reads street lines with address ranges from the parsed text of a GeoJSON file. Field names are those of public-domain county
 * tables (FULLNAME, LFROMADD, LTOADD, RFROMADD, RTOADD or LFROMHN …) and of city files (Street, L_From, L_To …).
 *
 * @param value the parsed JSON
 * @param where the file's name, for messages
 * @returns fails with 'format-invalid' where there are no features or none has a range, 'geometry-not-lonlat' where they are not degrees
 */
export function readStreets(value: unknown, where: string): Result<StreetFile> {
  const features = featuresOf(value);
  if (features === null) return noStreets(where, 'The file holds no list of features.');
  const pieces: StreetPiece[] = [];
  for (const feature of features) {
    const piece = pieceOf(feature);
    if (piece === null) continue;
    const fault = piece.line.map(positionFault).find((each) => each !== null);
    if (fault?.code === 'geometry-not-lonlat')
      return err(fault.code, where, fault.message, 'Export it as WGS84 degrees.');
    if (fault === undefined) pieces.push(piece);
  }
  if (pieces.length === 0) return noStreets(where, 'No line in the file has a street name and house numbers.');
  return ok({ pieces, found: features.length, unused: features.length - pieces.length });
}

function noStreets(where: string, detail: string): Result<never> {
  const hint = 'Choose street lines with address ranges, for instance a county table with FULLNAME and LFROMADD.';
  return err('format-invalid', where, detail, hint);
}

function featuresOf(value: unknown): readonly Feature[] | null {
  if (typeof value !== 'object' || value === null || !('features' in value)) return null;
  return Array.isArray(value.features) ? (value.features as readonly Feature[]) : null;
}

function pieceOf(feature: Feature): StreetPiece | null {
  const line = lineOf(feature?.geometry);
  if (line === null) return null;
  const field = fieldReader(feature.properties);
  const street = String(field('street') ?? '').trim();
  const left = rangeOf(field('leftFrom'), field('leftTo'));
  const right = rangeOf(field('rightFrom'), field('rightTo'));
  if (street === '' || (left === null && right === null)) return null;
  return { street, left, right, zipLeft: zipOf(field('zipLeft')), zipRight: zipOf(field('zipRight')), line };
}

function rangeOf(from: unknown, to: unknown): NumberRange | null {
  const first = houseNumber(from);
  const last = houseNumber(to);
  if (first === null && last === null) return null;
  return [first ?? last ?? 0, last ?? first ?? 0];
}

function lineOf(geometry: unknown): readonly Position[] | null {
  if (typeof geometry !== 'object' || geometry === null || !('coordinates' in geometry) || !('type' in geometry))
    return null;
  const { type, coordinates } = geometry;
  const list = type === 'LineString' ? [coordinates] : type === 'MultiLineString' ? coordinates : null;
  if (!Array.isArray(list)) return null;
  const line = list.flat().flatMap((at: unknown): readonly Position[] => (isPair(at) ? [[at[0], at[1]]] : []));
  return line.length < 2 ? null : line;
}

function isPair(at: unknown): at is readonly [number, number] {
  return Array.isArray(at) && typeof at[0] === 'number' && typeof at[1] === 'number';
}
