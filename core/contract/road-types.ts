import type { AppError } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import type { AboutRoads } from '../roads/index.ts';
import type { OffRoad } from '../travel/index.ts';

/** The roads that lie beside a book. */
export type RoadsFile = { readonly about: AboutRoads; readonly fingerprint: string };

/** A place of the book that no road reaches. */
export type PlaceOffRoad = Omit<OffRoad, 'row'> & {
  readonly id: string;
  readonly name: string;
  readonly what: 'property' | 'fill point';
};

/** Where the drive times of a book come from. */
export type RoadsStatus = {
  /** Null where none were imported, or where they cannot be read: then `fault` says why. */
  readonly roads: RoadsFile | null;
  readonly fault: AppError | null;
  /** Address of the table service that is asked; null for none. */
  readonly engine: string | null;
  readonly places: number;
  /** Pairs of different places, both ways; and how many of them are by road. */
  readonly pairs: number;
  readonly byRoad: number;
  readonly offRoad: readonly PlaceOffRoad[];
  /** What went wrong with drive times, as a sentence. */
  readonly trouble: string | null;
};

/** Ways along the roads from each stop to the next, for the map; null where none is known. */
export type RoadWays = { readonly ways: readonly (readonly Position[] | null)[]; readonly credit: string };

/** At most ten in a second for one import. */
export type RoadsProgress = {
  readonly session: string;
  readonly step: string;
  readonly done: number;
  readonly total: number;
};
