import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book, Property, Rig, Round, Treatment } from '../../../core/book/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { lawnsOf, zonesOf } from '../../../core/round/programme/index.ts';

/** The round that was named, or the first one of the book. Error: 'reference-missing'. */
export function roundOf(book: Book, where: string, id: string | undefined): Result<Round> {
  const first = book.rounds[0];
  if (first === undefined) {
    return err('reference-missing', `${where}, rounds`, 'The book has no round.', 'Add a round to the book.');
  }
  const found = id === undefined ? first : book.rounds.find((each) => each.id === id);
  if (found !== undefined) return ok(found);
  const known = book.rounds.map((each) => each.id).join(', ');
  return err('reference-missing', `${where}, rounds`, `The book has no round "${id}".`, `It has these: ${known}.`);
}

/** The rig that was named; null where none was. Error: 'reference-missing'. */
export function rigOf(book: Book, where: string, id: string | undefined): Result<Rig | null> {
  if (id === undefined) return ok(null);
  const found = book.rigs.find((each) => each.id === id);
  if (found !== undefined) return ok(found);
  const known = book.rigs.map((each) => each.id).join(', ');
  const hint = known === '' ? 'Add a rig to the book.' : `It has these: ${known}.`;
  return err('reference-missing', `${where}, rigs`, `The book has no rig "${id}".`, hint);
}

/** The properties that a round treats, in the order of the book. */
export function propertiesOf(book: Book, round: Round): readonly Property[] {
  return lawnsOf(book, round, areaOf).taken;
}

/** A property with those of its zones alone that get a treatment of a round. */
export function withZonesOf(property: Property, round: Round, treatmentId: string): Property {
  const zones = zonesOf(round, treatmentId, property, areaOf);
  return zones.length === property.zones.length ? property : { ...property, zones };
}

function areaOf(property: Property): number | null {
  return measureProperty(property).treatableSqFt;
}

/** The treatments of a round, in its order. */
export function treatmentsOf(book: Book, round: Round): readonly Treatment[] {
  return round.treatmentIds.flatMap((id) => book.treatments.filter((each) => each.id === id));
}
