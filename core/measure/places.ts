import type { Property } from '../book/index.ts';

/** How issues name the places they are about. */
export type PlaceNames = {
  readonly property: (property: Property) => string;
  readonly zone: (property: Property, zoneId: string) => string;
  readonly exclusion: (property: Property, exclusionId: string) => string;
};

/** Names by id, for a book. */
export const BOOK_PLACES: PlaceNames = {
  property: (property) => `property ${property.id}`,
  zone: (property, zoneId) => `property ${property.id}, zone ${zoneId}`,
  exclusion: (property, exclusionId) => `property ${property.id}, exclusion ${exclusionId}`,
};
