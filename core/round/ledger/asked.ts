import type { Property, Round, Treatment, Zone } from '../../book/index.ts';
import type { Season } from './season.ts';
import type { Application, ByProduct } from './types.ts';

/** Something that keeps a treatment from being done on some days. */
export type Bar = {
  readonly words: string;
  readonly bars: (date: string) => boolean;
  /** Whether days are barred because they come too early, or too late. */
  readonly side?: 'early' | 'late';
};

/** What is asked, and what is known of the ground it is about. */
export type Asked = {
  readonly season: Season;
  readonly round: Round;
  readonly rank: number;
  readonly property: Property;
  readonly zone: Zone;
  readonly treatment: Treatment;
  /** What other rounds did or will do on this ground, and what is recorded of rounds that are no longer in the book. */
  readonly others: readonly Application[];
  /** What this round puts down on the zone, by treatment. */
  readonly own: ReadonlyMap<string, ByProduct>;
};

/** Whether something counts as done before the round that is asked about: records always do. */
export function countsBefore({ rank }: Asked, application: Application): boolean {
  return application.status === 'recorded' || application.rank < rank;
}
