import type { Position } from '../book/index.ts';
import { distanceMetres } from '../geometry/index.ts';
import { type Address, readAddress } from './address.ts';
import { findStreets, type StreetIndex, type StreetMatch } from './finder.ts';
import { placeBeside, type Side, shareAlong } from './interpolate.ts';
import type { NumberRange, StreetPiece } from './streets.ts';

/** How far a place may be trusted: inside a range of the very street; next to a range or by a looser name; both of them. */
export type PlaceConfidence = 'good' | 'fair' | 'poor';

/** What became of an address. "Cannot be placed" is an answer with its reason. */
export type AddressAnswer =
  | {
      readonly kind: 'placed';
      readonly at: Position;
      /** How it was placed, in words: "along Oak St, 100 to 198, left side". */
      readonly how: string;
      readonly confidence: PlaceConfidence;
      readonly street: string;
      readonly range: NumberRange;
    }
  | { readonly kind: 'not-placed'; readonly code: NotPlacedCode; readonly reason: string };

/** Why an address has no place. */
export type NotPlacedCode = 'no-number' | 'no-street' | 'no-range' | 'several-streets';

/** A house number farther from the nearest range than this is not placed: about a block (common practice, no source). */
const FARTHEST_NUMBER = 20;
/** Ranges that hold the same number farther apart than this are two places, metres. */
const FARTHEST_TWIN_M = 400;

type Hit = { readonly piece: StreetPiece; readonly range: NumberRange; readonly side: Side; readonly off: number };

/** Places an address by the house numbers along its street. Pure; the same index and text give the same answer. */
export function findAddress(index: StreetIndex, text: string): AddressAnswer {
  const address = readAddress(text);
  if (address === null) return notPlaced('no-number', 'The address has no house number followed by a street.');
  const found = findStreets(index, address.street, address.shortened);
  if (found === null) return notPlaced('no-street', `No street in the file is called like "${nameWords(address)}".`);
  const pieces = found.streets.flatMap((street) => street.pieces);
  const hits = inZip(nearestHits(pieces, address.number), address.zip);
  const [hit] = hits;
  if (hit === undefined || hit.off > FARTHEST_NUMBER) {
    const words = `No block of ${pieces[0]?.street ?? ''} has the number ${address.number}; ${spanWords(pieces)}.`;
    return notPlaced('no-range', words);
  }
  if (areApart(hits)) {
    const words = `The number ${address.number} is on several streets called ${hit.piece.street}, far apart.`;
    return notPlaced('several-streets', `${words} Add the ZIP.`);
  }
  return placed(hit, address, found.match);
}

function notPlaced(code: NotPlacedCode, reason: string): AddressAnswer {
  return { kind: 'not-placed', code, reason };
}

function nameWords({ street }: Address): string {
  return [street.before, street.name, street.type, street.after].filter((part) => part !== '').join(' ');
}

function placed(hit: Hit, { number }: Address, match: StreetMatch): AddressAnswer {
  const { piece, range, side, off } = hit;
  const doubts = (off > 0 ? 1 : 0) + (match === 'whole' ? 0 : 1);
  const beside = off > 0 ? `next to the numbers ${range[0]} to ${range[1]}` : `${range[0]} to ${range[1]}`;
  return {
    kind: 'placed',
    at: placeBeside(piece, shareAlong(number, range), side),
    how: `along ${piece.street}, ${beside}, ${side} side`,
    confidence: doubts === 0 ? 'good' : doubts === 1 ? 'fair' : 'poor',
    street: piece.street,
    range,
  };
}

/** The ranges nearest to a number; those of its own side (odd or even) come before the other side's. */
function nearestHits(pieces: readonly StreetPiece[], number: number): readonly Hit[] {
  const all = pieces.flatMap((piece): readonly Hit[] => [
    ...hitOn(piece, piece.left, 'left', number),
    ...hitOn(piece, piece.right, 'right', number),
  ]);
  const least = all.reduce((best, { off }) => Math.min(best, off), Number.POSITIVE_INFINITY);
  return all.filter(({ off }) => off === least);
}

function hitOn(piece: StreetPiece, range: NumberRange | null, side: Side, number: number): readonly Hit[] {
  if (range === null || !hasSide(range, number)) return [];
  const low = Math.min(...range);
  const high = Math.max(...range);
  return [{ piece, range, side, off: number < low ? low - number : Math.max(0, number - high) }];
}

/** A side with both odd and even numbers takes every number. */
function hasSide([from, to]: NumberRange, number: number): boolean {
  return (to - from) % 2 !== 0 || (number - from) % 2 === 0;
}

function inZip(hits: readonly Hit[], zip: string | null): readonly Hit[] {
  const inside = hits.filter(({ piece, side }) => zip === (side === 'left' ? piece.zipLeft : piece.zipRight));
  return inside.length > 0 ? inside : hits;
}

function areApart(hits: readonly Hit[]): boolean {
  const places = hits.map(({ piece }) => piece.line[0]).filter((at) => at !== undefined);
  const [first] = places;
  return first !== undefined && places.some((at) => distanceMetres(first, at) > FARTHEST_TWIN_M);
}

function spanWords(pieces: readonly StreetPiece[]): string {
  const numbers = pieces.flatMap(({ left, right }) => [...(left ?? []), ...(right ?? [])]);
  return `its numbers go from ${Math.min(...numbers)} to ${Math.max(...numbers)}`;
}
