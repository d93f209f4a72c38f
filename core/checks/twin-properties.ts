import { issue } from '../base/index.ts';
import type { Book, Property } from '../book/index.ts';
import { cornersKey } from './drawn-zones.ts';
import { type Finding, type Fix, named, type Rule } from './rule.ts';

/** The same lawn twice: under the same name and address, or with the same ground at the same parking point. */
export const twinProperties: Rule = {
  code: 'duplicate-property',
  find: (book) => {
    const byWords = new Map<string, Property>();
    const byPlace = new Map<string, Property>();
    return book.properties.flatMap((property) => {
      const words = wordsKey(property);
      const place = placeKey(property);
      const alike =
        (words === null ? undefined : byWords.get(words)) ?? (place === null ? undefined : byPlace.get(place));
      if (alike !== undefined) return [twin(property, alike)];
      if (words !== null) byWords.set(words, property);
      if (place !== null) byPlace.set(place, property);
      return [];
    });
  },
};

/** Name and address without case, spaces and marks; null where there is no address to tell two lawns apart. */
function wordsKey({ name, address }: Property): string | null {
  const plain = (text: string): string =>
    text
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim();
  return plain(address) === '' ? null : `${plain(name)} | ${plain(address)}`;
}

/** Where a lawn is, to about a metre, and its ground; null where it has none. */
function placeKey({ parking, zones }: Property): string | null {
  const shapes = zones.map(({ shape }) =>
    shape.kind === 'drawn' ? cornersKey(shape.geometry) : String(shape.areaSqFt),
  );
  const ground = shapes.filter((each) => each !== '' && each !== '0').sort();
  if (ground.length === 0) return null;
  return `${parking.map((each) => each.toFixed(5)).join(' ')} ${ground.join(' | ')}`;
}

function twin(property: Property, other: Property): Finding {
  const exact = isCopy(property, other);
  const of = `${named('property', other)}${property.name === other.name ? ` (id ${other.id})` : ''}`;
  const message = exact
    ? `It is a copy of ${of}; remove one of the two.`
    : `It has the name and address, or the place and ground, of ${of}; keep one of the two.`;
  const found: Finding = {
    ...issue('warning', 'duplicate-property', named('property', property), message),
    propertyId: property.id,
  };
  return exact && property.id !== other.id ? { ...found, fix: removal(property.id, other.id) } : found;
}

/** The same in everything but the id. */
function isCopy(property: Property, other: Property): boolean {
  return JSON.stringify({ ...property, id: '' }) === JSON.stringify({ ...other, id: '' });
}

/** Removes the copy, unless a round names it or one of the two was changed meanwhile. */
function removal(id: string, otherId: string): Fix {
  const label = 'Remove the copy';
  return {
    label,
    action: (book) => {
      const property = book.properties.find((each) => each.id === id);
      const other = book.properties.find((each) => each.id === otherId);
      if (property === undefined || other === undefined || !isCopy(property, other) || isNamed(book, id)) return null;
      return { kind: 'remove', table: 'properties', id, label };
    },
  };
}

function isNamed(book: Book, id: string): boolean {
  return book.rounds.some(
    (round) =>
      (round.propertyIds !== 'all' && round.propertyIds.includes(id)) ||
      [...round.skipped, ...(round.promised ?? [])].some((each) => each.propertyId === id),
  );
}
