import type { Book, Property, Treatment, Zone } from '../book/index.ts';
import type { ZoneMeasure } from '../measure/index.ts';

/** What does one treatment take on one zone? */
export type DemandQuestion = {
  readonly book: Book;
  readonly property: Property;
  readonly zone: Zone;
  readonly zoneMeasure: ZoneMeasure;
  readonly treatment: Treatment;
  /** Ground of the strip along paving or beds, ft2, for band treatments; null where the treatment is no band. */
  readonly bandSqFt: number | null;
};

/** "property Elm 12, zone back": where an issue is. */
export function placeOf(question: DemandQuestion): string {
  return `property ${question.property.name || question.property.id}, zone ${question.zone.name || question.zone.id}`;
}
